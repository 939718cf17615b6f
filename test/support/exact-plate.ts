/**
 * Every filtered contact of a connector returns its current through one plate, and the plate through one bond: the exact
 * sums at one point of every tolerance, themselves held against ngspice.
 *
 * One contact, plate at Vp against the reference of the circuit, chain A B C D of its filter against the plate:
 *   N = A + Zs·C + YL·(B + Zs·D)
 *   V2 − Vp = (E − Vp·(1 + YL·(B + Zs·D)))/N,   I into the plate = C·(V2 − Vp) + (D − 1)·YL·V2
 * Each is affine in E and Vp, so that Vp = Σ α·E / (1/Zb + Σ β) with all contacts of the connector in the sums.
 * Valid for finite parts ≥ 0 and frequencies > 0. Source: superposition (derived).
 */
import {
  add,
  type Complex,
  divide,
  magnitude,
  multiply,
  ONE,
  subtract,
  ZERO,
} from '../../src/calc/connector/complex.ts'

/** One element at one frequency: an impedance in the line, or an admittance to the plate. */
export type Stage = { readonly seriesOhm: Complex } | { readonly shuntSie: Complex }

/** One contact at one frequency. No stage = a bare contact: it takes no part in the plate's current. */
export type PlateContact = {
  readonly stages: readonly Stage[]
  readonly sourceOhm: Complex
  readonly loadSie: Complex
}

/** What one contact does to the plate and takes from it, per volt. */
export type PlateShare = {
  /** plate current per volt of its own source, and per volt of the plate (away from it) */
  readonly alphaSie: Complex
  readonly betaSie: Complex
  /** load volts per volt of its own source (plate at rest), and per volt of the plate */
  readonly ownRatio: Complex
  readonly plateRatio: Complex
  /** load volts per volt of the source without the filter */
  readonly bareRatio: Complex
}

/** The share of one contact at its frequency. */
export function plateShareOf({ stages, sourceOhm: zs, loadSie: yl }: PlateContact): PlateShare {
  let [a, b, c, d]: [Complex, Complex, Complex, Complex] = [ONE, ZERO, ZERO, ONE]
  for (const stage of stages) {
    if ('seriesOhm' in stage) {
      b = add(b, multiply(a, stage.seriesOhm))
      d = add(d, multiply(c, stage.seriesOhm))
    } else {
      a = add(a, multiply(b, stage.shuntSie))
      c = add(c, multiply(d, stage.shuntSie))
    }
  }
  const reach = multiply(yl, add(b, multiply(zs, d)))
  const n = add(add(a, multiply(zs, c)), reach)
  const into = add(c, multiply(subtract(d, ONE), yl))
  const fall = divide(add(ONE, reach), n)
  return {
    alphaSie: divide(into, n),
    betaSie: subtract(multiply(into, fall), multiply(subtract(d, ONE), yl)),
    ownRatio: divide(ONE, n),
    plateRatio: subtract(ONE, fall),
    bareRatio: divide(ONE, add(ONE, multiply(zs, yl))),
  }
}

export type SharedLoss = {
  /** loss with this contact's own current alone in the bond: what a check of its line says, dB */
  readonly aloneDb: number
  /** loss with every contact driven alike at once (common mode of the whole bundle), dB */
  readonly togetherDb: number
  /** what the contact receives while it is quiet and all others are driven, against its bare level, dB (≤ 0 = below) */
  readonly receivedDb: number
}

/** 20·log10 of a ratio; −400 dB where nothing arrives. */
const FLOOR_DB = -400
const decibels = (ratio: number) => (ratio > 1e-20 ? 20 * Math.log10(ratio) : FLOOR_DB)

/**
 * Each contact alone, together with all others, and quiet among them, for one bond impedance at one frequency.
 * `driven` are the volts of each source against the contact's own (1 = all alike); default 1.
 */
export function sharedLosses(
  contacts: readonly PlateContact[],
  bondOhm: Complex,
  driven: readonly number[] = contacts.map(() => 1),
): readonly SharedLoss[] {
  const shares = contacts.map(plateShareOf)
  const volts = (i: number): Complex => [driven[i] ?? 1, 0]
  const allAlpha = shares.reduce((sum, share, i) => add(sum, multiply(share.alphaSie, volts(i))), ZERO)
  const allBeta = shares.reduce((sum, share) => add(sum, share.betaSie), ZERO)
  // Vp = Zb·α/(1 + Zb·β): finite for a bond of no impedance
  const plate = (alpha: Complex, beta: Complex) => divide(multiply(bondOhm, alpha), add(ONE, multiply(bondOhm, beta)))
  return shares.map((share, i) => {
    const own = volts(i)
    const bare = magnitude(multiply(share.bareRatio, own))
    const alone = add(share.ownRatio, multiply(share.plateRatio, plate(share.alphaSie, share.betaSie)))
    const together = add(multiply(share.ownRatio, own), multiply(share.plateRatio, plate(allAlpha, allBeta)))
    const others = subtract(allAlpha, multiply(share.alphaSie, own))
    const received = multiply(share.plateRatio, plate(others, allBeta))
    return {
      aloneDb: -decibels(magnitude(alone) / magnitude(share.bareRatio)),
      togetherDb: bare > 0 ? -decibels(magnitude(together) / bare) : 0,
      receivedDb: decibels(magnitude(received) / magnitude(share.bareRatio)),
    }
  })
}
