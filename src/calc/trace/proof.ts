/**
 * Whether a trace taken after the cure proves it: under its limit with the margin over the whole span of that limit, in a
 * bandwidth and with a detector that read no less than the method's, and better than the trace before. Otherwise what is
 * missing, in a sentence.
 */
import { bandwidthsAt } from '../../reference/method-lines.ts'
import { setUpTrace, type TraceSetup } from '../checks/trace/setup.ts'
import { formatEstimate, formatQuantity } from '../quantity/format.ts'
import type { Line, Progress } from '../types.ts'
import { measuredLoss } from './compare.ts'
import { type Judged, judge } from './judge.ts'
import { givenOf, withPoints } from './settle.ts'
import type { Spectrum } from './types.ts'
import { gapIn, shortOf, spanOf } from './unread.ts'

export type TracePair = {
  /** the line whose trace check names limit, margin, bandwidth and detector */
  readonly line: Line
  readonly after: Spectrum
  readonly before?: Spectrum
}

export type TraceFinding =
  | {
      readonly holds: true
      readonly limit: string
      /** least of limit − level over the whole span, margin not taken off, and where */
      readonly spareDb: number
      readonly spareAtHz: number
      readonly marginDb: number
      /** where the trace before was worst: how far over its limit, and what came off there */
      readonly worst?: { readonly hz: number; readonly overDb: number; readonly lossDb: number }
    }
  /** `misses`: it was read, and is over its limit */
  | { readonly holds: false; readonly missing: string; readonly misses?: true }

const SLICE_ROWS = 4096

const hertz = (hz: number): string => formatQuantity(hz, 'frequency', 4)
const decibels = (db: number, side: 'least' | 'most'): string => formatEstimate(db, 'decibel', side)
const missing = (sentence: string): TraceFinding => ({ holds: false, missing: sentence })
const OWN_PART = 'or enter the part of the limit that counts as a line of your own'

export function* proveTrace({ line, after, before }: TracePair): Generator<Progress, TraceFinding> {
  const setup = setUpOf(line, after)
  if ('missing' in setup) return missing(setup.missing)
  const unread = yield* unreadOf(after, setup)
  if (unread !== undefined) return missing(unread)
  const judged = yield* judgedAlone(after, setup)
  const { limit, marginDb } = setup.reading
  if (judged.neededAt >= 0) {
    const by = judged.neededDb[judged.neededAt] as number
    const at = hertz(after.hz[judged.neededAt] as number)
    return {
      holds: false,
      misses: true,
      missing: `The trace after the cure misses ${limit.name} by ${decibels(by, 'least')} at ${at}, the margin of ${decibels(marginDb, 'most')} counted.`,
    }
  }
  const worst = before === undefined ? undefined : yield* worstOf(line, before, { ...after, unit: setup.spectrum.unit })
  if (worst !== undefined && 'missing' in worst) return missing(worst.missing)
  const { worstAt } = judged
  return {
    holds: true,
    limit: limit.name,
    marginDb,
    spareDb: Math.abs((judged.limitDb[worstAt] as number) - (judged.levelDb[worstAt] as number)),
    spareAtHz: after.hz[worstAt] as number,
    ...(worst === undefined ? {} : { worst }),
  }
}

/** The limit and how the trace was read; what is missing of either. */
function setUpOf(line: Line, spectrum: Spectrum): TraceSetup | { readonly missing: string } {
  const found = givenOf(withPoints(line, spectrum, [0]))
  if ('message' in found) return { missing: `The trace check of its line refuses a field: ${found.message}` }
  const { given } = found
  if (given.limit === undefined)
    return { missing: 'Choose in the trace check of its line the limit it is held against.' }
  if (given.traceUnit === undefined)
    return { missing: 'The file names no unit of its levels: choose it in the trace check of its line.' }
  const setup = setUpTrace(given)
  if (setup === 'incomplete')
    return { missing: 'The limit of your own has no corners yet: enter them in the trace check.' }
  if ('issues' in setup) return { missing: setup.issues[0]?.message ?? 'The trace and the limit cannot be compared.' }
  if (setup.reading.limit.side === 'emission') {
    if (given.bandwidthHz === undefined)
      return { missing: 'Enter in the trace check of its line the bandwidth the traces were taken in.' }
    if (given.detector === undefined)
      return { missing: 'Enter in the trace check of its line the detector the traces were taken with.' }
  }
  return setup
}

/** What of the span of the limit the trace did not read, or read in less than the bandwidth of the method. */
function* unreadOf(
  { hz }: Spectrum,
  { reading: { limit, bandwidthHz = 0 } }: TraceSetup,
): Generator<Progress, string | undefined> {
  const { fromHz, toHz } = spanOf(limit)
  const read = shortOf(hz, limit)
  if (read !== undefined)
    return `The trace after the cure reads ${hertz(read.fromHz)} to ${hertz(read.toHz)} and ${limit.name} reaches from ${hertz(fromHz)} to ${hertz(toHz)}: measure all of it, ${OWN_PART}.`
  for (let i = 0; i < hz.length; i++) {
    if (i % SLICE_ROWS === SLICE_ROWS - 1) yield { doneFrac: i / hz.length }
    const f = hz[i] as number
    const allowed = f >= fromHz && f <= toHz ? bandwidthsAt(limit, f) : []
    // wider reads as much or more of everything
    if (allowed.length > 0 && bandwidthHz < Math.min(...allowed))
      return `The trace after the cure was read in ${hertz(bandwidthHz)} and the method takes ${hertz(Math.min(...allowed))} at ${hertz(f)}: a narrower one can read less.`
  }
  const gap = yield* gapIn(hz, limit, bandwidthHz)
  return gap === undefined
    ? undefined
    : `The trace after the cure has no row from ${hertz(gap.fromHz)} to ${hertz(gap.toHz)}: nothing was read between them.`
}

/** Row by row as it was read: a wider bandwidth than the method's is not taken off. */
function* judgedAlone(spectrum: Spectrum, { reading, spectrum: { unit } }: TraceSetup): Generator<Progress, Judged> {
  return yield* judge({ ...spectrum, unit }, { ...reading, limit: { ...reading.limit, bandwidths: [] } })
}

/** Where the trace before was worst, and what came off there; or why the two cannot be compared. `after` in its unit as set up. */
function* worstOf(
  line: Line,
  before: Spectrum,
  after: Spectrum,
): Generator<
  Progress,
  { readonly hz: number; readonly overDb: number; readonly lossDb: number } | { readonly missing: string }
> {
  const setup = setUpOf(line, before)
  if ('missing' in setup) return setup
  const judged = yield* judgedAlone(before, setup)
  if (judged.worstAt < 0) return { missing: 'No row of the trace before the cure lies inside the span of the limit.' }
  if (judged.neededAt < 0)
    return { missing: 'The trace before the cure keeps the limit with its margin as well: the two show no cure.' }
  const { worstAt } = judged
  const row = {
    hz: before.hz.slice(worstAt, worstAt + 1),
    db: before.db.slice(worstAt, worstAt + 1),
    unit: setup.spectrum.unit,
  }
  const loss = measuredLoss(row, after)
  if (!loss.ok) return { missing: loss.message }
  const sign = setup.reading.limit.side === 'emission' ? 1 : -1
  const overDb = sign * ((judged.levelDb[worstAt] as number) - (judged.limitDb[worstAt] as number))
  return { hz: before.hz[worstAt] as number, overDb, lossDb: sign * (loss.db[0] as number) }
}
