/** What a measurement file is, from its first lines: how cells are divided, where the table begins, which column is what. */
import { cellsOf, couldBeGrouped, type Divider, measureIn, unitAt } from './cells.ts'
import { isComment, type Lines, withoutMark } from './text-lines.ts'
import type { FrequencyUnit, LevelColumn, ReadOptions, TraceReading } from './types.ts'
import { frequencyUnitIn, frequencyUnitOf, type LevelScale, levelScaleIn, levelScaleOf, scaleIn } from './units.ts'

export type Layout = {
  readonly divider: Divider
  readonly hasDecimalComma: boolean
  /** number of the first line of the table, from 1 */
  readonly firstLine: number
  readonly frequencyAt: number
  readonly frequencyUnit: FrequencyUnit | undefined
  readonly frequencyUnitFrom: 'header' | 'cells' | 'size' | 'user'
  readonly levelAt: number
  readonly scale: LevelScale
  readonly levelColumns: readonly LevelColumn[]
  readonly preamble: readonly string[]
  readonly remarks: readonly string[]
}

type Refused = Extract<TraceReading, { ok: false }>
type HeadLine = { readonly line: number; readonly text: string }

const HEAD_LINES = 2000
const HEAD_CHARACTERS = 400_000
const DIVIDERS: readonly Divider[] = ['\t', ';', ',', ' ']
const KEPT_PREAMBLE = 40
export const MOST_CELLS = 256

/** The first lines that say anything. */
export function headOf(lines: Lines): readonly HeadLine[] {
  const head: HeadLine[] = []
  while (head.length < HEAD_LINES && lines.at() < HEAD_CHARACTERS) {
    const text = lines.next()
    if (text === undefined) break
    if (text.trim() !== '') head.push({ line: lines.line(), text })
  }
  return head
}

/** Reads the head; a sentence where there is no table of frequencies and levels in it. */
export function layoutOf(head: readonly HeadLine[], options: ReadOptions): Layout | Refused {
  const found = tableIn(head)
  if (found === undefined)
    return refused(
      'There is no table of figures in the first lines of this text: rows of a frequency and a level, divided by tabs, semicolons, commas or spaces.',
    )
  const { divider, rows, before, hasDecimalComma } = found
  const [first] = rows
  if (first === undefined) return refused('There is no row of figures in this text.')
  if (hasDecimalComma) {
    const doubtful = groupedCell(rows)
    if (doubtful) return doubtful
  }
  const headings = headingsOf(before, divider, first.cells.length)
  const frequencyAt = frequencyColumn(headings, rows, hasDecimalComma)
  if (frequencyAt === undefined)
    return refused(
      `From line ${first.line} on there are figures, but no column rises like a frequency: give the column of frequencies a heading such as “Frequency (Hz)”.`,
      first.line,
    )
  const keyed = keyedUnits(before, divider)
  const columns = levelColumnsOf({ headings, rows, frequencyAt, hasDecimalComma, keyedScale: keyed.scale })
  const chosen = columns.find(({ column }) => column.at === options.levelAt) ?? bestOf(columns)
  if (chosen === undefined)
    return refused(
      `Line ${first.line} holds a frequency and no level beside it: there have to be two columns of figures.`,
      first.line,
      frequencyAt + 2,
    )
  const inCells = unitBeside(rows, frequencyAt, hasDecimalComma, frequencyUnitOf)
  const inHeader = frequencyUnitIn(headings[frequencyAt] ?? '') ?? keyed.frequency
  return {
    divider,
    hasDecimalComma,
    firstLine: first.line,
    frequencyAt,
    frequencyUnit: options.frequencyUnit ?? inCells ?? inHeader,
    frequencyUnitFrom: options.frequencyUnit ? 'user' : inCells ? 'cells' : inHeader ? 'header' : 'size',
    levelAt: chosen.column.at,
    scale: options.levelUnit === undefined ? chosen.scale : scaleIn(options.levelUnit),
    levelColumns: columns.map(({ column }) => column),
    preamble: before.slice(0, KEPT_PREAMBLE).map(({ text }) => text.trim().slice(0, 200)),
    remarks:
      columns.length > 1 && options.levelAt === undefined
        ? [`There are ${columns.length} columns of figures; column ${chosen.column.at + 1} is taken as the level.`]
        : [],
  }
}

const refused = (message: string, line?: number, column?: number): Refused => ({
  ok: false,
  message,
  ...(line === undefined ? {} : { line }),
  ...(column === undefined ? {} : { column }),
})

type Row = { readonly line: number; readonly cells: readonly string[] }
type Table = {
  readonly divider: Divider
  readonly hasDecimalComma: boolean
  readonly rows: readonly Row[]
  readonly before: readonly HeadLine[]
}

/** The longest run of rows of figures, by the divider that makes the most of them. */
function tableIn(head: readonly HeadLine[]): Table | undefined {
  let best: (Table & { readonly score: number }) | undefined
  for (const divider of DIVIDERS) {
    const hasDecimalComma = divider !== ','
    const { from, rows, score } = longestRun(head, divider, hasDecimalComma)
    if (score > (best?.score ?? 0)) best = { divider, hasDecimalComma, rows, before: head.slice(0, from), score }
  }
  return best
}

function longestRun(head: readonly HeadLine[], divider: Divider, hasDecimalComma: boolean) {
  let best = { from: 0, rows: [] as Row[], score: 0 }
  let run = { from: 0, rows: [] as Row[], score: 0 }
  head.forEach(({ line, text }, i) => {
    if (run.rows.length > 0 && isComment(text)) return
    const cells = cellsOf(text, divider)
    const [first] = run.rows
    const score = cells.length > MOST_CELLS ? 0 : scoreOf(cells, hasDecimalComma)
    if (score === 0 || (first !== undefined && first.cells.length !== cells.length))
      run = score === 0 ? { from: i + 1, rows: [], score: 0 } : { from: i, rows: [], score: 0 }
    if (score > 0) {
      run.rows.push({ line, cells })
      run.score += score
    }
    if (run.score > best.score) best = run
  })
  return best
}

/** 2 for a row of figures alone, 1 where words stand beside two figures, 0 for anything else. */
function scoreOf(cells: readonly string[], hasDecimalComma: boolean): number {
  const filled = cells.filter((cell) => cell !== '')
  const figures = filled.filter((cell) => !Number.isNaN(measureIn(cell, hasDecimalComma).figure)).length
  return figures < 2 ? 0 : figures === filled.length ? 2 : 1
}

/** Where every comma stands before three digits, as in "150,000", nobody can tell what it is. */
function groupedCell(rows: readonly Row[]): Refused | undefined {
  let doubtful: { line: number; column: number; cell: string } | undefined
  for (const { line, cells } of rows)
    for (const [i, cell] of cells.entries()) {
      if (!cell.includes(',')) continue
      if (!couldBeGrouped(cell)) return undefined
      doubtful ??= { line, column: i + 1, cell }
    }
  if (doubtful === undefined) return undefined
  const { line, column, cell } = doubtful
  return refused(
    `Line ${line}, column ${column}: “${cell}” could be ${cell.replace(',', '')} or ${cell.replace(',', '.')}; write the file with a decimal point and without grouping.`,
    line,
    column,
  )
}

/** What stands above each column: the last lines before the table with as many cells and no figures. */
function headingsOf(before: readonly HeadLine[], divider: Divider, width: number): readonly string[] {
  const headings: string[] = Array.from({ length: width }, () => '')
  for (const { text } of before.slice(-3)) {
    const bare = withoutMark(text)
    if (KEYED.test(bare)) continue
    const cells = [divider, ...DIVIDERS].map((one) => cellsOf(bare, one)).find(({ length }) => length === width)
    if (cells === undefined || !cells.some((cell) => frequencyUnitIn(cell) || levelScaleIn(cell) || isWord(cell)))
      continue
    if (cells.some((cell) => !Number.isNaN(measureIn(cell, true).figure))) continue
    cells.forEach((cell, i) => {
      headings[i] = `${headings[i]} ${cell}`.trim()
    })
  }
  return headings
}

const FREQUENCY_WORD = /freq|frequenz|\bhz\b|\bf\b/i
const LEVEL_WORD = /level|pegel|ampl|magn|peak|aver|\bavg?\b|quasi|\bqp\b|\bpk\b|reading|value|volt|trace|spectrum/i
const NO_LEVEL =
  /phase|angle|\bdeg|height|azimuth|limit|margin|delta|over|\brbw\b|bandwidth|corr|factor|transd|time|\bno\b|#|index|\bs\d\d/i
const isWord = (cell: string): boolean => FREQUENCY_WORD.test(cell) || LEVEL_WORD.test(cell)

function frequencyColumn(
  headings: readonly string[],
  rows: readonly Row[],
  hasDecimalComma: boolean,
): number | undefined {
  const inUnits = [...(rows[0]?.cells.keys() ?? [])].find((at) =>
    rows.every(({ cells }) => frequencyUnitOf(unitAt(cells, at, hasDecimalComma)) !== undefined),
  )
  if (inUnits !== undefined) return inUnits
  const named = headings.findIndex((heading) => FREQUENCY_WORD.test(heading) || frequencyUnitIn(heading) !== undefined)
  if (named >= 0) return named
  const rising = [...(rows[0]?.cells.keys() ?? [])].filter((at) => isRising(rows, at, hasDecimalComma))
  return rising.find((at) => !isCount(rows, at, hasDecimalComma)) ?? rising[0]
}

const figuresOf = (rows: readonly Row[], at: number, hasDecimalComma: boolean): readonly number[] =>
  rows.map(({ cells }) => measureIn(cells[at] ?? '', hasDecimalComma).figure)

function isRising(rows: readonly Row[], at: number, hasDecimalComma: boolean): boolean {
  const figures = figuresOf(rows, at, hasDecimalComma)
  return figures.every((figure, i) => figure >= 0 && (i === 0 || figure > (figures[i - 1] ?? 0)))
}

/** 0, 1, 2 … or 1, 2, 3 …: the number of the row. */
function isCount(rows: readonly Row[], at: number, hasDecimalComma: boolean): boolean {
  const figures = figuresOf(rows, at, hasDecimalComma)
  const from = figures[0] ?? 0
  return rows.length > 1 && (from === 0 || from === 1) && figures.every((figure, i) => figure === from + i)
}

type Candidate = { readonly column: LevelColumn; readonly scale: LevelScale; readonly rank: number }

function levelColumnsOf(q: {
  readonly headings: readonly string[]
  readonly rows: readonly Row[]
  readonly frequencyAt: number
  readonly hasDecimalComma: boolean
  readonly keyedScale: LevelScale | undefined
}): readonly Candidate[] {
  const { headings, rows, frequencyAt, hasDecimalComma } = q
  const width = rows[0]?.cells.length ?? 0
  const plain: LevelScale = q.keyedScale ?? { is: 'db', unit: undefined, addDb: 0 }
  return Array.from({ length: width }, (_, at) => at)
    .filter((at) => at !== frequencyAt && rows.every(({ cells }) => isFigure(cells[at] ?? '', hasDecimalComma)))
    .filter((at) => !isCount(rows, at, hasDecimalComma))
    .map((at) => {
      const heading = headings[at] ?? ''
      const scale = unitBeside(rows, at, hasDecimalComma, levelScaleOf) ?? levelScaleIn(heading)
      const isNamed = LEVEL_WORD.test(heading) || scale !== undefined
      return {
        column: { at, label: heading === '' ? `Column ${at + 1}` : heading, unit: (scale ?? plain).unit },
        scale: scale ?? plain,
        rank: NO_LEVEL.test(heading) ? 2 : isNamed ? 0 : 1,
      }
    })
}

const isFigure = (cell: string, hasDecimalComma: boolean) => !Number.isNaN(measureIn(cell, hasDecimalComma).figure)

const bestOf = (columns: readonly Candidate[]): Candidate | undefined =>
  [...columns].sort((a, b) => a.rank - b.rank || a.column.at - b.column.at)[0]

/** A unit written in the cells of a column, or alone in the column beside it, in every row; the first where they differ. */
function unitBeside<U>(
  rows: readonly Row[],
  at: number,
  hasDecimalComma: boolean,
  unitOf: (word: string) => U | undefined,
): U | undefined {
  const units = rows.map(({ cells }) => unitOf(unitAt(cells, at, hasDecimalComma)))
  return units.every((unit) => unit !== undefined) ? units[0] : undefined
}

const KEYED = /^\W*\S*unit/i

/** Lines of a name and a unit: "x-unit; Hz", "y-unit; dBm". */
function keyedUnits(before: readonly HeadLine[], divider: Divider) {
  let frequency: FrequencyUnit | undefined
  let scale: LevelScale | undefined
  for (const { text } of before) {
    const [key = '', value = ''] = cellsOf(withoutMark(text), text.includes('=') ? ' ' : divider)
      .join(' ')
      .split(/[=:\s]+(?=\S+$)/)
    if (!KEYED.test(key)) continue
    frequency ??= frequencyUnitOf(value)
    scale ??= levelScaleOf(value)
  }
  return { frequency, scale }
}
