/**
 * Capacitance a ceramic loses to the voltage across it, by dielectric and by the build of the part. Between the points of
 * a row the loss is taken on a straight line: real curves lie below it, since they start flat.
 */
import { DIELECTRICS, type Dielectric } from './constructions.ts'
import { memory, PRACTICE, read } from './line-kinds/cite.ts'
import type { Citation, OwnPeaks } from './line-kinds/types.ts'

export const CASE_SIZES = ['filter-part', 'large-chip', 'small-chip'] as const
export type CaseSize = (typeof CASE_SIZES)[number]

export const CASE_NAMES: Readonly<Record<CaseSize, string>> = {
  'filter-part': 'tube or disc of a filter contact, 50 to 200 V',
  'large-chip': 'chip 1206 or larger, well below the largest value of its size',
  'small-chip': 'chip 0805 or smaller, or near the largest value of any size',
}

/** Share lost at a share of the rated DC voltage, with what says so. */
export type BiasPoint = { readonly voltageFrac: number; readonly lostFrac: number; readonly source: Citation }

/** Class 2 without a specified bias, rising; the first stands at no voltage. */
const NO_BIAS: BiasPoint = { voltageFrac: 0, lostFrac: 0, source: read('S23') }
export const CLASS_2_BIAS: Readonly<Record<CaseSize, readonly [BiasPoint, ...BiasPoint[]]>> = {
  'filter-part': [NO_BIAS, { voltageFrac: 1, lostFrac: 0.4, source: memory('S26', 'the worse end of 10 to 40 %') }],
  'large-chip': [
    NO_BIAS,
    { voltageFrac: 0.5, lostFrac: 0.07, source: read('S25') },
    { voltageFrac: 1, lostFrac: 0.4, source: PRACTICE },
  ],
  'small-chip': [
    NO_BIAS,
    { voltageFrac: 0.5, lostFrac: 0.5, source: read('S25') },
    { voltageFrac: 0.71, lostFrac: 0.8, source: read('S26') },
    { voltageFrac: 1, lostFrac: 0.9, source: PRACTICE },
  ],
}

/** Beyond its rated voltage nothing is known of a part. */
export const MOST_VOLTAGE_FRAC = 1

/** Points of a dielectric: none lost where bias is specified inside the temperature figure, or where there is none. */
export function biasPoints({ biasFrac }: Dielectric, size: CaseSize): readonly [BiasPoint, ...BiasPoint[]] {
  return biasFrac !== undefined && biasFrac[1] === 0 ? [NO_BIAS] : CLASS_2_BIAS[size]
}

/** Share of the marked capacitance lost at a share 0…1 of the rated voltage. */
export function lostToBias(dielectric: Dielectric, size: CaseSize, voltageFrac: number): number {
  const points = biasPoints(dielectric, size)
  const above = points.findIndex((point) => point.voltageFrac >= voltageFrac)
  const high = points[above] ?? points.at(-1)
  const low = points[above - 1]
  if (high === undefined || low === undefined || above < 0) return high?.lostFrac ?? 0
  const share = (voltageFrac - low.voltageFrac) / (high.voltageFrac - low.voltageFrac)
  return low.lostFrac + share * (high.lostFrac - low.lostFrac)
}

export const dielectricById = (id: string): Dielectric | undefined => DIELECTRICS.find((one) => one.id === id)

/** Rated voltages that filter contacts are built for, V. Common practice; the lowest serves every line below it. */
export const RATED_V: readonly [number, ...number[]] = [50, 100, 200, 500]

/**
 * Share that a class 2 filter contact can lose on a line whose own peak is known: the loss of its build at that peak over
 * the smallest rating that stands it. The worse end of 10 to 40 % at rated voltage (memory); 40 % where no peak is known.
 */
export function usualBiasFrac(peaks: OwnPeaks | undefined): number {
  const full = CLASS_2_BIAS['filter-part'].at(-1)?.lostFrac ?? 1
  if (peaks === undefined) return full
  const peakV = Math.max(...peaks.leg.map(Math.abs))
  const ratedV = RATED_V.find((volts) => volts >= peakV)
  return ratedV === undefined ? full : full * (peakV / ratedV)
}
