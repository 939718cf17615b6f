/** A file of complaints read piece by piece, so that one of many megabytes holds up nothing. */
import type { Progress } from '../../calc/types.ts'
import { type Attached, LIST_BEGINS, LIST_ENDS, ownersIn, readAttached } from './attached.ts'
import { type FileRead, MOST_CHARACTERS, readSteps, TOO_LARGE } from './file.ts'
import { type Path, pathWords } from './json-text.ts'

/** Read at once: some three photos. */
const BLOCK_BYTES = 1024 * 1024
/** Larger files are not read at all. */
export const MOST_FILE_BYTES = 512 * 1024 * 1024

export type WholeFile =
  | (Extract<FileRead, { ok: true }> & { readonly attached: readonly Attached[] })
  | Extract<FileRead, { ok: false }>

export type Reading = {
  /** runs steps that draw in between */
  readonly run: <T>(steps: Generator<Progress, T>) => Promise<T>
  readonly onProgress: (doneFrac: number) => void
  /** throws where it was stopped */
  readonly goOn: () => void
}

/** `begunLength`: characters of the line that has not ended yet. */
type Block = { readonly lines: readonly string[]; readonly begunLength: number; readonly doneFrac: number }

/** The lines of a file, block by block; the last one may be no whole line. */
async function* blocksOf(source: Blob): AsyncGenerator<Block> {
  const decoder = new TextDecoder()
  let begun: string[] = []
  let begunLength = 0
  for (let at = 0; at < source.size; at += BLOCK_BYTES) {
    const end = Math.min(at + BLOCK_BYTES, source.size)
    const text = decoder.decode(await source.slice(at, end).arrayBuffer(), { stream: end < source.size })
    const lineEnd = text.lastIndexOf('\n')
    // put together once, where the line ends: it may be as long as the file
    const lines = lineEnd < 0 ? [] : [...begun, text.slice(0, lineEnd)].join('').split('\n')
    const rest = text.slice(lineEnd + 1)
    begun = lineEnd < 0 ? [...begun, rest] : [rest]
    begunLength = (lineEnd < 0 ? begunLength : 0) + rest.length
    yield { lines, begunLength, doneFrac: end / source.size }
  }
  yield { lines: [begun.join('')], begunLength: 0, doneFrac: 1 }
}

const refused = (message: string): WholeFile => ({ ok: false, message })
const NOT_WHOLE = 'this is no whole photo or measured file: something was cut off or changed here'
const CUT_OFF = 'the file ends before it is complete: something was cut off'

/** Reads a file; nothing of it is taken over where a place of it does not fit. Fails where the browser cannot read it, or it was stopped. */
export async function readBlob(source: Blob, { run, onProgress, goOn }: Reading): Promise<WholeFile> {
  if (source.size > MOST_FILE_BYTES)
    return refused(
      `The file is larger than ${MOST_FILE_BYTES / 1024 / 1024} MB: no backup of complaints comes near it.`,
    )
  const head: string[] = []
  let headLength = 0
  let read: FileRead | undefined
  let owners: ReadonlySet<string> = new Set()
  let line = 0
  let isOver = false
  const attached: Attached[] = []
  for await (const { lines, begunLength, doneFrac } of blocksOf(source)) {
    goOn()
    onProgress(doneFrac)
    const begins = read === undefined ? lines.indexOf(LIST_BEGINS) : -1
    const own = read !== undefined ? [] : begins < 0 ? lines : lines.slice(0, begins)
    for (const one of own) {
      head.push(one)
      headLength += one.length + 1
    }
    const untilList = headLength + (begins < 0 ? begunLength : 0)
    if (read === undefined && untilList > MOST_CHARACTERS) return refused(TOO_LARGE)
    if (begunLength > MOST_CHARACTERS) return refused(`Line ${line + lines.length + 1}: ${NOT_WHOLE}.`)
    if (begins >= 0) {
      line = head.length + 1
      read = await run(readSteps(closed(head)))
      if (!read.ok) return read
      owners = ownersIn(read.complaints)
    }
    if (read === undefined) continue
    for (const text of begins < 0 ? lines : lines.slice(begins + 1)) {
      line++
      if (isOver) {
        if (!/^\}?\s*$/.test(text)) return refused(`Line ${line}: nothing more is expected here.`)
      } else if (text === LIST_ENDS) isOver = true
      else {
        const one = readLine(text, ['attached', attached.length], owners)
        if ('message' in one)
          return refused(`Line ${line}${one.path.length === 0 ? '' : `, ${pathWords(one.path)}`}: ${one.message}.`)
        attached.push(one)
      }
    }
  }
  if (read === undefined) return withInline(await run(readSteps(head.join('\n'))))
  if (!isOver || !read.ok) return refused(`Line ${line}: ${CUT_OFF}.`)
  return { ...read, attached }
}

/** The text before the list as a file of its own. */
function closed(head: readonly string[]): string {
  const last = head.at(-1) ?? ''
  return [...head.slice(0, -1), last.replace(/,\s*$/, ''), '}', ''].join('\n')
}

type Misread = { readonly path: Path; readonly message: string }

function readLine(text: string, path: Path, owners: ReadonlySet<string>): Attached | Misread {
  let value: unknown
  try {
    value = JSON.parse(text.replace(/,\s*$/, ''))
  } catch {
    return { path: [], message: NOT_WHOLE }
  }
  return readAttached(value, path, owners)
}

/** A file somebody has laid out otherwise: the list was read with the rest. */
function withInline(read: FileRead): WholeFile {
  if (!read.ok) return read
  const owners = ownersIn(read.complaints)
  const attached: Attached[] = []
  for (const [at, raw] of read.inline.entries()) {
    const one = readAttached(raw, ['attached', at], owners)
    if ('message' in one) return refused(`${pathWords(one.path)}: ${one.message}.`)
    attached.push(one)
  }
  return { ...read, attached }
}
