/** What the current of the line leaves of an inductance. */
import type { SaturationLack } from './lacks.ts'

/** What is stated of the part and of the line; amperes are peak, or DC. */
export type Saturation = {
  /** share lost at `saturationA`, or at the current of the line where that is not stated */
  readonly lostFrac: number
  readonly saturationA: number | undefined
  readonly lineA: number | undefined
}

/**
 * Share of the inductance that is left for certain. Inductance only falls with current, so that up to the saturation
 * current all of the loss stated there is counted; above it nothing is known. Source: derived.
 */
export function leftAtCurrent({ lostFrac, saturationA, lineA }: Saturation): number | SaturationLack {
  if (saturationA === undefined) return 1 - lostFrac
  if (lostFrac === 0) return 'saturation-share'
  if (lineA === undefined) return 'line-current'
  return lineA > saturationA ? 'beyond-saturation' : 1 - lostFrac
}

/** A load takes most current at the least voltage: 22 of 28 V is the widest steady range of a supply (from memory). */
const LEAST_VOLTS_SHARE = 22 / 28

/** Largest steady current of a supply, A peak: √2·P/(share·V) on AC, P/(share·V) on DC. */
export const supplyPeakA = (q: { readonly loadW: number; readonly nominalRmsV: number; readonly isAc: boolean }) =>
  ((q.isAc ? Math.SQRT2 : 1) * q.loadW) / (LEAST_VOLTS_SHARE * q.nominalRmsV)
