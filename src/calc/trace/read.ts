/** A spectrum read from the text of a file, a paste or a drop, in slices. */
import { quote } from '../quantity/reading.ts'
import type { Progress } from '../types.ts'
import { cellsOf, DIVIDER_NAME, measureIn, unitAt } from './cells.ts'
import { type FastRow, makeFastRow } from './fast-row.ts'
import { headOf, type Layout, layoutOf, MOST_CELLS } from './head.ts'
import { inOrder } from './order.ts'
import { isComment, type Lines, linesOf, MOST_LINE_CHARACTERS } from './text-lines.ts'
import type { FrequencyUnit, ReadOptions, TraceReading } from './types.ts'
import { dbOf, frequencyUnitOf, HZ_PER, levelScaleOf } from './units.ts'

export const MOST_ROWS = 1_000_000
const MOST_CHARACTERS = 250_000_000
/** Lines between two yields: well under a frame on a slow phone. */
const SLICE_LINES = 2000
/** Figures of frequencies up to here without a unit could be kHz or MHz; above they can only be Hz. */
const SURELY_HZ = 2e7
const MOST_LEVEL_DB = 400

type Refused = Extract<TraceReading, { ok: false }>

/**
 * Frequency (Hz) and level (dB of its unit) of every row: columns found by heading or shape, comments and what stands
 * before the table left out. Yields progress, may be abandoned. A sentence with line and column where something cannot
 * be read: nothing is half taken over. Time grows with the length of the text.
 */
export function* readTrace(text: string, options: ReadOptions = {}): Generator<Progress, TraceReading> {
  if (text.length > MOST_CHARACTERS)
    return refused('This text is longer than 250 million characters; export one sweep.')
  const start = linesOf(text)
  const head = headOf(start)
  const long = start.tooLong()
  if (long !== undefined) return longLine(long)
  const layout = layoutOf(head, options)
  if ('ok' in layout) return layout
  const rows = yield* rowsOf(linesOf(text), layout, text.length, options.levelUnit !== undefined)
  if ('ok' in rows) return rows
  const { figures, levels, count } = rows
  const unit = unitFor(layout, figures, count)
  if (unit === undefined)
    return {
      ...refused('The file does not say whether its frequencies are in Hz, kHz, MHz or GHz: choose the unit.'),
      asks: 'frequency-unit',
    }
  const perUnit = HZ_PER[unit]
  const hz = new Float64Array(count)
  for (let i = 0; i < count; i++) hz[i] = (figures[i] as number) * perUnit
  yield { doneFrac: 0.97 }
  const ordered = inOrder(hz, levels.slice(0, count))
  if (ordered === undefined)
    return refused(
      'The frequencies neither rise nor fall from row to row: export one sweep, or sort the rows by frequency.',
    )
  return {
    ok: true,
    spectrum: { ...ordered, unit: options.levelUnit ?? layout.scale.unit },
    levelColumns: layout.levelColumns,
    levelAt: layout.levelAt,
    frequencyUnitFrom: layout.frequencyUnitFrom,
    preamble: layout.preamble,
    remarks: [...layout.remarks, ...rows.remarks],
  }
}

const refused = (message: string, line?: number, column?: number): Refused => ({
  ok: false,
  message,
  ...(line === undefined ? {} : { line }),
  ...(column === undefined ? {} : { column }),
})

const longLine = (line: number): Refused =>
  refused(`Line ${line} is longer than ${MOST_LINE_CHARACTERS} characters: that is no table of figures.`, line)

type Rows = {
  readonly figures: Float64Array
  readonly levels: Float64Array
  readonly count: number
  readonly remarks: readonly string[]
}

function* rowsOf(
  lines: Lines,
  layout: Layout,
  length: number,
  isScaleChosen: boolean,
): Generator<Progress, Rows | Refused> {
  let figures = new Float64Array(4096)
  let levels = new Float64Array(4096)
  let count = 0
  let zeros = 0
  let footerLine = 0
  const read = makeRowReader(layout, isScaleChosen)
  const readFast = makeFastRow(layout)
  const fast: FastRow = { frequency: 0, level: 0 }
  const add = (frequency: number, levelDb: number) => {
    if (count === figures.length) [figures, levels] = [grown(figures), grown(levels)]
    figures[count] = frequency
    levels[count] = levelDb
    count += 1
  }
  for (let text = lines.next(); text !== undefined; text = lines.next()) {
    const line = lines.line()
    if (line % SLICE_LINES === 0) yield { doneFrac: 0.95 * (lines.at() / length) }
    if (line < layout.firstLine) continue
    if (footerLine === 0 && count < MOST_ROWS && readFast(text, fast) && fast.frequency > 0) {
      const levelDb = dbOf(fast.level, layout.scale)
      if (Math.abs(levelDb) <= MOST_LEVEL_DB) {
        add(fast.frequency, levelDb)
        continue
      }
    }
    if (text.trim() === '' || isComment(text)) continue
    const row = read(text, line)
    if (typeof row === 'object') {
      if (!isFooter(text, layout)) return row
      if (footerLine === 0) footerLine = line
      continue
    }
    if (footerLine > 0)
      return refused(
        `The table ends on line ${footerLine} and figures go on on line ${line}: keep one trace in a file.`,
        line,
      )
    if (row === 0) {
      zeros += 1
      continue
    }
    if (count === MOST_ROWS)
      return refused(`There are more than ${MOST_ROWS.toLocaleString('en')} rows; line ${line} is one too many.`, line)
    add(row, read.levelDb())
  }
  const long = lines.tooLong()
  if (long !== undefined) return longLine(long)
  if (count === 0) return refused('The table has no row with a frequency above 0.', layout.firstLine)
  const remarks: string[] = []
  if (zeros > 0) remarks.push(`${zeros} ${zeros === 1 ? 'row' : 'rows'} at 0 Hz left out.`)
  if (footerLine > 0) remarks.push(`Left out from line ${footerLine} on: it is text.`)
  return { figures, levels, count, remarks }
}

const grown = (values: Float64Array): Float64Array<ArrayBuffer> => {
  const more = new Float64Array(values.length * 2)
  more.set(values)
  return more
}

/** A line of words alone below the table. */
const isFooter = (text: string, { divider, hasDecimalComma }: Layout): boolean =>
  cellsOf(text, divider).every(
    (cell) => Number.isNaN(measureIn(cell, hasDecimalComma).figure) && !/^[+-]?[\d.,]/.test(cell),
  )

type RowReader = ((text: string, line: number) => number | Refused) & { readonly levelDb: () => number }

/** Reads the frequency of a row as it stands, in the unit of the column; its level is asked for afterwards. */
function makeRowReader(layout: Layout, isScaleChosen: boolean): RowReader {
  const { divider, hasDecimalComma, frequencyAt, levelAt, scale } = layout
  let levelDb = 0
  const cellRefused = (line: number, at: number, cell: string, wanted: string): Refused =>
    refused(
      cell === ''
        ? `Line ${line}, column ${at + 1}: there is no ${wanted}. Cells are divided by ${DIVIDER_NAME[divider]}.`
        : `Line ${line}, column ${at + 1}: “${quote(cell)}” is no ${wanted}; it takes a number such as ${wanted === 'level' ? '45.2' : '150000'}.`,
      line,
      at + 1,
    )
  const read = (text: string, line: number): number | Refused => {
    const cells = cellsOf(text, divider)
    if (cells.length > MOST_CELLS) return refused(`Line ${line} has more than ${MOST_CELLS} columns.`, line, MOST_CELLS)
    const frequencyCell = cells[frequencyAt] ?? ''
    const levelCell = cells[levelAt] ?? ''
    const { figure, unit } = measureIn(frequencyCell, hasDecimalComma)
    if (!Number.isFinite(figure)) return cellRefused(line, frequencyAt, frequencyCell, 'frequency')
    if (figure < 0)
      return refused(
        `Line ${line}, column ${frequencyAt + 1}: a frequency of “${quote(frequencyCell)}” is below 0.`,
        line,
        frequencyAt + 1,
      )
    const level = measureIn(levelCell, hasDecimalComma)
    if (!Number.isFinite(level.figure)) return cellRefused(line, levelAt, levelCell, 'level')
    const levelUnit = isScaleChosen ? '' : unitAt(cells, levelAt, hasDecimalComma)
    const ownScale = levelUnit === '' ? scale : (levelScaleOf(levelUnit) ?? scale)
    if (level.unit !== '' && levelScaleOf(level.unit) === undefined)
      return cellRefused(line, levelAt, levelCell, 'level')
    levelDb = dbOf(level.figure, ownScale)
    if (Number.isNaN(levelDb))
      return refused(
        `Line ${line}, column ${levelAt + 1}: “${quote(levelCell)}” has no level in dB; a voltage or current is above 0.`,
        line,
        levelAt + 1,
      )
    if (ownScale.unit !== scale.unit)
      return refused(
        `Line ${line}, column ${levelAt + 1}: “${quote(levelCell)}” is in another unit than the rows before; give one unit.`,
        line,
        levelAt + 1,
      )
    if (Math.abs(levelDb) > MOST_LEVEL_DB)
      return refused(
        `Line ${line}, column ${levelAt + 1}: “${quote(levelCell)}” is outside −${MOST_LEVEL_DB} to ${MOST_LEVEL_DB} dB.`,
        line,
        levelAt + 1,
      )
    const own = frequencyUnitOf(unitAt(cells, frequencyAt, hasDecimalComma))
    if (own === undefined && unit !== '') return cellRefused(line, frequencyAt, frequencyCell, 'frequency')
    return inColumnUnit(figure, own, layout.frequencyUnit)
  }
  return Object.assign(read, { levelDb: () => levelDb })
}

/** A figure with a unit of its own in the unit of its column. */
function inColumnUnit(figure: number, own: FrequencyUnit | undefined, column: FrequencyUnit | undefined): number {
  if (own === undefined || column === undefined || own === column) return figure
  return figure * (HZ_PER[own] / HZ_PER[column])
}

function unitFor(layout: Layout, figures: Float64Array, count: number): FrequencyUnit | undefined {
  if (layout.frequencyUnit !== undefined) return layout.frequencyUnit
  let most = 0
  for (let i = 0; i < count; i++) most = Math.max(most, figures[i] as number)
  return most > SURELY_HZ ? 'Hz' : undefined
}
