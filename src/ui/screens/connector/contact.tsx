import { hashOfConnector } from '../../../state/connector-address.ts'
import type { ViewGiven } from './connector.tsx'

/** One contact of a connector. */
export function Contact({ complaint, connector, contactId }: ViewGiven & { readonly contactId: string }) {
  const contact = connector.contacts.find(({ id }) => id === contactId)
  if (contact === undefined)
    return (
      <p>
        “{connector.name}” has no contact “{contactId}”.{' '}
        <a href={hashOfConnector(complaint.id, connector.id)}>Its contacts</a> are on its own page.
      </p>
    )
  return (
    <p>
      Contact {contact.id}: {contact.texts.function ?? 'no function written'}.
    </p>
  )
}
