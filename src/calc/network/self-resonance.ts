/** Self-capacitance of a winding from the frequency at which it resonates. */

/** C = 1/((2π·f)²·L) in F. Hz and henries > 0. Source: resonance of L and C, textbook. */
export const selfCapacitanceF = ({ inductanceH, resonanceHz }: { inductanceH: number; resonanceHz: number }): number =>
  1 / ((2 * Math.PI * resonanceHz) ** 2 * inductanceH)

/** What stands across a coil: from its self-resonance where that is known, else the capacitance given. */
export function acrossCoilF(coil: {
  readonly inductanceH: number
  readonly resonanceHz: number | undefined
  readonly parallelF: number
}): number {
  const { inductanceH, resonanceHz, parallelF } = coil
  if (resonanceHz === undefined || inductanceH <= 0) return parallelF
  const farads = selfCapacitanceF({ inductanceH, resonanceHz })
  return Number.isFinite(farads) ? farads : parallelF
}
