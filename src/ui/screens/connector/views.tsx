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
  if (connector.contacts.length === 0) return null
  return (
    <>
      <nav aria-label="Views of the connector">
        <ul class="views">
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
    </>
  )
}

/** What was typed is not counted: it is changed by typing. */
function TakeBack({ connector }: Pick<ViewGiven, 'connector'>) {
  const last = lastChangeOf(connector.id)
  if (last === undefined) return null
  return (
    <button type="button" class="link take-back" onClick={() => undoChange(connector.complaintId, connector.id)}>
      <Icon name="undo" />
      Undo the last change
    </button>
  )
}
