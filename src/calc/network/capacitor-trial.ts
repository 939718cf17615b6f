/**
 * What trials with capacitors across the line say of the circuit they stand in. A capacitor reads Zs ∥ Zl, what stands
 * before it and behind it side by side, never one of them. The drop A in decibels is |Y + j·b|/|Y|, with Y the admittance
 * of both ends and b = 2π·f·C. Elementary circuit theory; below half the self-resonance of the trial part.
 */

export type CapacitorTrial = { readonly farad: number; readonly dropDb: number }

const susceptance = ({ farad }: CapacitorTrial, hz: number): number => 2 * Math.PI * hz * farad
/** The square of the drop as a ratio. */
const powerRatio = ({ dropDb }: CapacitorTrial): number => 10 ** (dropDb / 10)

/**
 * Rs ∥ Rl in ohms from one trial, both ends taken as real: √(10^(A/10) − 1)/(2π·f·C). Undefined for a drop of 0 dB or
 * less, which no real circuit gives. Frequency in hertz above 0.
 */
export function parallelFromOne(trial: CapacitorTrial, hz: number): number | undefined {
  const excess = powerRatio(trial) - 1
  return excess > 0 ? Math.sqrt(excess) / susceptance(trial, hz) : undefined
}

/** Both ends side by side: their resistive part in ohms, and the susceptance across it in siemens (positive = capacitance). */
export type Parallel = { readonly ohm: number; readonly siemens: number }

/**
 * Rs ∥ Rl in ohms and the susceptance beside it from two trials: with b = 2π·f·C and a = 10^(A/10),
 * Y² = (b2 − b1)/((a2 − 1)/b2 − (a1 − 1)/b1), B = ((a1 − 1)·Y²/b1 − b1)/2 and R = 1/√(Y² − B²). Undefined where no
 * passive circuit gives both readings, or where the two capacitors are the same.
 */
export function parallelFromTwo(one: CapacitorTrial, two: CapacitorTrial, hz: number): Parallel | undefined {
  const [b1, b2] = [susceptance(one, hz), susceptance(two, hz)]
  const [e1, e2] = [(powerRatio(one) - 1) / b1, (powerRatio(two) - 1) / b2]
  const square = (b2 - b1) / (e2 - e1)
  const siemens = (e1 * square - b1) / 2
  const conductance = square - siemens * siemens
  return Number.isFinite(square) && square > 0 && conductance > 0
    ? { ohm: 1 / Math.sqrt(conductance), siemens }
    : undefined
}

/**
 * The drop in decibels that a capacitor gives across a resistance and a susceptance side by side:
 * 10·log10((G² + (B + b)²)/(G² + B²)), with G = 1/R and b = 2π·f·C. Ohms and hertz above 0.
 */
export function dropDb({ ohm, siemens }: Parallel, farad: number, hz: number): number {
  const [g, b] = [1 / ohm, 2 * Math.PI * hz * farad]
  return 10 * Math.log10((g * g + (siemens + b) ** 2) / (g * g + siemens * siemens))
}

/**
 * The capacitance that gives `neededDb` in the same place, both ends taken as real:
 * C·√((10^(need/10) − 1)/(10^(drop/10) − 1)). Undefined for a trial that lowered nothing.
 */
export function neededFarad(trial: CapacitorTrial, neededDb: number): number | undefined {
  const excess = powerRatio(trial) - 1
  return excess > 0 ? trial.farad * Math.sqrt((10 ** (neededDb / 10) - 1) / excess) : undefined
}
