/** A trace against a limit, row by row: what is over, and what has to come off. */
import { levelIn } from '../level.ts'
import type { Progress } from '../types.ts'
import { bandwidthShiftDb, type Emission, limitAt, type TraceLimit } from './limit.ts'
import type { Spectrum } from './types.ts'

export type Reading = {
  readonly limit: TraceLimit
  readonly marginDb: number
  /** across which levels of volts, amperes and watts meet */
  readonly impedanceOhm: number | undefined
  /** undefined: taken to be that of the limit */
  readonly bandwidthHz: number | undefined
  readonly emission: Emission | undefined
}

export type Judged = {
  /** the trace in the unit and bandwidth of the limit */
  readonly levelDb: Float64Array
  /** NaN outside the span of the limit, or where the bandwidth does not fit */
  readonly limitDb: Float64Array
  /** 0 where nothing has to come off, and where there is no limit */
  readonly neededDb: Float64Array
  /** rows inside the span */
  readonly judgedCount: number
  /** rows over the limit itself, margin not counted */
  readonly overCount: number
  /** row of the largest excess over the limit; −1: none inside its span */
  readonly worstAt: number
  /** row of the largest need; −1: none */
  readonly neededAt: number
  /** the first row whose bandwidth is another than the method's while nothing is said of the emission; −1: none */
  readonly otherBandwidthAt: number
}

const SLICE_ROWS = 4096

/**
 * Emission: excess = level − limit. Susceptibility: the trace is the level at which equipment is upset, and excess =
 * limit − level. Needed = max(0, excess + margin). The trace is in a unit the limit can be compared with.
 */
export function* judge({ hz, db, unit }: Spectrum, reading: Reading): Generator<Progress, Judged> {
  const { limit, marginDb, impedanceOhm, bandwidthHz, emission } = reading
  const shiftDb = levelIn({ db: 0, ...(unit === undefined ? {} : { unit }) }, limit.unit, impedanceOhm)
  const sign = limit.side === 'emission' ? 1 : -1
  const levelDb = new Float64Array(hz.length)
  const limitDb = new Float64Array(hz.length).fill(Number.NaN)
  const neededDb = new Float64Array(hz.length)
  let [judgedCount, overCount, worstAt, neededAt, otherBandwidthAt] = [0, 0, -1, -1, -1]
  let worstDb = Number.NEGATIVE_INFINITY
  for (let i = 0; i < hz.length; i++) {
    if (i % SLICE_ROWS === SLICE_ROWS - 1) yield { doneFrac: i / hz.length }
    const f = hz[i] as number
    const bandwidthDb = bandwidthHz === undefined ? 0 : bandwidthShiftDb(limit, f, bandwidthHz, emission)
    levelDb[i] = (db[i] as number) + shiftDb + (bandwidthDb ?? 0)
    const allowed = limitAt(limit, f)
    if (allowed === undefined) continue
    if (bandwidthDb === undefined) {
      if (otherBandwidthAt < 0) otherBandwidthAt = i
      continue
    }
    limitDb[i] = allowed
    judgedCount += 1
    const excess = sign * ((levelDb[i] as number) - allowed)
    if (excess > 0) overCount += 1
    if (excess > worstDb) {
      worstDb = excess
      worstAt = i
    }
    const needed = Math.max(0, excess + marginDb)
    neededDb[i] = needed
    if (needed > 0 && (neededAt < 0 || needed > (neededDb[neededAt] as number))) neededAt = i
  }
  return { levelDb, limitDb, neededDb, judgedCount, overCount, worstAt, neededAt, otherBandwidthAt }
}
