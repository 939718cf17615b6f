/** Where cables, capacitors with their leads, and boxes on their straps resonate. */

/** Speed of light in free space, m/s. Definition of the metre. */
export const LIGHT_M_PER_SEC = 299_792_458

export const CABLE_ENDS = ['both-grounded', 'one-grounded', 'open'] as const
export type CableEnds = (typeof CABLE_ENDS)[number]

/**
 * Lowest resonance of a length of cable in Hz: half a wave where both ends are alike (grounded or open), a quarter where
 * only one is grounded: v/(2·l) or v/(4·l). `velocityFrac` 0 to 1, metres > 0. Transmission line, textbook.
 */
export function cableHz(lengthM: number, ends: CableEnds, velocityFrac: number): number {
  return (velocityFrac * LIGHT_M_PER_SEC) / ((ends === 'one-grounded' ? 4 : 2) * lengthM)
}

/** The length whose lowest resonance lies at that frequency. */
export const cableLengthM = (hz: number, ends: CableEnds, velocityFrac: number): number =>
  cableHz(hz, ends, velocityFrac)

/** Every resonance up to `topHz`: all multiples where the ends are alike, odd ones where not. */
export function cableOrders(lowestHz: number, ends: CableEnds, topHz: number, most: number): readonly number[] {
  const step = ends === 'one-grounded' ? 2 : 1
  const found: number[] = []
  for (let order = 1; order * lowestHz <= topHz && found.length < most; order += step) found.push(order * lowestHz)
  return found
}

/** f = 1/(2π√(L·C)) in Hz. Farads and henries > 0. */
export const resonantHz = (farads: number, henries: number): number => 1 / (2 * Math.PI * Math.sqrt(farads * henries))

/** L = 1/((2πf)²·C) in H, the partner of a capacitor that resonates at f; the same with C and L exchanged. */
export const partnerOf = (hz: number, other: number): number => 1 / ((2 * Math.PI * hz) ** 2 * other)
