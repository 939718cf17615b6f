import { type ConnectorView, hashOfConnector } from '../../../state/connector-address.ts'
import { lastChangeOf, undoChange } from '../../../state/connectors.ts'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'

type View = Exclude<ConnectorView, 'contact'>

const WORDS: readonly { readonly view: View | undefined; readonly word: string }[] = [
  { view: undefined, word: 'Contacts' },
  { view: 'decide', word: 'Decide' },
  { view: 'whole', word: 'Whole' },
  { view: 'trade', word: 'Sheet' },
]

/** The views of a connector, one tap from each other, and what was done last to it to be taken back. */
export function Views({ complaint, connector, view }: ViewGiven & { readonly view: ConnectorView | undefined }) {
  if (connector.contacts.length === 0) return <TakeBack connector={connector} />
  return (
    <div class="views">
      <nav aria-label="Views of the connector">
        <ul>
          {WORDS.map((one) => (
            <li key={one.word}>
              <a
                class="chip"
                href={hashOfConnector(complaint.id, connector.id, one.view)}
                aria-current={one.view === view ? 'page' : undefined}
              >
                {one.word}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <TakeBack connector={connector} />
    </div>
  )
}

/** What `addConnector` did is undone by deleting it: that is offered elsewhere. */
function TakeBack({ connector }: Pick<ViewGiven, 'connector'>) {
  const last = lastChangeOf(connector.id)
  if (last === undefined) return null
  return (
    <button type="button" class="icon-button" onClick={() => undoChange(connector.complaintId, connector.id)}>
      <Icon name="undo" />
      <span class="unseen">Take back what was done last to {connector.name || 'this connector'}</span>
    </button>
  )
}
