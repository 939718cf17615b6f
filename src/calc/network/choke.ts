/**
 * A common-mode choke: every wire of a circuit, its return included, through one core, once each in the same direction.
 *
 * Two windings L1, L2 with mutual inductance M. Entered is L, what one winding shows with the other open. A data sheet
 * that measures the windings in parallel states (L + M)/2 a core, which is L less half a leakage at most: the same number
 * within the leakage, and read as one winding it promises the less of the two.
 *   leakage (windings in series, opposing; within the coupling also one winding with the other shorted) = L1 + L2 − 2M
 *   M = L − leakage/2,  L1, L2 = L·(1 ± mismatch/2)
 * Each winding has its resistance in series and a capacitance across its coil. Currents of both legs magnetise the core
 * alike in common mode and cancel in differential mode, so that a leg sees
 *   common L + M = 2·L − leakage/2,  differential L − M = leakage/2.
 * Around one wire nothing cancels: it is an inductor of L that the whole current of the wire magnetises.
 * Source: coupled inductors, any textbook; the modes derived, checked against ngspice.
 */
import { NO_SERIES, type SeriesPart } from './circuit.ts'

export type Choke = {
  /** one winding with the other open, H */
  readonly windingH: number
  /** both windings in series, opposing: what the loop of the pair sees, H; 0 to 2·windingH */
  readonly leakageH: number
  /** resistance of each winding, Ω */
  readonly windingOhm: number
  /** capacitance across each winding, F */
  readonly acrossF: number
  /** |L1 − L2| as a share of their mean, 0 to below 2 */
  readonly mismatchFrac: number
}

/** What the noise travels in, or that only one wire goes through the core. */
export type ChokeCurrent = 'common' | 'differential' | 'one-wire'

/** Inductance in H of each leg: 2·L − leakage/2 in common mode, leakage/2 in differential mode, L around one wire. */
export function chokePerLegH(choke: Pick<Choke, 'windingH' | 'leakageH'>, current: ChokeCurrent): number {
  const { windingH, leakageH } = choke
  if (current === 'one-wire') return windingH
  return current === 'common' ? 2 * windingH - leakageH / 2 : leakageH / 2
}

/** The choke as a part in series with each leg, equal windings. */
export function chokePart(choke: Choke, current: ChokeCurrent): SeriesPart {
  return {
    ...NO_SERIES,
    inductanceH: chokePerLegH(choke, current),
    dcrOhm: choke.windingOhm,
    parallelF: choke.acrossF,
  }
}

/** Whether two windings can be like this: the coupling k = M/√(L1·L2) lies between 0 and 1. */
export function isPossible({ windingH, leakageH, mismatchFrac }: Choke): boolean {
  const mutualH = windingH - leakageH / 2
  return mutualH >= 0 && mutualH <= windingH * Math.sqrt(1 - (mismatchFrac / 2) ** 2)
}

/** The windings one by one: L1, L2, M in H, the resistance of each in Ω, the capacitance across each in F. */
export type CoupledChoke = {
  readonly firstH: number
  readonly secondH: number
  readonly mutualH: number
  readonly ohm: number
  readonly acrossF: number
}

export const coupledOf = ({ windingH, leakageH, windingOhm, acrossF, mismatchFrac }: Choke): CoupledChoke => ({
  firstH: windingH * (1 + mismatchFrac / 2),
  secondH: windingH * (1 - mismatchFrac / 2),
  mutualH: windingH - leakageH / 2,
  ohm: windingOhm,
  acrossF,
})

/** Resistances of one leg between which the choke stands. */
export type LegEnds = { readonly sourceOhm: number; readonly loadOhm: number }

/**
 * |Vdm at the load / Vcm at the load without the choke|: common mode that unequal windings turn into signal.
 *   X = ω·(L − ω²C·det L)/Δ, Δ = (1 − ω²C·L1)(1 − ω²C·L2) − (ω²C·M)²   (coils with the capacitance across them)
 *   ratio = (Rs + Rl)·|X11 − X22| / |R² − det X + jR·(X11 + X22)|, R = Rs + Rl + winding
 * Exact for equal resistive legs; 0 for equal windings or at DC. Source: derived, checked against ngspice.
 */
export function chokeConversionRatio(choke: Choke, { sourceOhm, loadOhm }: LegEnds, hz: number): number {
  const { windingH, leakageH, windingOhm, acrossF, mismatchFrac } = choke
  const w = 2 * Math.PI * hz
  const endsOhm = sourceOhm + loadOhm
  const ohm = endsOhm + windingOhm
  const firstH = windingH * (1 + mismatchFrac / 2)
  const secondH = windingH * (1 - mismatchFrac / 2)
  const mutualH = windingH - leakageH / 2
  const b = w * w * acrossF
  const det = firstH * secondH - mutualH ** 2
  // Numerator and denominator both times Δ, so that a resonance of the windings divides by nothing.
  const delta = (1 - b * firstH) * (1 - b * secondH) - (b * mutualH) ** 2
  const across = w * (firstH - secondH)
  const sum = w * (firstH + secondH - 2 * b * det)
  // det X = ω²·det L/Δ
  const re = ohm * ohm * delta - w * w * det
  const im = ohm * sum
  return across === 0 ? 0 : (endsOhm * Math.abs(across)) / Math.hypot(re, im)
}

/**
 * Largest conversion at any frequency of windings without capacitance across them: mismatch/2, the whole of a half
 * between (Rs + Rl) and the windings' own resistance. Capacitance lifts it, most at the resonance of the leakage.
 */
export function worstChokeConversion(choke: Choke, { sourceOhm, loadOhm }: LegEnds): number {
  const endsOhm = sourceOhm + loadOhm
  return ((endsOhm / (endsOhm + choke.windingOhm)) * choke.mismatchFrac) / 2
}

/** Where it lies, R/(2π·√(L1·L2 − M²)) in Hz; undefined for windings coupled without leakage. */
export function worstChokeConversionHz(choke: Choke, { sourceOhm, loadOhm }: LegEnds): number | undefined {
  const { windingH, leakageH, windingOhm, mismatchFrac } = choke
  const det = windingH ** 2 * (1 - (mismatchFrac / 2) ** 2) - (windingH - leakageH / 2) ** 2
  return det > 0 ? (sourceOhm + loadOhm + windingOhm) / (2 * Math.PI * Math.sqrt(det)) : undefined
}

/** Leakage of a wound choke as a share of its inductance, where none is stated: 0.5 to 2 %. From memory. */
export const USUAL_LEAKAGE_FRAC = { least: 0.005, most: 0.02 } as const

/** The size of a choke over its tolerance: the inductance entered is its least, the leakage stated its most. */
export type ChokeSize = {
  readonly windingH: number
  /** undefined = not stated: the usual share is taken */
  readonly leakageH: number | undefined
  /** most over least of an inductance, ≥ 1 */
  readonly growth: number
}

/**
 * Least and most leakage in H. A sheet states the most; the least is as far below it as the usual shares are apart, a
 * quarter. Without one the usual shares of the inductance, from its least to its most.
 */
export function leakageSpanH({ windingH, leakageH, growth }: ChokeSize): Size {
  const { least, most } = USUAL_LEAKAGE_FRAC
  return leakageH === undefined
    ? { least: least * windingH, most: most * growth * windingH }
    : { least: (least / most) * leakageH, most: leakageH }
}

type Size = { readonly least: number; readonly most: number }

/** Least and most inductance in H that a leg sees of it. */
export function chokeSpanH(size: ChokeSize, current: ChokeCurrent): Size {
  const { windingH, growth } = size
  const leakage = leakageSpanH(size)
  const at = (henries: number, leakageH: number) => chokePerLegH({ windingH: henries, leakageH }, current)
  return current === 'common'
    ? { least: Math.max(0, at(windingH, leakage.most)), most: at(growth * windingH, leakage.least) }
    : { least: at(windingH, leakage.least), most: at(growth * windingH, leakage.most) }
}
