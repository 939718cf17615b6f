/** A decided contact with what its Line says of the noise on it, as the plate of its connector meets it. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Need } from '../../bounds/surroundings.ts'
import { placings, type WindowAround } from '../../checks/window/around.ts'
import { windowCheck } from '../../checks/window/check.ts'
import type { WindowGiven } from '../../checks/window/inputs.ts'
import { pairNeeds, setUp, type WindowSetup } from '../../checks/window/setup.ts'
import type { Express } from '../../line/fields.ts'
import type { DecidedContact } from '../decided.ts'
import { givenOf } from './given.ts'

/** What the plate needs to know of a contact. */
export type OnPlate = {
  readonly id: string
  /** contacts of one Line stand on one bond alone as well */
  readonly lineId: string
  readonly part: NonNullable<DecidedContact['part']> | undefined
  /** differential noise drives no current into the plate: what one leg brings the other takes */
  readonly isDriven: boolean
  readonly needs: readonly Need[]
  readonly arounds: readonly WindowAround[]
}

/** The window of a contact as it was worked out, or set up anew from its Line; undefined where no Line can be read. */
export function setupOf(contact: DecidedContact, express?: Express): WindowSetup | undefined {
  const { window, line, kind } = contact
  if (window !== undefined && 'setup' in window) return (window as { readonly setup: WindowSetup }).setup
  if (line === undefined) return undefined
  const { values, refused } = givenOf(windowCheck, line, express)
  if (refused.length > 0) return undefined
  const given = values as WindowGiven
  const needs = pairNeeds(given.frequencyHz ?? [], given.neededDb ?? [])
  return 'code' in needs ? undefined : setUp(given, kind === undefined ? undefined : lineKindById(kind), needs)
}

/** Undefined: nothing is known of its noise, so that what it puts on the plate cannot be said. */
export function onPlate(contact: DecidedContact, express?: Express): OnPlate | undefined {
  const setup = setupOf(contact, express)
  if (setup?.around === undefined || contact.line === undefined) return undefined
  return {
    id: contact.id,
    lineId: contact.line.id,
    part: contact.part,
    isDriven: contact.mode === 'common' || !setup.isPair,
    needs: setup.around.needs,
    arounds: placings(setup.around, setup),
  }
}
