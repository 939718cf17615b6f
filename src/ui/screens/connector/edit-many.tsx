import { useState } from 'preact/hooks'
import { lineKindInput } from '../../../calc/checks/signal-inputs.ts'
import { ZONES } from '../../../calc/connector/contact-words.ts'
import { type EditedMany, editMany, type ManyChange } from '../../../calc/connector/edit-many.ts'
import { selectedContacts } from '../../../calc/connector/selected.ts'
import { CONTACT_TYPES } from '../../../calc/connector/types.ts'
import { listed } from '../../../calc/explain/sentence.ts'
import { lineKindById } from '../../../reference/line-kinds.ts'
import { changeConnector } from '../../../state/connectors.ts'
import { newLine } from '../../../store/line.ts'
import type { ViewGiven } from './connector.tsx'
import { FactForm } from './fact-form.tsx'
import { PickOne } from './pick-one.tsx'
import { ChoiceRow } from './texts.tsx'

type Given = ViewGiven & {
  readonly chosen: ReadonlySet<string>
  readonly choose: (ids: readonly string[]) => void
  readonly onEnd: () => void
}

const TYPE_OPTIONS = CONTACT_TYPES.map((type) => ({ value: type, label: type }))
const GATE_OPTIONS = [
  { value: 'barred', label: 'never a part in them' },
  { value: 'clear', label: 'none of those' },
]
const ZONE_OPTIONS = ZONES.map((zone) => ({ value: zone, label: zone }))

/** Several contacts at once: chosen by name, by kind, in the list or on the face; then one thing said of all of them. */
export function EditMany({ complaint, connector, chosen, choose, onEnd }: Given) {
  const [said, setSaid] = useState<{ readonly isRefusal: boolean; readonly words: string } | undefined>(undefined)
  const ids = connector.contacts.filter(({ id }) => chosen.has(id)).map(({ id }) => id)
  const carryOut = (change: ManyChange) => {
    if (ids.length === 0)
      return setSaid({ isRefusal: true, words: 'Choose contacts first: by name, by kind, in the list or on the face.' })
    const edited = editMany({ connector, lines: complaint.lines, ids, change, newLine })
    if (edited.changed.length > 0)
      changeConnector(complaint.id, connector.id, { contacts: edited.contacts }, edited.lines)
    setSaid({ isRefusal: edited.changed.length === 0 && edited.without.length > 0, words: outcomeOf(edited) })
  }
  return (
    <section aria-label="Edit several" class="stack edit-many">
      <p class="sentence" role="status">
        {ids.length === 0 ? 'No contact chosen.' : `${ids.length} chosen.`}
      </p>
      <ByName connector={connector} choose={choose} />
      <div class="actions">
        <PickOne
          label="Choose a kind"
          options={kindsOf(complaint, connector)}
          onPick={(kind) => choose(idsOfKind(complaint, connector, kind))}
        />
        <button type="button" class="button" onClick={() => choose(connector.contacts.map(({ id }) => id))}>
          All
        </button>
        <button type="button" class="button" onClick={() => choose([])}>
          None
        </button>
      </div>
      <ChoiceRow
        name="many-type"
        label="They are"
        options={TYPE_OPTIONS}
        chosen=""
        onChoose={(value) => {
          const type = CONTACT_TYPES.find((one) => one === value)
          if (type !== undefined) carryOut({ is: 'type', type })
        }}
      />
      <ChoiceRow
        name="many-zone"
        label="Their zone is"
        options={ZONE_OPTIONS}
        chosen=""
        onChoose={(text) => carryOut({ is: 'text', field: 'zone', text })}
      />
      <ChoiceRow
        name="many-gate"
        label="Safety, by the wiring diagram"
        options={GATE_OPTIONS}
        chosen=""
        onChoose={(value) => carryOut({ is: 'gate', gate: value === 'barred' ? 'barred' : 'clear' })}
      />
      <PickOne
        label="Their kind of line"
        options={lineKindInput.type.options}
        onPick={(kind) => carryOut({ is: 'kind', kind })}
      />
      <FactForm onSay={(fact, text) => carryOut({ is: 'fact', fact, text })} />
      {said !== undefined && (
        <p class={said.isRefusal ? 'against' : ''} role={said.isRefusal ? 'alert' : 'status'}>
          {said.words}
        </p>
      )}
      <button type="button" class="button strong wide" onClick={onEnd}>
        Done
      </button>
    </section>
  )
}

function outcomeOf({ changed, without }: EditedMany): string {
  const parts = [
    changed.length === 0
      ? 'Nothing to change.'
      : `${changed.length === 1 ? 'One contact' : `${changed.length} contacts`} changed.`,
    ...(without.length === 0 ? [] : [`${listed(without)} carry no line, so nothing was said of one there.`]),
  ]
  return parts.join(' ')
}

const kindOf = ({ lines }: Given['complaint'], lineId: string | undefined): string =>
  lines.find(({ id }) => id === lineId)?.facts.lineKind?.text ?? ''

/** The kinds this connector has, and contacts without one. */
function kindsOf(complaint: Given['complaint'], { contacts }: Given['connector']) {
  const kinds = new Set(
    contacts.map(({ type, lineId }) => (type === 'line' ? kindOf(complaint, lineId) : `type:${type}`)),
  )
  return [...kinds].map((value) => ({
    value,
    label: value.startsWith('type:')
      ? `${value.slice(5)} contacts`
      : value === ''
        ? 'kind not known'
        : (lineKindById(value)?.name ?? value),
  }))
}

const idsOfKind = (complaint: Given['complaint'], { contacts }: Given['connector'], kind: string): readonly string[] =>
  contacts
    .filter(({ type, lineId }) => (type === 'line' ? kindOf(complaint, lineId) : `type:${type}`) === kind)
    .map(({ id }) => id)

function ByName({ connector, choose }: Pick<Given, 'connector' | 'choose'>) {
  const [text, setText] = useState('')
  const [refused, setRefused] = useState<string | undefined>(undefined)
  return (
    <form
      class="field wide"
      aria-label="Choose by name"
      onSubmit={(event) => {
        event.preventDefault()
        const found = selectedContacts(
          text,
          connector.contacts.map(({ id }) => id),
        )
        setRefused(found.ok ? undefined : found.message)
        if (found.ok) choose(found.ids)
      }}
    >
      <label for="many-names">Choose by name</label>
      <input
        id="many-names"
        type="text"
        value={text}
        placeholder="1-12, A-F"
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        enterkeyhint="go"
        aria-invalid={refused !== undefined}
        {...(refused !== undefined && { 'aria-describedby': 'many-names-refused' })}
        onInput={(event) => {
          setText(event.currentTarget.value)
          setRefused(undefined)
        }}
      />
      {refused !== undefined && (
        <p id="many-names-refused" class="against small" role="alert">
          {refused}
        </p>
      )}
      <button type="submit" class="button">
        Choose these
      </button>
    </form>
  )
}
