import { hashOfConnector, hashOfContact } from '../../../state/connector-address.ts'
import { removeConnector } from '../../../state/connectors.ts'
import { goTo, hashOf } from '../../../state/router.ts'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'
import { Description } from './description.tsx'
import { MakeContacts } from './make-contacts.tsx'
import { ConnectorTextField } from './texts.tsx'

/** A connector: its contacts, what it is, and the ways on. */
export function Home({ complaint, connector }: ViewGiven) {
  const isEmpty = connector.contacts.length === 0
  return (
    <div class="panes">
      <div class="pane stack">
        {isEmpty ? (
          <Begin complaint={complaint} connector={connector} />
        ) : (
          <Contacts complaint={complaint} connector={connector} />
        )}
      </div>
      <div class="pane stack">
        <section aria-label="What it is">
          <h2>What it is</h2>
          <ConnectorTextField connector={connector} field="name" label="Label" help="As on the drawing: J2, P104." />
          <details class="fold" open={isEmpty ? false : undefined}>
            <summary>Half, shell, arrangement, keying</summary>
            <Description connector={connector} />
          </details>
        </section>
        {!isEmpty && (
          <section aria-label="More contacts">
            <details class="fold">
              <summary>More contacts</summary>
              <MakeContacts connector={connector} />
            </details>
            <a class="button" href={hashOfConnector(complaint.id, connector.id, 'paste')}>
              Paste a table
            </a>
          </section>
        )}
        <div class="actions">
          <button
            type="button"
            class="button"
            onClick={() => {
              removeConnector(complaint.id, connector.id)
              goTo(hashOf('log', complaint.id))
            }}
          >
            <Icon name="close" />
            Delete the connector
          </button>
        </div>
      </div>
    </div>
  )
}

/** A connector begins with its contacts: from a table, or by scheme and count. */
function Begin({ complaint, connector }: ViewGiven) {
  return (
    <section aria-label="Contacts" class="stack">
      <h2>Contacts</h2>
      <p>Paste them from a spreadsheet with what is known of each, or make them by name and number.</p>
      <a class="button strong wide" href={hashOfConnector(complaint.id, connector.id, 'paste')}>
        Paste a table
      </a>
      <MakeContacts connector={connector} />
    </section>
  )
}

function Contacts({ complaint, connector }: ViewGiven) {
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
