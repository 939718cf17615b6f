/** The filter as the signal meets it, over its tolerances: how much it sees, and every ladder it may be. */
import type { LineKind } from '../../reference/line-kinds.ts'
import type { Taken } from '../bounds/room.ts'
import { CAPACITOR_COUNT, hasCapacitor, hasInductor } from '../network/circuit.ts'
import type { Topology } from '../terms.ts'
import { seenFarads } from './budget.ts'
import type { LcBox, Span } from './inductor.ts'
import { type CoilOwn, type Element, IDEAL_COIL, type SignalLadder } from './ladder.ts'
import type { StepBox } from './overshoot.ts'

/** One capacitor and one coil of one leg, each over its tolerance; a coil counts only where the topology has one. */
export type SignalFilter = {
  readonly topology: Topology
  readonly capacitorF: Span
  readonly inductanceH: Span
  /** henries of a common-mode choke in the loop of the signal: its leakage; absent = no choke */
  readonly chokeH?: Span
  /** what its windings have beside that, both in a row; ideal when absent */
  readonly chokeCoil?: CoilOwn
  /** an ideal coil when absent */
  readonly coil?: CoilOwn
  /** a resistor and a capacitor in series across the last capacitor of each leg */
  readonly damper?: { readonly farads: Span; readonly ohm: Span }
}

/** What stands beside the filter, and the ends the signal works between. */
export type Around = {
  readonly kind: LineKind
  readonly taken: Taken
  readonly sourceOhm: number
  readonly loadOhm: number
}

export const exactly = (value: number): Span => ({ least: value, most: value })

/** At its working voltage a suppressor keeps at least this share of its capacitance at 0 V. Common practice. */
export const SUPPRESSOR_LEAST_SHARE = 0.3

/** Capacitance in F of each leg that the filter adds at its least and at its most. */
export function legSpan({ topology, capacitorF, damper }: SignalFilter): Span {
  const count = CAPACITOR_COUNT[topology]
  const beside = count > 0 && damper !== undefined ? damper.farads : NO_COIL
  return { least: count * capacitorF.least + beside.least, most: count * capacitorF.most + beside.most }
}

/** Of those, what stands there without a resistor in series. */
function bareSpan(filter: SignalFilter): Span {
  return legSpan({ topology: filter.topology, capacitorF: filter.capacitorF, inductanceH: filter.inductanceH })
}

/** Capacitance in F of everything but the filter, as the signal sees it. */
function otherFarads({ isPair, crossF, crossLeastF = crossF, suppressorF, existingF }: Taken): Span {
  const seen = (cross: number, suppressor: number): number =>
    seenFarads({ isPair, crossF: cross, suppressorF: suppressor, existingF, legF: 0 })
  return { least: seen(crossLeastF, SUPPRESSOR_LEAST_SHARE * suppressorF), most: seen(crossF, suppressorF) }
}

/** Share of a leg's farads, and multiple of its henries, that a signal between two wires sees. */
const perSignal = ({ isPair }: Taken) => ({ farads: isPair ? 0.5 : 1, henries: isPair ? 2 : 1 })

/** Coils that stand in the way of a signal. */
export const coilCount = (topology: Topology): number => (topology === 'T' ? 2 : hasInductor(topology) ? 1 : 0)

/** Whether anything stands in series with the signal: a coil of the filter, or the leakage of a choke. */
const hasCoil = ({ topology, inductanceH, chokeH = NO_COIL }: SignalFilter): boolean =>
  (hasInductor(topology) && inductanceH.most > 0) || chokeH.most > 0

const NO_COIL = exactly(0)

/**
 * The section a signal sees: every coil before every capacitor; both coils of a T count, and the leakage of a choke.
 * Undefined without a coil.
 */
export function sectionBox(filter: SignalFilter, around: Around): LcBox | undefined {
  if (!hasCoil(filter)) return undefined
  const choke = filter.chokeH ?? NO_COIL
  const { taken, sourceOhm, loadOhm } = around
  const per = perSignal(taken)
  const coils = coilCount(filter.topology) * per.henries
  const leg = bareSpan(filter)
  const other = otherFarads(taken)
  return {
    henries: {
      least: coils * filter.inductanceH.least + choke.least,
      most: coils * filter.inductanceH.most + choke.most,
    },
    farads: { least: other.least + per.farads * leg.least, most: other.most + per.farads * leg.most },
    sourceOhm,
    loadOhm,
    damper: damperSeen(filter, around),
  }
}

/** The damper as a signal between two wires meets it; undefined where there is no capacitor to damp. */
export function damperSeen({ damper, topology }: SignalFilter, { taken }: Around): LcBox['damper'] {
  if (damper === undefined || !hasCapacitor(topology)) return undefined
  const per = perSignal(taken)
  const times = ({ least, most }: Span, factor: number): Span => ({ least: factor * least, most: factor * most })
  return { farads: times(damper.farads, per.farads), ohm: times(damper.ohm, per.henries) }
}

/**
 * Every ladder at the corners of the box: parts at their ends independently, everything else on the line at its least
 * and its most, before the filter, in it and behind it; a choke on either side of the filter. Empty without a coil.
 */
export function cornerLadders(filter: SignalFilter, around: Around): readonly SignalLadder[] {
  if (!hasCoil(filter)) return []
  const { taken, sourceOhm, loadOhm } = around
  const per = perSignal(taken)
  const own = coilPerSignal(filter.coil ?? IDEAL_COIL, per.henries)
  const coilEnds = endsOf(filter.inductanceH).map((h): Coil => ({ henries: per.henries * h, ...own }))
  const chokeEnds = endsOf(filter.chokeH ?? NO_COIL).flatMap((henries): readonly Coil[] =>
    henries > 0 ? [{ henries, ...(filter.chokeCoil ?? IDEAL_COIL) }] : [],
  )
  const partEnds = hasCapacitor(filter.topology) ? endsOf(filter.capacitorF).map((f) => per.farads * f) : [0]
  const others = endsOf(otherFarads(taken))
  const ladders: SignalLadder[] = []
  const isTerminated = Number.isFinite(loadOhm)
  const dampers = cornersOf(damperSeen(filter, around))
  for (const shape of withChoke(shapesOf(filter.topology, coilEnds, partEnds, isTerminated), chokeEnds))
    for (const otherF of others)
      for (let node = 0; node < shape.nodesF.length; node++) {
        const nodesF = shape.nodesF.map((f, i) => (i === node ? f + otherF : f))
        for (const damper of dampers) ladders.push({ elements: inOrder(nodesF, shape, damper), sourceOhm, loadOhm })
        if (otherF === 0) break
      }
  return ladders
}

const endsOf = ({ least, most }: Span): readonly number[] => (least === most ? [most] : [least, most])

type Coil = { readonly henries: number } & CoilOwn
/** `damped`: the node of the last capacitor. */
type Shape = { readonly nodesF: readonly number[]; readonly coils: readonly Coil[]; readonly damped: number }

type DamperParts = { readonly farads: number; readonly ohm: number }

function cornersOf(seen: LcBox['damper']): readonly (DamperParts | undefined)[] {
  if (seen === undefined) return [undefined]
  return endsOf(seen.farads).flatMap((farads) => endsOf(seen.ohm).map((ohm) => ({ farads, ohm })))
}

/** The choke before or behind the rest, at either end of its leakage. */
function withChoke(shapes: readonly Shape[], chokes: readonly Coil[]): readonly Shape[] {
  if (chokes.length === 0) return shapes
  return shapes.flatMap(({ nodesF, coils, damped }) =>
    chokes.flatMap((choke): readonly Shape[] => [
      { nodesF: [0, ...nodesF], coils: [choke, ...coils], damped: damped + 1 },
      { nodesF: [...nodesF, 0], coils: [...coils, choke], damped },
    ]),
  )
}

/**
 * Capacitors at the nodes between, before and behind the coils. Into a high impedance the coil stands before the
 * capacitor, the harder order; a line terminated at both ends is met from either side.
 */
function shapesOf(
  topology: Topology,
  coils: readonly Coil[],
  partsF: readonly number[],
  isTerminated: boolean,
): readonly Shape[] {
  switch (topology) {
    case 'C':
      return partsF.map((f): Shape => ({ nodesF: [f], coils: [], damped: 0 }))
    case 'T':
      return coils.flatMap((a) =>
        coils.flatMap((b) => partsF.map((f): Shape => ({ nodesF: [0, f, 0], coils: [a, b], damped: 1 }))),
      )
    case 'PI':
      return coils.flatMap((a) =>
        partsF.flatMap((f) => partsF.map((g): Shape => ({ nodesF: [f, g], coils: [a], damped: 1 }))),
      )
    default:
      return coils.flatMap((a) =>
        partsF.flatMap((f): readonly Shape[] => {
          const behind = { nodesF: [0, f], coils: [a], damped: 1 }
          return isTerminated && f > 0 ? [behind, { nodesF: [f, 0], coils: [a], damped: 0 }] : [behind]
        }),
      )
  }
}

/** The coils of both legs in a row: so many times the ohms, and that much less capacitance. */
const coilPerSignal = ({ dcrOhm, parallelF, parallelOhm, bead }: CoilOwn, times: number): CoilOwn => ({
  dcrOhm: times * dcrOhm,
  parallelF: parallelF / times,
  parallelOhm: times * parallelOhm,
  ...(bead === undefined ? {} : { bead: beadPerSignal(bead, times) }),
})

const beadPerSignal =
  (bead: NonNullable<CoilOwn['bead']>, times: number): NonNullable<CoilOwn['bead']> =>
  (henries, hz) => {
    const [re, im] = bead(henries / times, hz)
    return [times * re, times * im]
  }

function inOrder(
  nodesF: readonly number[],
  { coils, damped }: Shape,
  damper: DamperParts | undefined,
): readonly Element[] {
  return nodesF.flatMap((farads, i): readonly Element[] => {
    const coil = coils[i]
    return [
      ...(farads > 0 ? [{ farads }] : []),
      ...(damper !== undefined && i === damped ? [damper] : []),
      ...(coil === undefined ? [] : [coil]),
    ]
  })
}

/** The same as a step meets it, for the orders a single damping does not describe; undefined where that one does. */
export function stepBox(filter: SignalFilter, around: Around): StepBox | undefined {
  const box = sectionBox(filter, around)
  if (box === undefined || box.farads.most <= 0) return undefined
  const isSplit = filter.topology === 'T' && Number.isFinite(box.loadOhm)
  if (box.damper === undefined && !isSplit) return undefined
  const { henries } = perSignal(around.taken)
  const { least, most } = filter.inductanceH
  const behind: Span = isSplit ? { least: henries * least, most: henries * most } : NO_COIL
  return {
    sourceOhm: box.sourceOhm,
    loadOhm: box.loadOhm,
    source1H: { least: box.henries.least - behind.least, most: box.henries.most - behind.most },
    load2H: behind,
    farads: box.farads,
    damperF: box.damper?.farads ?? NO_COIL,
    damperOhm: box.damper?.ohm ?? NO_COIL,
  }
}
