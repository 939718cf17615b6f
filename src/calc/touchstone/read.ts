/** Network parameters read from a Touchstone file of version 1.1 or 2.0, in slices. Source: the open specification. */
import { quote } from '../quantity/reading.ts'
import { linesOf, MOST_LINE_CHARACTERS } from '../trace/text-lines.ts'
import type { Progress } from '../types.ts'
import { assemble } from './assemble.ts'
import { makeFigures } from './figures.ts'
import { type Keywords, withKeyword } from './keywords.ts'
import { type OptionLine, readOptionLine } from './option-line.ts'
import { refusedAt, type TouchstoneReading, type TouchstoneRefused } from './types.ts'

const MOST_CHARACTERS = 100_000_000
const MOST_FIGURES = 8_000_000
const SLICE_LINES = 1000
const KEPT_COMMENTS = 20
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eEdD][+-]?\d+)?$/

type Section = 'before' | 'reference' | 'network' | 'noise' | 'information' | 'end'

export type TouchstoneOptions = {
  /** name of the file: .s1p, .s2p, .s4p say how many ports there are */
  readonly fileName?: string
}

/** Ports as the name of a file says them: "bulkhead.s2p" is 2. */
export function portsInName(name: string | undefined): number | undefined {
  const match = /\.[syzhg](\d{1,2})p$/i.exec(name ?? '')
  return match ? Number(match[1]) : undefined
}

/** Yields progress and may be abandoned. A sentence with its line where something cannot be read. */
export function* readTouchstone(text: string, options: TouchstoneOptions = {}): Generator<Progress, TouchstoneReading> {
  if (text.length > MOST_CHARACTERS) return refusedAt('This text is longer than 100 million characters.')
  const lines = linesOf(text)
  const figures = makeFigures()
  const referenceOhm: number[] = []
  const comments: string[] = []
  let keywords: Keywords = {}
  let option: OptionLine | undefined
  let section: Section = 'before'
  for (let whole = lines.next(); whole !== undefined; whole = lines.next()) {
    const line = lines.line()
    if (line % SLICE_LINES === 0) yield { doneFrac: 0.8 * (lines.at() / text.length) }
    const said = bare(whole)
    if (figures.count() === 0 && comments.length < KEPT_COMMENTS && whole.includes('!'))
      comments.push(
        whole
          .slice(whole.indexOf('!') + 1)
          .trim()
          .slice(0, 200),
      )
    if (said === '' || section === 'end') continue
    if (section === 'information') {
      if (/^\[end information\]/i.test(said)) section = 'before'
      continue
    }
    if (said.startsWith('#')) {
      if (option !== undefined) continue
      const read = readOptionLine(said, line)
      if ('ok' in read) return read
      option = read
      continue
    }
    if (said.startsWith('[')) {
      const [, name = '', rest = ''] = /^\[([^\]]*)\]\s*(.*)$/.exec(said) ?? []
      const next = sectionOf(name)
      if (next !== undefined) {
        section = next
        if (next !== 'reference') continue
        const refused = addNumbers(rest, line, (value) => referenceOhm.push(value))
        if (refused) return refused
        continue
      }
      section = 'before'
      const read = withKeyword(keywords, name, rest, line)
      if (read === undefined) return refusedAt(`Line ${line}: “[${quote(name)}]” is no keyword of version 2.0.`, line)
      if ('ok' in read) return read
      keywords = read
      continue
    }
    if (section === 'noise') continue
    if (section === 'reference') {
      const refused = addNumbers(said, line, (value) => referenceOhm.push(value))
      if (refused) return refused
      continue
    }
    if (option === undefined)
      return refusedAt(
        `Line ${line}: figures before the option line; a line such as “# MHz S RI R 50” comes first.`,
        line,
      )
    if (keywords.version !== undefined && section !== 'network')
      return refusedAt(`Line ${line}: figures before [Network Data].`, line)
    figures.beginRow()
    const refused = addNumbers(said, line, (value) => figures.add(value, line))
    if (refused) return refused
    if (figures.count() > MOST_FIGURES) return refusedAt(`Line ${line}: more than ${MOST_FIGURES} figures.`, line)
  }
  const long = lines.tooLong()
  if (long !== undefined) return refusedAt(`Line ${long} is longer than ${MOST_LINE_CHARACTERS} characters.`, long)
  yield { doneFrac: 0.85 }
  if (option === undefined)
    return refusedAt('There is no option line: a line such as “# MHz S RI R 50” comes before the figures.')
  return assemble({
    figures,
    option,
    keywords,
    referenceOhm,
    namedPorts: portsInName(options.fileName),
    comments: comments.filter((comment) => comment !== ''),
  })
}

const bare = (line: string): string => (line.includes('!') ? line.slice(0, line.indexOf('!')) : line).trim()

function sectionOf(name: string): Section | undefined {
  switch (name.toLowerCase()) {
    case 'reference':
      return 'reference'
    case 'network data':
      return 'network'
    case 'noise data':
      return 'noise'
    case 'begin information':
      return 'information'
    case 'end':
      return 'end'
    default:
      return undefined
  }
}

/** Every number of a line; a sentence at the first word that is none. */
function addNumbers(text: string, line: number, add: (value: number) => void): TouchstoneRefused | undefined {
  if (text === '') return undefined
  for (const [i, word] of text.split(/\s+/).entries()) {
    const value = NUMBER.test(word) ? Number(word.replace(/[dD]/, 'e')) : Number.NaN
    if (!Number.isFinite(value))
      return refusedAt(`Line ${line}, column ${i + 1}: “${quote(word)}” is no number.`, line, i + 1)
    add(value)
  }
  return undefined
}
