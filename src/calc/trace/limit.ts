/** The limit a trace is held against: a published one with its relaxation, or one's own by points. */
import { CE102_RELAXATION, type LimitPoint, limitDbAt } from '../../reference/limit-lines.ts'
import { bandwidthsAt, type Detector, type MethodBandwidth, type MethodLine } from '../../reference/method-lines.ts'
import type { LevelUnit } from '../quantity/level-unit.ts'

export type TraceLimit = {
  readonly name: string
  readonly unit: LevelUnit
  readonly side: 'emission' | 'susceptibility'
  readonly segments: readonly (readonly [LimitPoint, LimitPoint])[]
  /** added to every point */
  readonly relaxedDb: number
  /** empty: nothing is compared */
  readonly bandwidths: readonly MethodBandwidth[]
  readonly reads: Detector | undefined
}

/** A published line for equipment of a nominal voltage, in V: the next lower row of the relaxation counts. */
export function limitOf(line: MethodLine, nominalV: number): TraceLimit {
  const rows = line.isRelaxed ? CE102_RELAXATION.filter((row) => row.nominalV <= nominalV) : []
  return {
    name: line.name,
    unit: line.quantity,
    side: line.side,
    segments: line.segments,
    relaxedDb: rows.at(-1)?.db ?? 0,
    bandwidths: line.bandwidths,
    reads: line.reads,
  }
}

/** Straight in log frequency from point to point; two points at one frequency are a step. */
export function segmentsOf(points: readonly LimitPoint[]): readonly (readonly [LimitPoint, LimitPoint])[] {
  const rising = [...points].sort((a, b) => a.hz - b.hz)
  return rising.slice(1).flatMap((to, i) => {
    const from = rising[i] as LimitPoint
    return to.hz > from.hz ? [[from, to] as const] : []
  })
}

/** The limit in dB of its unit at a frequency; undefined outside its span. */
export function limitAt(limit: TraceLimit, hz: number): number | undefined {
  const db = limitDbAt(limit, hz)
  return db === undefined ? undefined : db + limit.relaxedDb
}

/** How an emission grows with the bandwidth it is read in: a line of its own not at all, noise as power, pulses as voltage. */
export type Emission = 'narrowband' | 'noise' | 'impulsive'
const TENS: Readonly<Record<Emission, number>> = { narrowband: 0, noise: 10, impulsive: 20 }

/**
 * dB to add to a level read in `bandwidthHz` to have it in the bandwidth of the method at `hz`: 0, 10 or 20·log10 of the
 * ratio. undefined: another bandwidth, and what the emission is like is not said. Where two rows of the method meet, the
 * wider counts. Source: definitions of a sine, of noise and of pulses shorter than 1/bandwidth.
 */
export function bandwidthShiftDb(
  { bandwidths }: Pick<TraceLimit, 'bandwidths'>,
  hz: number,
  bandwidthHz: number,
  emission: Emission | undefined,
): number | undefined {
  const allowed = bandwidthsAt({ bandwidths }, hz)
  if (allowed.length === 0 || allowed.includes(bandwidthHz)) return 0
  if (emission === undefined) return undefined
  const ratioDb = TENS[emission] * Math.log10(Math.max(...allowed) / bandwidthHz)
  return ratioDb
}
