/** How much capacitance is left for the filter once everything already on the line has taken its share. */
import type { Bound } from '../types.ts'

export type Taken = {
  readonly isPair: boolean
  /** differential on pairs, to chassis on single lines */
  readonly existingF: number
  readonly crossF: number
  /** the least of it, where it has a tolerance */
  readonly crossLeastF?: number
  /** how much of `existingF` the other nodes of a bus may have, each at what its document allows one */
  readonly otherNodesF?: number
  /** per leg, at 0 V, in full */
  readonly suppressorF: number
}

/**
 * Farads per leg left under a ceiling on what the signal sees.
 *   single line: C_works − existing − suppressor
 *   pair: 2·(C_works,dm − Cx − existing) − suppressor
 * Negative = already over. Source: C_dm = Cx + Cy/2 for equal legs (derived).
 */
export function roomPerLegF(ceilingF: number, taken: Taken): number {
  return taken.isPair
    ? 2 * (ceilingF - taken.crossF - taken.existingF) - taken.suppressorF
    : ceilingF - taken.existingF - taken.suppressorF
}

/** Farads per leg left under a figure that counts each leg to chassis. What exists between the legs of a pair does not count. */
export function roomToChassisF(ceilingF: number, taken: Taken): number {
  return ceilingF - taken.suppressorF - (taken.isPair ? 0 : taken.existingF)
}

/** A most as farads of each leg to chassis: a figure between the wires of a pair stands for twice as much on each leg. */
export function perLegF({ farads, per }: Pick<Bound, 'farads' | 'per'>, isPair: boolean): number {
  return per === 'pair' && isPair ? 2 * farads : farads
}

/**
 * Farads per leg left for the filter under a most of any kind. A trial was made with the line as it is: only what comes
 * on top of it (a suppressor, a line-to-line capacitor) is taken off. Negative = already over.
 */
export function roomUnderF(bound: Pick<Bound, 'farads' | 'per' | 'by' | 'nature'>, taken: Taken): number {
  const own = bound.nature === 'permitted' ? atOneNode(taken) : taken
  const counted = bound.by.is === 'trial' ? { ...taken, existingF: 0 } : own
  if (bound.per === 'pair' || !taken.isPair) return roomPerLegF(bound.farads, counted)
  const acrossF = bound.by.is === 'trial' ? 2 * taken.crossF : 0
  return roomToChassisF(bound.farads, counted) - acrossF
}

/** What is taken of a figure for one node: nothing of what the other nodes have. */
export const atOneNode = (taken: Taken): Taken => ({
  ...taken,
  existingF: taken.existingF - (taken.otherNodesF ?? 0),
  otherNodesF: 0,
})

/** Most marked capacitance of one capacitor: room / (n·k_high); n = 2 for a Pi. */
export function mostMarkedF(roomF: number, count: number, mostShare: number): number {
  return Math.max(0, roomF) / (count * mostShare)
}
