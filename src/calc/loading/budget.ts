/** Which farads the signal sees. What is left for a filter under a ceiling is bounds/room.ts. */

/** `legF` is the total per leg to chassis; `crossF` and `existingF` lie between the wires of a pair. */
export type Placed = {
  readonly isPair: boolean
  readonly legF: number
  readonly crossF: number
  readonly suppressorF: number
  readonly existingF: number
}

/**
 * Capacitance in F the signal sees. Pair: Cx + (C + Cs)/2 + existing, because the two legs to chassis are in series.
 * Single line: C + Cs + existing, all in parallel; a line-to-line capacitor has no meaning there.
 */
export function seenFarads({ isPair, legF, crossF, suppressorF, existingF }: Placed): number {
  return isPair ? crossF + (legF + suppressorF) / 2 + existingF : legF + suppressorF + existingF
}
