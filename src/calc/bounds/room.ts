/** How much capacitance is left for the filter once everything already on the line has taken its share. */

export type Taken = {
  readonly isPair: boolean
  /** differential on pairs, to chassis on single lines */
  readonly existingF: number
  readonly crossF: number
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

/** Most marked capacitance of one capacitor: room / (n·k_high); n = 2 for a Pi. */
export function mostMarkedF(roomF: number, count: number, mostShare: number): number {
  return Math.max(0, roomF) / (count * mostShare)
}
