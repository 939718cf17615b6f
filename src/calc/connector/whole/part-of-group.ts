/** The one part of a group of contacts: what the Lines of its contacts say of it, all of them the same or not at all. */
import { surgeCheck } from '../../checks/surge/check.ts'
import type { SurgeGiven } from '../../checks/surge/inputs.ts'
import type { Express } from '../../line/fields.ts'
import { resolve } from '../../line/resolver.ts'
import { asOnePart, type FittedPart, partOf } from '../../surge/part.ts'
import type { DecidedContact } from '../decided.ts'
import type { Connector, SuppressorGroup } from '../types.ts'
import { givenOf } from './given.ts'
import { strictly } from './strict.ts'

export type GroupPart =
  | {
      readonly is: 'part'
      readonly part: FittedPart
      readonly ratedPulseW: number | undefined
      readonly ambientC: number
      readonly derateZeroC: number
    }
  | { readonly is: 'none' }
  | { readonly is: 'unlike'; readonly ids: readonly string[] }
  | { readonly is: 'incomplete' }

/** What is asked of the surge on the Line of a contact; undefined where a text cannot be read. */
export function surgeGiven(contact: DecidedContact, express?: Express): SurgeGiven | undefined {
  if (contact.line === undefined) return undefined
  const { values, refused } = givenOf(surgeCheck, contact.line, express)
  return refused.length > 0 ? undefined : (asOnePart(values as SurgeGiven) as SurgeGiven)
}

/** The same at the strict temperature where none was entered, and what was taken. */
export function strictSurge(
  { line, part }: DecidedContact,
  express?: Express,
): { readonly given: SurgeGiven; readonly taken: readonly string[]; readonly isLeadEntered: boolean } | undefined {
  if (line === undefined) return undefined
  const fields = resolve(line, express).fields(surgeCheck)
  if (fields.some(({ state }) => state === 'refused' || state === 'pending')) return undefined
  const { values, taken } = strictly(fields, line, { part, keys: ['ambientC'] })
  const isLeadEntered = fields.some(({ key, state }) => key === 'suppressorLeadH' && state !== 'assumed')
  return { given: asOnePart(values) as SurgeGiven, taken, isLeadEntered }
}

/** Contacts of a group that are on the connector. */
export const membersOf = (group: SuppressorGroup, decided: readonly DecidedContact[]): readonly DecidedContact[] =>
  decided.filter(({ id, type }) => type === 'line' && group.contacts.includes(id))

/** Which group each contact is in: the first that names it. */
export function groupOfContact({ suppressors }: Pick<Connector, 'suppressors'>): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  suppressors.forEach(({ contacts }, g) => {
    for (const id of contacts) if (!found.has(id)) found.set(id, g)
  })
  return found
}

export function groupPart(members: readonly DecidedContact[], express?: Express): GroupPart {
  const found = new Map<
    string,
    { readonly answer: ReturnType<typeof partOf>; readonly given: SurgeGiven; readonly id: string }
  >()
  for (const contact of members) {
    const given = strictSurge(contact, express)?.given
    if (given === undefined) continue
    const answer = partOf(given)
    if (answer.is === 'none') continue
    const { standoffV, breakdownV, ratedPulseW, dynamicOhm, suppressorF, suppressorType } = given
    const key = JSON.stringify([standoffV, breakdownV, ratedPulseW, dynamicOhm, suppressorF, suppressorType])
    const before = found.get(key)
    // it is one part: the hottest that is said of it
    if (before === undefined || given.ambientC > before.given.ambientC)
      found.set(key, { answer, given, id: contact.id })
  }
  const [one, ...more] = [...found.values()]
  if (one === undefined) return { is: 'none' }
  if (more.length > 0) return { is: 'unlike', ids: [one, ...more].map(({ id }) => id) }
  if (one.answer.is !== 'part') return { is: 'incomplete' }
  const { ratedPulseW, ambientC, derateZeroC } = one.given
  return { is: 'part', part: one.answer.part, ratedPulseW, ambientC, derateZeroC }
}
