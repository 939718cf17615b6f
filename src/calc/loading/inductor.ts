/** A series inductor before the capacitor makes a signal line second order: damping, loss, edge. Derived from the L–C chain. */
import type { LineFamily } from '../../reference/line-kinds.ts'
import { formatQuantity } from '../quantity/format.ts'
import { bitSecOf, type SignalFacts, signalOhmOf } from './ceiling.ts'
import { inductorRiseSec } from './edge.ts'

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

/** Below this damping a section rings visibly (overshoot about 5 % and growing). */
export const LEAST_DAMPING = 0.7

export type InductorEffect = {
  /** undefined when the signal resistance is not known */
  readonly section: LcSection | undefined
  readonly damping: number | undefined
  readonly ringHz: number | undefined
  /** the inductance's own 10–90 % edge, ln 9·L/(Rs + Rl) */
  readonly ownEdgeSec: number
  /** what it does to the signal, in one clause; undefined = nothing that hurts */
  readonly hurts: string | undefined
}

/**
 * What a filter inductance does to the signal of a kind of line. `inductanceH` is per leg (a pair sees twice of it),
 * `signalF` the capacitance the signal sees. Undefined on power and ground, or without an inductance.
 * A matched line works between Z0 and Z0; any other signal is taken into a high-impedance receiver (least damped).
 */
export function inductorEffect(
  facts: SignalFacts & { readonly inductanceH: number; readonly signalF: number },
): InductorEffect | undefined {
  const { kind, inductanceH, signalF } = facts
  if (inductanceH === 0 || NOT_A_SIGNAL.has(kind.family)) return undefined
  const ohm = signalOhmOf(facts)
  const henries = (kind.isPair ? 2 : 1) * inductanceH
  if (ohm === undefined) {
    return {
      section: undefined,
      damping: undefined,
      ringHz: undefined,
      ownEdgeSec: 0,
      hurts: 'whether it rings is not known: enter the signal resistance',
    }
  }
  const isMatched = kind.loading.rule === 'own-edge' || kind.loading.rule === 'return-loss'
  const section = isMatched
    ? { henries, farads: signalF, sourceOhm: 2 * ohm, loadOhm: 2 * ohm }
    : { henries, farads: signalF, sourceOhm: ohm, loadOhm: Infinity }
  const damping = dampingRatio(section)
  const ring = ringHz(section)
  const ownEdgeSec = inductorRiseSec({ henries, loopOhm: section.sourceOhm + section.loadOhm })
  return { section, damping, ringHz: ring, ownEdgeSec, hurts: hurtOf(facts, { damping, ring, ownEdgeSec }) }
}

const NOT_A_SIGNAL: ReadonlySet<LineFamily> = new Set(['power-dc', 'power-ac', 'ground', 'barred', 'other'])

function hurtOf(
  facts: SignalFacts,
  effect: { damping: number | undefined; ring: number | undefined; ownEdgeSec: number },
): string | undefined {
  const { damping, ring, ownEdgeSec } = effect
  if (damping !== undefined && ring !== undefined && damping < LEAST_DAMPING)
    return `it rings with the capacitance near ${formatQuantity(ring, 'frequency', 3)} (damping ${formatQuantity(damping, 'number', 2)}, below ${LEAST_DAMPING})`
  const rule = facts.kind.loading
  const bitSec = bitSecOf(facts)
  if (rule.rule !== 'own-edge' || bitSec === undefined || ownEdgeSec <= rule.shareOfInterval * bitSec) return undefined
  return `its own edge of ${formatQuantity(ownEdgeSec, 'time', 3)} is over the ${formatQuantity(rule.shareOfInterval * bitSec, 'time', 3)} a bit leaves`
}
