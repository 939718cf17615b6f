/** Which line a contact carries, alone or as a leg of a pair: what the contacts are after one of them is changed. */
import type { Contact } from './types.ts'

const without = ({ lineId: _line, leg: _leg, ...rest }: Contact): Contact => rest

/** The other contact of the same line. */
export const mateOf = (contacts: readonly Contact[], { id, lineId }: Contact): Contact | undefined =>
  lineId === undefined ? undefined : contacts.find((other) => other.lineId === lineId && other.id !== id)

/** Who is left alone with a line is no leg any more. */
function left(contacts: readonly Contact[], lineId: string | undefined): readonly Contact[] {
  const legs = contacts.filter((contact) => lineId !== undefined && contact.lineId === lineId)
  const [only] = legs
  if (legs.length !== 1 || only?.leg === undefined) return contacts
  const { leg: _leg, ...alone } = only
  return contacts.map((contact) => (contact.id === only.id ? alone : contact))
}

/** The contact carries this line, alone or beside a contact that has it; undefined = none. At most two contacts carry one. */
export function withLine(contacts: readonly Contact[], id: string, lineId: string | undefined): readonly Contact[] {
  const old = contacts.find((contact) => contact.id === id)
  if (old === undefined || old.lineId === lineId) return contacts
  const carriers = contacts.filter((contact) => lineId !== undefined && contact.lineId === lineId && contact.id !== id)
  if (carriers.length > 1) return contacts
  const [mate] = carriers
  const next = contacts.map((contact): Contact => {
    if (contact.id === id) {
      if (lineId === undefined) return without(contact)
      return { ...without(contact), type: 'line', lineId, ...(mate && { leg: mate.leg === 'b' ? 'a' : 'b' }) }
    }
    return contact.id === mate?.id ? { ...contact, leg: contact.leg ?? 'a' } : contact
  })
  return left(next, old.lineId)
}

/** The legs of a pair the other way round. */
export const swapped = (contacts: readonly Contact[], lineId: string): readonly Contact[] =>
  contacts.map((contact) =>
    contact.lineId === lineId && contact.leg !== undefined
      ? { ...contact, leg: contact.leg === 'a' ? ('b' as const) : ('a' as const) }
      : contact,
  )
