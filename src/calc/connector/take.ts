/** A choice written into contacts: what one tap on a proposal, or on a point of the curve, puts down. */
import { printText } from '../quantity/format.ts'
import type { ContactPart } from './contact-row.ts'
import type { Contact, ContactText } from './types.ts'

export type Taken = { readonly id: string; readonly part: ContactPart }

/** The contacts with these parts as their own choice; the other leg of a pair takes the same. */
export function withTaken(contacts: readonly Contact[], taken: readonly Taken[]): readonly Contact[] {
  const partOf = new Map(taken.map(({ id, part }) => [id, part]))
  for (const { id, lineId } of contacts) {
    const part = partOf.get(id)
    if (part === undefined || lineId === undefined) continue
    for (const other of contacts) if (other.lineId === lineId && !partOf.has(other.id)) partOf.set(other.id, part)
  }
  return contacts.map((contact) => {
    const part = partOf.get(contact.id)
    return part === undefined ? contact : { ...contact, texts: { ...contact.texts, ...textsOf(part) } }
  })
}

function textsOf({ topology, valueF, inductanceH }: ContactPart): { readonly [K in ContactText]?: string } {
  return {
    chosenTopology: topology,
    chosenF: valueF === undefined ? '' : printText(valueF, 'capacitance'),
    chosenH: inductanceH === undefined ? '' : printText(inductanceH, 'inductance'),
  }
}

/** The contacts without any choice of parts. */
export function withoutTaken(contacts: readonly Contact[], ids: readonly string[]): readonly Contact[] {
  const all = new Set(ids)
  return contacts.map((contact) =>
    all.has(contact.id)
      ? { ...contact, texts: { ...contact.texts, chosenTopology: '', chosenF: '', chosenH: '' } }
      : contact,
  )
}
