/** A decided contact with what its Line says of the noise on it, as the plate of its connector meets it. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Need } from '../../bounds/surroundings.ts'
import { placings } from '../../checks/window/around.ts'
import type { WindowGiven } from '../../checks/window/inputs.ts'
import { pairNeeds, setUp, type WindowSetup } from '../../checks/window/setup.ts'
import { wordlessWindow } from '../../checks/window/wordless.ts'
import type { Express } from '../../line/fields.ts'
import { contactPartOf } from '../contact-row.ts'
import type { DecidedContact } from '../decided.ts'
import type { Plated } from '../plate/cells.ts'
import { isPlateNoise, type Member, memberOf, platedOf, type SetUp } from '../plate/member.ts'
import { givenOf } from './given.ts'

/** A contact with a part: what the plate meets, as in the schedule. */
export type OnPlate = {
  readonly id: string
  readonly member: Member
  /** what its noise asks of it by itself */
  readonly needs: readonly Need[]
  /** it drives no current into the plate: what one leg brings the other takes */
  readonly isDifferential: boolean
  /** its part among what stands around it, in the mode of its noise; undefined: its noise is not known */
  readonly own: Plated | undefined
}

/** What a contact was set up from, with the inductance that was decided for it; undefined where no Line can be read. */
function setUpOf({ line, kind, part }: DecidedContact, express?: Express): SetUp | undefined {
  if (line === undefined) return undefined
  const { values, refused } = givenOf(wordlessWindow, line, express)
  if (refused.length > 0) return undefined
  const entered = values as WindowGiven
  const given = part?.inductanceH === undefined ? entered : { ...entered, inductanceH: part.inductanceH }
  const needs = pairNeeds(given.frequencyHz ?? [], given.neededDb ?? [])
  if ('code' in needs) return undefined
  return { given, setup: setUp(given, kind === undefined ? undefined : lineKindById(kind), needs) }
}

/** The window of a contact, set up anew from its Line; undefined where no Line can be read. */
export const setupOf = (contact: DecidedContact, express?: Express): WindowSetup | undefined =>
  setUpOf(contact, express)?.setup

/** Undefined: it has no part, or its Line cannot be read. */
export function onPlate(contact: DecidedContact, express?: Express): OnPlate | undefined {
  const { id, line, part } = contact
  const found = part && setUpOf(contact, express)
  if (line === undefined || part === undefined || found === undefined) return undefined
  const { setup } = found
  const { around } = setup
  const own = contactPartOf(part)
  const shares = { least: part.leastFrac, most: part.mostFrac }
  const isDriven = isPlateNoise(setup)
  const member = memberOf(found, line.id, own, shares)
  return {
    id,
    member,
    needs: around?.needs ?? [],
    isDifferential: around !== undefined && !isDriven,
    own:
      around === undefined
        ? undefined
        : isDriven
          ? member.plated
          : platedOf(placings(around, setup), setup, own, shares),
  }
}

/** A contact of a line without a part, its noise known. */
export function bareOn(contact: DecidedContact, express?: Express): Pick<OnPlate, 'needs' | 'own'> | undefined {
  const setup = contact.part === undefined ? setupOf(contact, express) : undefined
  if (setup?.around === undefined) return undefined
  const own = platedOf(placings(setup.around, setup), setup, { topology: 'C' })
  return { needs: setup.around.needs, own: { ...own, isBare: true } }
}
