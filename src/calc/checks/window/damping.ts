/** A damping branch that would open a row, or clear it of its ringing: found, and judged as if it had been entered. */
import { E12 } from '../../../reference/preferred-values.ts'
import { intersect } from '../../bounds/intersect.ts'
import { valuesInside } from '../../bounds/preferred.ts'
import { equalParts, marginOf } from '../../bounds/surroundings.ts'
import { CAPACITOR_COUNT, hasCapacitor, hasInductor } from '../../network/circuit.ts'
import { DAMPING_RATIO, dampingFor } from '../../network/damping.ts'
import { VERDICT_RANK } from '../../verdict.ts'
import { damper } from '../elements.ts'
import { type WindowRow, windowRow } from './row.ts'
import { roomOf, type WindowSetup } from './setup.ts'
import { signalOf } from './signal-side.ts'

export type DampingOpener = {
  readonly is: 'damping'
  readonly ohm: number
  readonly farads: number
  readonly row: WindowRow
}

/** What of a judgement a damping branch can cure. */
const RINGS: ReadonlySet<string> = new Set(['ringing', 'overshoot', 'gain'])

/** Whether the row rings, or loses its need to a resonance, or cannot meet it: a resonance may be why. */
function maybeRings(row: WindowRow, setup: WindowSetup): boolean {
  if (row.verdict === 'fails') return row.reasons.some((one) => one === 'shut' || one === 'never' || one === 'signal')
  // Where something else keeps it from a yes, or from one, damping makes nothing of it.
  if (row.reasons.some((one) => one !== 'signal')) return false
  return signalOf(row, setup)?.reasons.some(({ is }) => RINGS.has(is)) ?? false
}

/** The smallest damping of the candidates that makes the verdict of the row better; empty where none does. */
export function damped(row: WindowRow, setup: WindowSetup): readonly DampingOpener[] {
  const { elements, around } = setup
  const { topology } = row
  if (!around || !hasInductor(topology) || !hasCapacitor(topology)) return []
  if (elements.bead !== undefined || elements.damper !== undefined || elements.lacks.length > 0) return []
  if (!maybeRings(row, setup)) return []
  const candidates = candidatesF(row)
  // What only rings is already an answer: it is not worth every candidate.
  for (const capacitanceF of row.verdict === 'fails' ? candidates : candidates.slice(0, 2)) {
    const marked = dampingOf(setup, capacitanceF)
    if (marked.farads > fitsF(setup)) continue
    // A look at the part that was found, before the row is worked out anew.
    const judged = row.verdict === 'fails' ? undefined : signalOf(row, withDamper(setup, marked))
    if (judged?.reasons.some(({ is }) => RINGS.has(is))) continue
    if (row.verdict === 'fails' && !mayHold(row, withDamper(setup, marked), marked)) continue
    const found = windowRow(topology, withDamper(setup, marked))
    const isBetter = VERDICT_RANK[found.verdict] < VERDICT_RANK[row.verdict] && found.verdict !== 'unknown'
    if (isBetter) return [{ is: 'damping', ...marked, row: found }]
  }
  return []
}

/** The largest capacitor that fits the contact; Infinity where nothing was said. */
const fitsF = ({ bounds }: WindowSetup): number =>
  Math.min(...bounds.filter(({ nature }) => nature === 'fits').map(({ farads }) => farads), Number.POSITIVE_INFINITY)

/**
 * Whether some capacitor that fits beside the damper meets the need with parts as marked. Where none does none does over
 * its tolerance; a row is worked out only where one may.
 */
function mayHold({ topology }: WindowRow, setup: WindowSetup, marked: { ohm: number; farads: number }): boolean {
  const { around, inductanceH } = setup
  const most = intersect(setup.bounds, setup.room, setup.spread, topology).upper?.markedF
  if (around === undefined || most === undefined) return around !== undefined
  const coilH = Math.sqrt(inductanceH.least * inductanceH.most)
  return [1, 1 / 2, 1 / 5, 1 / 20].some((part) => {
    const parts = { ...equalParts({ ...around, topology }, part * most, coilH), damper: marked }
    return around.sources.every((source) =>
      around.needs.every((need) => marginOf({ ...around, topology }, need, source, parts).db >= 0),
    )
  })
}

/** Marks to damp: what the row proposes, or as much as fits beside a damper of four times as much. */
function candidatesF({ topology, proposal, least, upper }: WindowRow): readonly number[] {
  const shared = CAPACITOR_COUNT[topology] + DAMPING_RATIO
  const fits =
    upper === undefined || upper.markedF <= 0 ? [] : [1, 1 / 2, 1 / 5].map((part) => (part * upper.markedF) / shared)
  const wanted = [proposal?.valueF, least?.markedF].filter((f) => f !== undefined && f > 0 && Number.isFinite(f))
  return [...(wanted as readonly number[]).slice(0, 1), ...fits].toSorted((a, b) => a - b)
}

/** The nearest standard resistor, and the next standard capacitor up. */
function dampingOf({ inductanceH }: WindowSetup, capacitanceF: number) {
  const wanted = dampingFor({ inductanceH: Math.sqrt(inductanceH.least * inductanceH.most), capacitanceF })
  const ohm = valuesInside(E12, wanted.ohm, wanted.ohm / 1.5, wanted.ohm * 1.5)[0] ?? wanted.ohm
  const farads = valuesInside(E12, wanted.farads, wanted.farads, wanted.farads * 1.5)[0] ?? wanted.farads
  return { ohm, farads }
}

/** The line with that damping entered. */
export function withDamper(setup: WindowSetup, marked: { readonly ohm: number; readonly farads: number }): WindowSetup {
  const part = damper(marked, setup.spread)
  return {
    ...setup,
    elements: { ...setup.elements, damper: part },
    room: roomOf(setup.taken, part),
    around: setup.around && { ...setup.around, damper: part },
  }
}
