/** A pair with a capacitor from each leg to chassis: what differential and common mode see, and how one turns into the other. */

export type PairLegs = { readonly legF: number; readonly leg2F: number }

/** Capacitance in F between the wires, C1·C2/(C1 + C2), plus a line-to-line capacitor. Farads ≥ 0. */
export function pairDifferentialF({ legF, leg2F, crossF = 0 }: PairLegs & { readonly crossF?: number }): number {
  const sum = legF + leg2F
  return crossF + (sum === 0 ? 0 : legF * (leg2F / sum))
}

/** Capacitance in F both wires together have to chassis: C1 + C2. */
export const pairCommonF = ({ legF, leg2F }: PairLegs): number => legF + leg2F

export type PairCircuit = PairLegs & { readonly legOhm: number }

/**
 * |Vdm/Vcm| with a series resistance in each leg and an open load:
 * ω·R·|C1 − C2| / (√(1 + (ω·R·C1)²)·√(1 + (ω·R·C2)²)). Exact; 0 for equal legs or at DC. All ≥ 0.
 */
export function conversionRatio({ legF, leg2F, legOhm }: PairCircuit, hz: number): number {
  const omegaOhm = 2 * Math.PI * hz * legOhm
  return (omegaOhm * Math.abs(legF - leg2F)) / Math.hypot(1, omegaOhm * legF) / Math.hypot(1, omegaOhm * leg2F)
}

/** Largest conversion at any frequency: |C1 − C2|/(C1 + C2); 0 for two empty legs. */
export function worstConversionRatio({ legF, leg2F }: PairLegs): number {
  const sum = legF + leg2F
  return sum === 0 ? 0 : Math.abs(legF - leg2F) / sum
}

/** Where it lies, 1/(2π·R·√(C1·C2)) in Hz; undefined when one leg is empty (it rises without end) or R is 0. */
export function worstConversionHz({ legF, leg2F, legOhm }: PairCircuit): number | undefined {
  const hz = 1 / (2 * Math.PI * legOhm * Math.sqrt(legF) * Math.sqrt(leg2F))
  return Number.isFinite(hz) ? hz : undefined
}

/** Ratio to dB. Ratio > 0. */
export const ratioDb = (ratio: number): number => 20 * Math.log10(ratio)
