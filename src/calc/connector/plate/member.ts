/** A contact as the plate meets it: its part in what stands around it, and what is asked of it. */
import { USUAL_SOURCES } from '../../../reference/field-figures.ts'
import { sourcePerLeg } from '../../bounds/legs.ts'
import type { Need, Span, Surroundings } from '../../bounds/surroundings.ts'
import { placings, type WindowAround } from '../../checks/window/around.ts'
import type { WindowGiven } from '../../checks/window/inputs.ts'
import { setUp, sharesOf, type WindowSetup } from '../../checks/window/setup.ts'
import { hasCapacitor } from '../../network/circuit.ts'
import type { ContactPart } from '../contact-row.ts'
import type { Plated } from './cells.ts'

/** A part in its window; `needs` is empty where its own loss is no matter of the plate (differential noise, none asked for). */
export type Member = {
  /** contacts of one line stand on one bond alone as well */
  readonly lineId: string
  readonly plated: Plated
  readonly needs: readonly Need[]
  /** its noise source was not known in common mode: every usual one is tried */
  readonly isSourceAssumed: boolean
  /** a need that only the readings of a trial met, source and load side by side: what a shared bond takes from it is not known */
  readonly isReadAlone: boolean
}

/** A load that takes next to nothing, so that all the current goes to the plate. */
const LIGHT_LOAD_OHM = 1e6

/** What a window was set up from. */
export type SetUp = { readonly setup: WindowSetup; readonly given: WindowGiven }

/**
 * Differential noise of two wires drives no current into the plate: what one brings the other takes. What drives them in
 * common mode beside it is not known then. `shares`: of the mark, where they are not those of the window.
 */
export function memberOf({ setup, given }: SetUp, lineId: string, part: ContactPart, shares?: Span): Member {
  const isKnown = isPlateNoise(setup)
  const met = isKnown ? setup : assumed(given, setup)
  return {
    lineId,
    plated: platedOf(placings(met.around as WindowAround, met), met, part, shares),
    needs: isKnown ? setup.needs : [],
    isSourceAssumed: !isKnown,
    isReadAlone: setup.around === undefined && setup.tried !== undefined,
  }
}

/** The places of the other contacts of its line. */
export const matesOf = (seats: readonly { readonly member: Member }[], i: number): readonly number[] =>
  seats.flatMap(({ member }, j) => (j !== i && member.lineId === seats[i]?.member.lineId ? [j] : []))

/** Its noise is known, and runs between its wires and the plate. */
export const isPlateNoise = ({ mode, isPair, around }: WindowSetup): boolean =>
  around !== undefined && (mode === 'common' || !isPair)

/** A part among these surroundings. */
export function platedOf(
  arounds: readonly WindowAround[],
  setup: WindowSetup,
  part: ContactPart,
  shares: Span = sharesOf(setup),
): Plated {
  const { least, most } = setup.inductanceH
  const placed: readonly Surroundings[] = arounds.map((one) => ({ ...one, topology: part.topology }))
  return hasCapacitor(part.topology)
    ? { placed, shares, marked: part.valueF ?? 0 }
    : { placed, shares: { least: 1, most: most / least }, marked: least }
}

/** The same line driven in common mode from every usual source. */
function assumed(given: WindowGiven, setup: WindowSetup): WindowSetup {
  const sourceOhm = [...USUAL_SOURCES.ohms]
  const driven = setUp({ ...given, mode: 'common', sourceOhm, loadOhm: LIGHT_LOAD_OHM }, setup.kind, [
    { hz: 1e6, db: 0 },
  ])
  // of each wire, whatever the kind counts them of
  const sources = sourceOhm.map((ohm) => sourcePerLeg({ ohm, seriesH: 0 }, 1))
  return { ...driven, around: driven.around && { ...driven.around, sources } }
}
