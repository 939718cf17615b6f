/** A series inductor before the capacitor makes a signal line second order: damping, loss, edge. Derived from the L–C chain. */
import type { LineFamily, LineKind } from '../../reference/line-kinds.ts'
import { bitSecOf, type SignalFacts, signalOhmOf } from './signal.ts'

/** The inductor sits on the driver side; `loadOhm` Infinity = a high-impedance receiver (the least damped case). */
export type LcSection = {
  readonly henries: number
  readonly farads: number
  readonly sourceOhm: number
  readonly loadOhm: number
}

type Poly = { readonly linear: number; readonly square: number }

/** Coefficients of N = 1 + s·linear + s²·square: L/(Rs+Rl) + C·Rp, and L·C·Rl/(Rs+Rl). */
function polynomial({ henries, farads, sourceOhm, loadOhm }: LcSection): Poly {
  if (!Number.isFinite(loadOhm)) return { linear: farads * sourceOhm, square: henries * farads }
  const loop = sourceOhm + loadOhm
  return {
    linear: henries / loop + (farads * sourceOhm * loadOhm) / loop,
    square: (henries * farads * loadOhm) / loop,
  }
}

/** Damping ratio (1 = critical, below 0.7 it rings); undefined without an inductor or a capacitor. */
export function dampingRatio(section: LcSection): number | undefined {
  const { linear, square } = polynomial(section)
  return square > 0 ? linear / (2 * Math.sqrt(square)) : undefined
}

/** Resonance in Hz of the section; undefined without an inductor or a capacitor. */
export function ringHz(section: LcSection): number | undefined {
  const { square } = polynomial(section)
  return square > 0 ? 1 / (2 * Math.PI * Math.sqrt(square)) : undefined
}

/** Loss in dB at `hz`, 20·log10|N|; negative where the section amplifies. */
export function lcLossDb(section: LcSection, hz: number): number {
  const { linear, square } = polynomial(section)
  const omega = 2 * Math.PI * hz
  return 20 * Math.log10(Math.hypot(1 - omega ** 2 * square, omega * linear))
}

/** Phase lag in degrees at `hz`, the angle of N: 0 to 180. */
export function lcPhaseDeg(section: LcSection, hz: number): number {
  const { linear, square } = polynomial(section)
  const omega = 2 * Math.PI * hz
  return (Math.atan2(omega * linear, 1 - omega ** 2 * square) * 180) / Math.PI
}

/** Least and most of a value over its tolerance. */
export type Span = { readonly least: number; readonly most: number }

/** A section whose parts may be anywhere in their spans. */
export type LcBox = {
  readonly henries: Span
  readonly farads: Span
  readonly sourceOhm: number
  readonly loadOhm: number
  /** a resistor and a capacitor in series across those farads */
  readonly damper?: { readonly farads: Span; readonly ohm: Span } | undefined
}

/**
 * The least damped section of a box. With z = √(L/C) the damping is (z² + Rs·Rl)/(2·z·√(Rl·(Rs + Rl))): least at
 * z = √(Rs·Rl) where the box contains that, else at the corner nearest to it; into a high-impedance receiver Rs/(2·z),
 * least at the largest inductor with the smallest capacitor. Undefined without an inductor or a capacitor. Derived.
 */
export function leastDamped({ henries, farads, sourceOhm, loadOhm }: LcBox): LcSection | undefined {
  if (henries.most <= 0 || farads.most <= 0) return undefined
  const at = (h: number, f: number): LcSection => ({ henries: h, farads: f, sourceOhm, loadOhm })
  const softest = at(henries.least, farads.most)
  const hardest = at(henries.most, farads.least)
  if (!Number.isFinite(loadOhm) || farads.least <= 0) return hardest.farads > 0 ? hardest : softest
  const wanted = Math.log(sourceOhm * loadOhm)
  const low = Math.log(softest.henries / softest.farads)
  const high = Math.log(hardest.henries / hardest.farads)
  if (wanted >= high) return hardest
  if (wanted <= low) return softest
  // Along the diagonal both parts move so that L/C runs evenly, on a log scale, from one corner to the other.
  const share = (wanted - low) / (high - low)
  return at(
    henries.least * (henries.most / henries.least) ** share,
    farads.most * (farads.least / farads.most) ** share,
  )
}

/** Below this damping a section rings visibly (overshoot about 5 % and growing). */
export const LEAST_DAMPING = 0.7

const NOT_A_SIGNAL: ReadonlySet<LineFamily> = new Set(['power-dc', 'power-ac', 'ground', 'barred'])

/** Whether a line carries a signal that an inductor can hurt. */
export const carriesSignal = ({ family }: LineKind): boolean => !NOT_A_SIGNAL.has(family)

/**
 * The resistances a signal works between, in Ω: a matched line between Z0 and Z0; any other signal is taken into a
 * high-impedance receiver (least damped). Undefined where the signal resistance is not known.
 */
export function signalEnds(facts: SignalFacts): { readonly sourceOhm: number; readonly loadOhm: number } | undefined {
  const ohm = signalOhmOf(facts)
  if (ohm === undefined) return undefined
  const { rule } = facts.kind.loading
  return rule === 'own-edge' || rule === 'return-loss'
    ? { sourceOhm: 2 * ohm, loadOhm: 2 * ohm }
    : { sourceOhm: ohm, loadOhm: Number.POSITIVE_INFINITY }
}

/**
 * The ends between which coils ring most. Into a high-impedance receiver the damping is Rs/(2·z): the lowest resistance of
 * the kind's range, unless one was entered. Derived.
 */
export function ringingEnds(facts: SignalFacts): ReturnType<typeof signalEnds> {
  const ends = signalEnds(facts)
  const leastOhm = facts.signalOhm === undefined ? facts.kind.signalOhm?.leastOhm : undefined
  if (ends === undefined || leastOhm === undefined || Number.isFinite(ends.loadOhm)) return ends
  return { ...ends, sourceOhm: Math.min(ends.sourceOhm, leastOhm) }
}

/** Longest edge in s that the criterion of the kind leaves to the inductance alone; undefined where it is not judged so. */
export function ownEdgeLimitSec(facts: SignalFacts): number | undefined {
  const rule = facts.kind.loading
  const bitSec = bitSecOf(facts)
  return rule.rule === 'own-edge' && bitSec !== undefined ? rule.shareOfInterval * bitSec : undefined
}
