/** The most an LC lifts a level by between two resistances, in closed form: an inductor in series, a capacitor behind it. */
export type LcBetween = {
  readonly sourceOhm: number
  readonly loadOhm: number
  readonly inductanceH: number
  readonly capacitanceF: number
}

/** Greatest |H| of (Rs + Rl)/(Rs + Rl + s·(L + Rs·Rl·C) + s²·L·C·Rl), by the zero of the slope of |D|². */
export function lcGainDb({ sourceOhm, loadOhm, inductanceH, capacitanceF }: LcBetween): number {
  const [a, b, c] = [
    sourceOhm + loadOhm,
    inductanceH + sourceOhm * loadOhm * capacitanceF,
    inductanceH * capacitanceF * loadOhm,
  ]
  const square = (2 * a * c - b * b) / (2 * c * c)
  return 20 * Math.log10(a / Math.hypot(a - square * c, Math.sqrt(square) * b))
}
