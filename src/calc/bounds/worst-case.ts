/** Least and most capacitance a marked part can have in service. */
import type { Tolerance } from '../types.ts'

export type Spread = {
  readonly tolerance: Tolerance
  readonly temperatureFrac: number
  readonly biasFrac: number
  readonly ageingDecades: number
  readonly ageingFracPerDecade: number
}

/**
 * Share of the marked value that is always left:
 *   k_low = (1 − tol)(1 − temp)(1 − bias)(1 − k)^decades
 * All fractions 0 … < 1. Example: 20 %, 25 % together with bias, two decades at 2.5 % → 0.570375.
 * Source: the factors multiply (derived); ageing per decade-hour 1–4 % for class 2, 0 for C0G (S24, read); BX −25 % (S23, read).
 */
export function leastShare(spread: Spread): number {
  return (
    (1 - spread.tolerance.lowFrac) *
    (1 - spread.temperatureFrac) *
    (1 - spread.biasFrac) *
    (1 - spread.ageingFracPerDecade) ** spread.ageingDecades
  )
}

/**
 * Most a marked part can have: k_high = (1 + tolHigh)(1 + temp). No bias and no ageing loss is taken,
 * since a fresh part at 0 V has neither. Source: derived.
 */
export function mostShare(spread: Spread): number {
  return (1 + spread.tolerance.highFrac) * (1 + spread.temperatureFrac)
}
