import { useState } from 'preact/hooks'
import { changeConnector, type KeptConnector } from '../../../state/connectors.ts'
import { newId } from '../../../store/ids.ts'
import { Icon } from '../../parts/icon.tsx'

type Given = { readonly connector: KeptConnector }

/** What several contacts have in common: one suppressor, or a capacitance between two. */
export function WholeShared({ connector }: Given) {
  return (
    <section aria-label="Between contacts">
      <h2>Between contacts</h2>
      <details class="fold">
        <summary>One suppressor for several contacts</summary>
        <Groups connector={connector} />
      </details>
      <details class="fold">
        <summary>Capacitance between two contacts</summary>
        <Adjacent connector={connector} />
      </details>
    </section>
  )
}

function Groups({ connector }: Given) {
  const { complaintId, id, suppressors } = connector
  const [text, setText] = useState('')
  const [said, setSaid] = useState('')
  const add = () => {
    const asked = namesIn(text, connector)
    if (asked.unknown.length > 0) return setSaid(`There is no contact ${asked.unknown.join(', ')} on this connector.`)
    if (asked.ids.length < 2) return setSaid('Name at least two contacts, such as 3 4 5.')
    const taken = asked.ids.filter((one) => suppressors.some(({ contacts }) => contacts.includes(one)))
    if (taken.length > 0) return setSaid(`${taken.join(', ')} already share one: take that group away first.`)
    changeConnector(complaintId, id, { suppressors: [...suppressors, { id: newId(), contacts: asked.ids }] })
    setText('')
    setSaid('')
  }
  return (
    <>
      <Listed
        rows={suppressors.map(({ id: group, contacts }) => ({ key: group, text: contacts.join(', ') }))}
        onRemove={(key) =>
          changeConnector(complaintId, id, { suppressors: suppressors.filter((one) => one.id !== key) })
        }
      />
      <Adding
        id="group-contacts"
        label="Contacts that share one"
        help="Their names: 3 4 5"
        text={text}
        onText={setText}
        onAdd={add}
        said={said}
      />
    </>
  )
}

function Adjacent({ connector }: Given) {
  const { complaintId, id, adjacent } = connector
  const [text, setText] = useState('')
  const [said, setSaid] = useState('')
  const add = () => {
    const [first = '', second = '', ...rest] = text.trim().split(/[\s,]+/u)
    const asked = namesIn(`${first} ${second}`, connector)
    if (asked.unknown.length > 0) return setSaid(`There is no contact ${asked.unknown.join(', ')} on this connector.`)
    if (asked.ids.length !== 2 || rest.length === 0)
      return setSaid('Write two contacts and the capacitance, such as 3 4 2p.')
    changeConnector(complaintId, id, { adjacent: [...adjacent, { a: first, b: second, text: rest.join(' ') }] })
    setText('')
    setSaid('')
  }
  return (
    <>
      <Listed
        rows={adjacent.map(({ a, b, text: farads }, i) => ({ key: String(i), text: `${a} and ${b}: ${farads}` }))}
        onRemove={(key) => changeConnector(complaintId, id, { adjacent: adjacent.filter((_, i) => String(i) !== key) })}
      />
      <Adding
        id="adjacent-pair"
        label="Two contacts and what is between them"
        help="3 4 2p"
        text={text}
        onText={setText}
        onAdd={add}
        said={said}
      />
    </>
  )
}

function namesIn(
  text: string,
  { contacts }: KeptConnector,
): { readonly ids: readonly string[]; readonly unknown: readonly string[] } {
  const names = [...new Set(text.split(/[\s,;]+/u).filter((one) => one !== ''))]
  const known = new Set(contacts.map(({ id }) => id))
  return { ids: names.filter((one) => known.has(one)), unknown: names.filter((one) => !known.has(one)) }
}

type Row = { readonly key: string; readonly text: string }

function Listed({ rows, onRemove }: { readonly rows: readonly Row[]; readonly onRemove: (key: string) => void }) {
  if (rows.length === 0) return null
  return (
    <ul class="rows">
      {rows.map(({ key, text }) => (
        <li key={key} class="listed">
          <span>{text}</span>
          <button type="button" class="button" aria-label={`Take away ${text}`} onClick={() => onRemove(key)}>
            <Icon name="close" />
          </button>
        </li>
      ))}
    </ul>
  )
}

type AddingGiven = {
  readonly id: string
  readonly label: string
  readonly help: string
  readonly text: string
  readonly said: string
  readonly onText: (text: string) => void
  readonly onAdd: () => void
}

function Adding({ id, label, help, text, said, onText, onAdd }: AddingGiven) {
  return (
    <form
      class="field wide"
      onSubmit={(event) => {
        event.preventDefault()
        onAdd()
      }}
    >
      <label for={id}>{label}</label>
      <p id={`${id}-help`} class="muted small">
        {help}
      </p>
      <input
        id={id}
        type="text"
        value={text}
        aria-describedby={`${id}-help ${id}-said`}
        autocomplete="off"
        onInput={({ currentTarget }) => onText(currentTarget.value)}
      />
      <p id={`${id}-said`} role="status">
        {said}
      </p>
      <button type="submit" class="button">
        Add
      </button>
    </form>
  )
}
