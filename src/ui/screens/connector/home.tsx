import { hashOfContact } from '../../../state/connector-address.ts'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'

/** A connector: its contacts, and the ways on. */
export function Home({ complaint, connector }: ViewGiven) {
  return (
    <ul class="rows" aria-label="Contacts">
      {connector.contacts.map(({ id, texts }) => (
        <li key={id}>
          <a href={hashOfContact(complaint.id, connector.id, id)}>
            <span>
              <strong>{id}</strong> {texts.function}
            </span>
            <Icon name="go" />
          </a>
        </li>
      ))}
    </ul>
  )
}
