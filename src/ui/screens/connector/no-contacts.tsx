import { hashOfConnector } from '../../../state/connector-address.ts'
import type { ViewGiven } from './connector.tsx'

/** A connector without contacts: what there is not for want of them, and the two ways to have some. */
export function NoContacts({ complaint, connector, so }: ViewGiven & { readonly so: string }) {
  return (
    <div class="stack">
      <p>There is no contact yet, so {so}.</p>
      <div class="actions">
        <a class="button strong" href={hashOfConnector(complaint.id, connector.id, 'paste')}>
          Paste a table
        </a>
        <a class="button" href={hashOfConnector(complaint.id, connector.id)}>
          Make the contacts
        </a>
      </div>
    </div>
  )
}
