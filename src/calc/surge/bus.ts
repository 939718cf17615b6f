/** A surge of the bus that lasts: what a suppressor would have to carry if it conducted through it. */
import { squareFactor } from './rating.ts'

export type LongSurge = {
  readonly currentA: number
  readonly clampV: number
  readonly powerW: number
  readonly energyJ: number
}

/** Length of the abnormal surge a bus peak is taken to have when none is stated. */
export const LONG_SURGE_SEC = 0.1

/**
 * Current, power and energy at a steady bus voltage: I = (V − Vbr)/(Rbus + Rd), P = I·(Vbr + Rd·I), E = P·t.
 * undefined when it does not conduct. Example: 80 V, 45 V, 0.1 Ω, Rd 0, 100 ms: 350 A, 15.75 kW, 1575 J.
 */
export function longSurge(given: {
  readonly busV: number
  readonly busOhm: number
  readonly breakdownV: number
  readonly dynamicOhm: number
  readonly forSec: number
}): LongSurge | undefined {
  const { busV, busOhm, breakdownV, dynamicOhm, forSec } = given
  if (busV <= breakdownV) return undefined
  const currentA = (busV - breakdownV) / (busOhm + dynamicOhm)
  const clampV = breakdownV + dynamicOhm * currentA
  return { currentA, clampV, powerW: currentA * clampV, energyJ: currentA * clampV * forSec }
}

/** Power a part may carry for so long: rating times √(424.4 µs/t). W. */
export const longPulseW = ({ ratedPulseW, forSec }: { ratedPulseW: number; forSec: number }): number =>
  ratedPulseW * squareFactor(forSec)
