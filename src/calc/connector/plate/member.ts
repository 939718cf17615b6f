/** A contact as the plate meets it: its part in what stands around it, and what is asked of it. */
import { sourcePerLeg } from '../../bounds/legs.ts'
import type { Need, Span, Surroundings } from '../../bounds/surroundings.ts'
import { placings } from '../../checks/window/around.ts'
import type { WindowGiven } from '../../checks/window/inputs.ts'
import { setUp, sharesOf, type WindowSetup } from '../../checks/window/setup.ts'
import { hasCapacitor } from '../../network/circuit.ts'
import type { OpenAnswer } from '../contact-line.ts'
import type { ContactPart } from '../contact-row.ts'
import { type Plated, type Points, pointsOf } from './box.ts'
import { type Reach, reachOf } from './reach.ts'

/** A part in its window; `needs` is empty where its own loss is no matter of the plate (differential noise, none asked for). */
export type Member = {
  readonly plated: Plated
  readonly needs: readonly Need[]
  /** its noise source was not known in common mode: every usual one is tried */
  readonly isSourceAssumed: boolean
  /** a need that only the readings of a trial met, source and load side by side: what a shared bond takes from it is not known */
  readonly isReadAlone: boolean
}

/** Noise sources that are tried where none is known, Ω of one wire. */
export const USUAL_SOURCES_OHM: readonly number[] = [1, 10, 50, 150]
/** A load that takes next to nothing, so that all the current goes to the plate. */
const LIGHT_LOAD_OHM = 1e6

export function memberOf({ setup, given }: OpenAnswer, part: ContactPart): Member {
  const isKnown = setup.mode === 'common' && setup.around !== undefined
  const met = isKnown ? setup : assumed(given, setup)
  const around = met.around as NonNullable<WindowSetup['around']>
  const placed: readonly Surroundings[] = placings(around, met).map((one) => ({ ...one, topology: part.topology }))
  const { least, most } = met.inductanceH
  const isCapacitor = hasCapacitor(part.topology)
  return {
    plated: {
      placed,
      shares: isCapacitor ? sharesOf(met) : coilShares(least, most),
      marked: isCapacitor ? (part.valueF ?? 0) : least,
    },
    needs: isKnown ? setup.needs.filter(({ db }) => db > 0) : [],
    isSourceAssumed: !isKnown,
    isReadAlone: setup.around === undefined && setup.tried !== undefined,
  }
}

const coilShares = (least: number, most: number): Span => ({ least: 1, most: most / least })

/** The same line driven in common mode from every usual source. */
function assumed(given: WindowGiven, setup: WindowSetup): WindowSetup {
  const sourceOhm = [...USUAL_SOURCES_OHM]
  const driven = setUp({ ...given, mode: 'common', sourceOhm, loadOhm: LIGHT_LOAD_OHM }, setup.kind, [
    { hz: 1e6, db: 0 },
  ])
  // of each wire, whatever the kind counts them of
  const sources = sourceOhm.map((ohm) => sourcePerLeg({ ohm, seriesH: 0 }, 1))
  return { ...driven, around: driven.around && { ...driven.around, sources } }
}

type Looked = { readonly points: Points; readonly reach: Reach }
const looked = new WeakMap<Plated, Map<number, Looked>>()

/** What a member does to the plate at a frequency, worked out once. */
export function lookAt({ plated }: Member, hz: number): Looked {
  const known = looked.get(plated) ?? new Map<number, Looked>()
  looked.set(plated, known)
  const before = known.get(hz)
  if (before !== undefined) return before
  const points = pointsOf(plated, hz, false)
  const now = { points, reach: reachOf(points) }
  known.set(hz, now)
  return now
}

const lookedFine = new WeakMap<Plated, Map<number, Points>>()

/** The same in finer steps, for its own loss. */
export function lookCloser({ plated }: Member, hz: number): Points {
  const known = lookedFine.get(plated) ?? new Map<number, Points>()
  lookedFine.set(plated, known)
  const points = known.get(hz) ?? pointsOf(plated, hz, true)
  known.set(hz, points)
  return points
}
