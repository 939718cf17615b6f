/** The power class of each contact's suppressor in words: one text for the contact, its sheet and its table. */
import { listed } from '../explain/sentence.ts'
import { formatExact } from '../quantity/format.ts'
import type { LeastClass, TriedClass } from '../surge/least-class.ts'
import type { ContactRow } from './contact-row.ts'
import type { ConnectorFinding } from './finding.ts'
import type { SuppressorAdvice } from './place.ts'
import { contactsNamed, show } from './whole/said.ts'
import type { ContactClass } from './whole/strike/power-class.ts'

/** What is found of a contact: its class in W, where there is one, and why. `isLeast`: the rating alone asks for it, the circuit may ask for more. */
export type ClassSaid = { readonly ratedPulseW?: number; readonly isLeast?: boolean; readonly why: string }

/** By contact; `found` in the order of the surges that were asked. */
export function classesSaid(
  contacts: readonly ContactClass[],
  found: readonly LeastClass[],
): ReadonlyMap<string, ClassSaid> {
  return new Map(
    contacts.flatMap((contact): readonly (readonly [string, ClassSaid])[] => {
      if ('needs' in contact) return [[contact.id, { why: `Its power class ${contact.needs}.` }]]
      const least = found[contact.stress]
      return least === undefined ? [] : [[contact.id, saidOf(contact, least)]]
    }),
  )
}

type Struck = Extract<ContactClass, { readonly stress: number }>

function saidOf(contact: Struck, { found, below }: LeastClass): ClassSaid {
  const { test, taken } = contact
  const rests = taken.length === 0 ? '' : ` Not entered, so taken strictly: ${listed(taken)}.`
  if (found === undefined)
    return {
      why: `No usual power class carries ${test} on this contact alone: ${below === undefined ? 'none is known' : refusedWords(below, contact)}.${rests}`,
    }
  const volts = show(found.loadV, 'voltage', 'least')
  const held = found.isHeld
    ? `, and lets ${volts} through${contact.withstandV === undefined ? '' : ` of ${formatExact(contact.withstandV, 'voltage')} the circuit withstands`}`
    : `; it lets ${volts} through, and what the circuit withstands there is not known, so only the rating is judged`
  const own = contact.isCounted
    ? ''
    : ' What its own capacitance takes from the signal is not entered, and not judged here.'
  const less = below === undefined ? ', the smallest there is' : ` (${refusedWords(below, contact)})`
  return {
    ratedPulseW: found.ratedPulseW,
    ...(found.isHeld ? {} : { isLeast: true }),
    why: `${wattsOf(found)} is the least class for ${test} on this contact alone${less}: it uses ${usedOf(found)} of its rating${held}.${rests}${own}`,
  }
}

const wattsOf = ({ ratedPulseW }: TriedClass): string => formatExact(ratedPulseW, 'power')

const usedOf = ({ usedFrac = 0 }: TriedClass): string => show(usedFrac, 'fraction', 'least')

function refusedWords(tried: TriedClass, { withstandV }: Struck): string {
  const watts = wattsOf(tried)
  if (tried.by === 'unfollowed') return `the pulse into ${watts} could not be followed to its end`
  if (tried.by === 'volts')
    return `${watts} lets ${show(tried.loadV, 'voltage', 'least')} through, too near or above what ${withstandV === undefined ? 'stands behind it' : `the circuit withstands, ${formatExact(withstandV, 'voltage')}`}`
  return tried.usedFrac === undefined
    ? `nothing is left of the rating at its temperature`
    : `${watts} would use ${usedOf(tried)} of its rating`
}

/** The advice with its power class: what row, sheet and table show. */
export function withClass(row: ContactRow, said: ClassSaid | undefined): ContactRow {
  const { suppressor } = row
  if (said === undefined || suppressor?.class === undefined) return row
  const { ratedPulseW, isLeast } = said
  const advised: SuppressorAdvice = {
    ...suppressor,
    class:
      ratedPulseW === undefined
        ? `${suppressor.class}, power class open`
        : `${suppressor.class}, ${isLeast ? 'at least ' : ''}${formatExact(ratedPulseW, 'power')} (10/1000 µs)`,
    why: `${suppressor.why} ${said.why}`,
  }
  return { ...row, suppressor: advised }
}

/** How many suppressors of each class the connector takes, as proposed. Undefined where none is proposed. */
export function classCounts(rows: readonly ContactRow[]): ConnectorFinding | undefined {
  const byClass = new Map<string, string[]>()
  for (const { contact, suppressor } of rows) {
    if (suppressor?.class === undefined) continue
    byClass.set(suppressor.class, [...(byClass.get(suppressor.class) ?? []), contact.id])
  }
  if (byClass.size === 0) return undefined
  const counted = [...byClass].sort(([, a], [, b]) => b.length - a.length)
  return {
    id: 'suppressor-classes',
    sentence: `Suppressors as proposed, each contact struck alone: ${counted
      .map(([name, ids]) => `${ids.length} × ${name} (${contactsNamed(ids)})`)
      .join('; ')}.`,
    contacts: counted.flatMap(([, ids]) => ids),
  }
}
