/**
 * The need of a whole trace on few points: the window is solved on those that carry it, the part it proposes is tried on
 * every row, rows it misses are added, until none is missed.
 */
import type { TraceGiven } from '../checks/trace/inputs.ts'
import { choiceOfUnit, setUpTrace, type TraceSetup } from '../checks/trace/setup.ts'
import { wordlessTrace } from '../checks/trace/wordless.ts'
import type { OpenWindow, WindowFigures } from '../checks/window/figures.ts'
import { leastLossAt } from '../checks/window/row.ts'
import { wordlessWindow } from '../checks/window/wordless.ts'
import { levelIn } from '../level.ts'
import { evaluateFigures, isRefused } from '../line/evaluate.ts'
import { resolve } from '../line/resolver.ts'
import { logGrid } from '../network/chain.ts'
import type { Fact, FactKey, Line, Progress, Topology, Verdict, WordlessCheck } from '../types.ts'
import { type Judged, judge, type Reading } from './judge.ts'
import { bandwidthShiftDb } from './limit.ts'
import { markOf } from './mark.ts'
import { supportRows } from './support.ts'
import type { Spectrum } from './types.ts'
import { tryRows } from './verify.ts'

export type SettleInput = { readonly line: Line; readonly spectrum: Spectrum }

/** What the window proposes for the points, and how it does on all rows. */
export type TriedPart = {
  readonly topology: Topology
  /** one capacitor as marked; absent: none is needed, or an inductor alone */
  readonly markedF?: number
  readonly verdict: Verdict
  /** every row is met over the whole box of tolerances */
  readonly holds: boolean
  /** least of loss − need over all rows, and where */
  readonly spareDb: number
  readonly spareAtHz: number
  /** least loss over the box, to draw what is left of the trace */
  readonly hz: Float64Array
  readonly lossDb: Float64Array
}

export type Settled =
  | { readonly ok: false; readonly message: string }
  | {
      readonly ok: true
      /** the points for the fields of the check, rising */
      readonly pointsHz: readonly number[]
      readonly pointsDb: readonly number[]
      readonly judgedCount: number
      readonly overCount: number
      readonly rowCount: number
      /** the limit in the unit and bandwidth of the trace; empty while none is chosen */
      readonly limitHz: Float64Array
      readonly limitDb: Float64Array
      readonly part: TriedPart | undefined
      /** marks under which the points stand for all rows, and under which a part met all of them; '' = under none */
      readonly settledFor: string
      readonly heldFor: string
    }

const MOST_POINTS = 64
const MOST_ROUNDS = 12
/** Points of the curve of what is left. */
const DRAWN = 240

export function* settle({ line, spectrum }: SettleInput): Generator<Progress, Settled> {
  const first = withPoints(line, spectrum, [0])
  const given = givenOf(first)
  if ('message' in given) return { ok: false, message: given.message }
  const setup = setUpTrace(given.given)
  if (setup === 'incomplete') return firstPoints(spectrum)
  if ('issues' in setup) return { ok: false, message: setup.issues[0]?.message ?? '' }
  const judged = yield* share(judge({ ...spectrum, unit: setup.spectrum.unit }, setup.reading), 0, 0.2)
  if (judged.otherBandwidthAt >= 0)
    return { ...(yield* pointsOf(spectrum, judged, [judged.otherBandwidthAt], setup)), part: undefined, ...UNMARKED }
  let rows: readonly number[] = startRows(spectrum, judged)
  let part: TriedPart | undefined
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const found = yield* tryPoints(line, spectrum, setup, judged, rows, 0.2 + (0.8 * round) / MOST_ROUNDS)
    part = found.part
    const added = found.missed.filter((row) => !rows.includes(row))
    if (added.length === 0 || rows.length >= MOST_POINTS) break
    // the hardest first: what carries the need stays
    rows = [...rows, ...added.slice(0, MOST_POINTS - rows.length)].sort((a, b) => a - b)
  }
  const settledLine = withPoints(line, spectrum, rows)
  return {
    ...(yield* pointsOf(spectrum, judged, rows, setup)),
    part,
    settledFor: markOn(wordlessTrace, settledLine),
    heldFor: part?.holds === true ? markOn(wordlessWindow, settledLine) : '',
  }
}

const UNMARKED = { settledFor: '', heldFor: '' } as const

/** The mark of what a check reads of a line. */
const markOn = (check: WordlessCheck, line: Line): string =>
  markOf(
    Object.fromEntries(
      resolve(line)
        .fields(check)
        .map(({ key, value }) => [key, value]),
    ),
  )

/** Where no limit is chosen yet: the highest rows, so that there is something to see. */
function firstPoints({ hz, db }: Spectrum): Settled {
  let highest = 0
  for (let i = 1; i < db.length; i++) if ((db[i] as number) > (db[highest] as number)) highest = i
  const rows = [...new Set([0, highest, hz.length - 1])]
  return {
    ok: true,
    pointsHz: rows.map((row) => hz[row] as number),
    pointsDb: rows.map((row) => db[row] as number),
    judgedCount: 0,
    overCount: 0,
    rowCount: hz.length,
    limitHz: new Float64Array(0),
    limitDb: new Float64Array(0),
    part: undefined,
    ...UNMARKED,
  }
}

/** What carries the need, and the row that is most over; where nothing does, both ends too, for how far was read. */
function startRows({ hz }: Spectrum, { neededDb, neededAt, worstAt }: Judged): readonly number[] {
  const ends = neededAt < 0 ? [0, hz.length - 1] : []
  const rows = [...supportRows(hz, neededDb), ...(worstAt < 0 ? [0] : [worstAt]), ...ends]
  return [...new Set(rows)].sort((a, b) => a - b)
}

function* pointsOf(
  { hz, db }: Spectrum,
  { judgedCount, overCount }: Judged,
  rows: readonly number[],
  { reading, spectrum: { unit } }: TraceSetup,
): Generator<Progress, Omit<Extract<Settled, { ok: true }>, 'part' | 'settledFor' | 'heldFor'>> {
  yield { doneFrac: 1 }
  return {
    ok: true,
    pointsHz: rows.map((row) => hz[row] as number),
    pointsDb: rows.map((row) => db[row] as number),
    judgedCount,
    overCount,
    rowCount: hz.length,
    ...drawnLimit(reading, unit),
  }
}

/** Points a segment of a limit is drawn with: where the bandwidth of the method changes it steps. */
const SEGMENT_POINTS = 24

/** The limit less what brings the trace to its unit and bandwidth. */
function drawnLimit(
  { limit, impedanceOhm, bandwidthHz, emission }: Reading,
  unit: Spectrum['unit'],
): { readonly limitHz: Float64Array; readonly limitDb: Float64Array } {
  const unitDb = levelIn({ db: 0, ...(unit === undefined ? {} : { unit }) }, limit.unit, impedanceOhm)
  const points = limit.segments.flatMap(([from, to]) =>
    [...logGrid(from.hz, to.hz, SEGMENT_POINTS)].map((hz) => {
      const share = Math.log(hz / from.hz) / Math.log(to.hz / from.hz)
      const bandDb = bandwidthHz === undefined ? 0 : (bandwidthShiftDb(limit, hz, bandwidthHz, emission) ?? 0)
      return [hz, from.db + (to.db - from.db) * share + limit.relaxedDb - unitDb - bandDb] as const
    }),
  )
  return { limitHz: Float64Array.from(points, ([hz]) => hz), limitDb: Float64Array.from(points, ([, db]) => db) }
}

function* tryPoints(
  line: Line,
  spectrum: Spectrum,
  setup: TraceSetup,
  { neededDb, neededAt }: Judged,
  rows: readonly number[],
  from: number,
): Generator<Progress, { readonly part: TriedPart | undefined; readonly missed: readonly number[] }> {
  const none = { part: undefined, missed: [] }
  if (setup.lacks.length > 0 || neededAt < 0) return none
  const fields = resolve(withPoints(line, spectrum, rows)).fields(wordlessWindow)
  const figures = yield* share(evaluateFigures(wordlessWindow, fields), from, 0.04)
  if (isRefused(figures) || !isOpen(figures as WindowFigures)) return none
  const { row, setup: around } = figures as OpenWindow
  const lossAt = (hz: number): number => leastLossAt(row, around, hz) ?? Number.NaN
  if (Number.isNaN(lossAt(spectrum.hz[neededAt] as number))) return none
  const tried = yield* share(tryRows(spectrum.hz, neededDb, lossAt), from + 0.04, 0.02)
  const grid = gridOver(spectrum.hz)
  return {
    missed: tried.missed,
    part: {
      topology: row.topology,
      ...(row.proposal === undefined ? {} : { markedF: row.proposal.valueF }),
      verdict: figures.verdict ?? 'unknown',
      holds: tried.missed.length === 0,
      spareDb: tried.leastDb,
      spareAtHz: spectrum.hz[tried.leastRow] as number,
      hz: grid,
      lossDb: Float64Array.from(grid, lossAt),
    },
  }
}

const isOpen = (figures: WindowFigures): boolean => figures.is === 'window'

function gridOver(hz: Float64Array): Float64Array {
  const [from, to] = [hz[0] as number, hz.at(-1) as number]
  return to > from ? logGrid(from, to, DRAWN) : Float64Array.of(from)
}

/** The line with these rows in the fields of the trace check. */
export function withPoints(line: Line, { hz, db, unit }: Spectrum, rows: readonly number[]): Line {
  const fact = (text: string): Fact => ({ text, origin: { by: 'user' } })
  const { traceRowCount: _rows, traceSettledFor: _settled, traceHeldFor: _held, ...known } = line.facts
  const facts: Partial<Record<FactKey, Fact>> = {
    ...known,
    traceHz: fact(rows.map((row) => `${hz[row]}`).join('; ')),
    traceDb: fact(rows.map((row) => `${db[row]}`).join('; ')),
    ...(unit === undefined ? {} : { traceUnit: fact(choiceOfUnit(unit)) }),
  }
  return { ...line, facts }
}

/** The values of the trace check on a line; the first refusal where a field is refused. */
export function givenOf(line: Line): { readonly given: TraceGiven } | { readonly message: string } {
  const fields = resolve(line).fields(wordlessTrace)
  const refused = fields.find(({ issue }) => issue !== undefined)
  if (refused?.issue) return { message: `${refused.input.label}: ${refused.issue.message}` }
  return { given: Object.fromEntries(fields.map(({ key, value }) => [key, value])) as TraceGiven }
}

/** A part of the work, as its share of the whole. */
function* share<R>(running: Generator<Progress, R>, from: number, width: number): Generator<Progress, R> {
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
    yield { doneFrac: from + width * step.value.doneFrac }
  }
}
