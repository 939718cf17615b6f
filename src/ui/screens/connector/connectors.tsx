import { useEffect } from 'preact/hooks'
import { hashOfConnector } from '../../../state/connector-address.ts'
import { addConnector, bringBack, connectorsOf, removedConnectorsOf } from '../../../state/connectors.ts'
import { newConnector } from '../../../state/new-connector.ts'
import { goTo } from '../../../state/router.ts'
import { readyWorker } from '../../../state/work.ts'
import { Icon } from '../../parts/icon.tsx'
import { connectorWords } from './connector-words.ts'

/** The connectors of a complaint, and the way to one more. */
export function Connectors({ complaintId }: { readonly complaintId: string }) {
  const connectors = connectorsOf(complaintId).value
  const removed = removedConnectorsOf(complaintId).value
  const hasSome = (connectors ?? []).length > 0
  // one of them is opened next: its screen, and what works its contacts out, have read their scripts by then
  useEffect(() => {
    if (!hasSome) return
    readyWorker('schedule')
    // where one cannot be had, the screen says so when it is opened
    Promise.all([import('./connector.tsx'), import('./home.tsx')]).catch(() => undefined)
  }, [hasSome])
  const add = () => {
    const connector = newConnector(connectors?.map(({ name }) => name) ?? [])
    addConnector(complaintId, connector)
    goTo(hashOfConnector(complaintId, connector.id))
  }
  return (
    <section aria-label="Connectors">
      <h2>Connectors</h2>
      {connectors === undefined ? (
        <p class="muted" role="status">
          Reading the connectors…
        </p>
      ) : (
        <>
          {connectors.length > 0 && (
            <ul class="rows">
              {connectors.map((connector) => (
                <li key={connector.id}>
                  <a href={hashOfConnector(complaintId, connector.id)}>
                    <span>
                      <strong>{connector.name || 'Connector without a label'}</strong>
                      <span class="row-note">{connectorWords(connector)}</span>
                    </span>
                    <Icon name="go" />
                  </a>
                </li>
              ))}
            </ul>
          )}
          {removed.length > 0 && (
            <ul class="rows" aria-label="Deleted connectors">
              {removed.map(({ id, name }) => (
                <li key={id}>
                  <span>
                    <strong>{name || 'Connector without a label'}</strong>
                    <span class="row-note">deleted, kept for a day</span>
                  </span>
                  <button type="button" class="button" onClick={() => bringBack(complaintId, id)}>
                    Bring back
                  </button>
                </li>
              ))}
            </ul>
          )}
          <button type="button" class="button" onClick={add}>
            Add a connector
          </button>
        </>
      )}
    </section>
  )
}
