import { useState } from 'preact/hooks'
import { type ContactScheme, contactIds, LETTERS_SAID, MOST_CONTACTS } from '../../../calc/connector/contact-ids.ts'
import { RECTANGULAR_ROWS } from '../../../calc/connector/face.ts'
import { changeConnector, type KeptConnector } from '../../../state/connectors.ts'
import { Icon } from '../../parts/icon.tsx'
import { ChoiceRow } from './texts.tsx'

const SCHEMES = [
  { value: 'numbers', label: '1 to n' },
  { value: 'letters', label: 'letters' },
  { value: 'rectangular', label: 'rectangular' },
  { value: 'own', label: 'own list' },
] as const
type Scheme = (typeof SCHEMES)[number]['value']

const COUNTS = Object.keys(RECTANGULAR_ROWS).map((count) => ({ value: count, label: count }))

/** Contacts by scheme and count, or by a list of one's own; those that are there already stay. */
export function MakeContacts({ connector }: { readonly connector: KeptConnector }) {
  const [scheme, setScheme] = useState<Scheme>('numbers')
  const [count, setCount] = useState('')
  const [list, setList] = useState('')
  const [said, setSaid] = useState<string | undefined>(undefined)
  const wanted: ContactScheme = scheme === 'own' ? { is: 'own', text: list } : { is: scheme, count: numberOf(count) }
  const made = contactIds(wanted)
  const fresh = made.ok ? made.ids.filter((id) => connector.contacts.every((contact) => contact.id !== id)) : []
  const make = () => {
    if (!made.ok) return setSaid(made.message)
    if (fresh.length === 0) return setSaid('The connector has all of these already.')
    const contacts = [...connector.contacts, ...fresh.map((id) => ({ id, type: 'line', texts: {} }) as const)]
    if (contacts.length > MOST_CONTACTS)
      return setSaid(`That would be ${contacts.length} contacts; ${MOST_CONTACTS} are the most.`)
    setSaid(undefined)
    changeConnector(connector.complaintId, connector.id, {
      contacts,
      ...(scheme === 'rectangular' && { shape: 'rectangular' as const }),
      ...(scheme === 'letters' && { shape: 'ring' as const }),
    })
  }
  return (
    <form
      class="stack"
      aria-label="Make contacts"
      onSubmit={(event) => {
        event.preventDefault()
        make()
      }}
    >
      <ChoiceRow
        name="scheme"
        label="Names"
        options={SCHEMES}
        chosen={scheme}
        onChoose={(value) => {
          setScheme(SCHEMES.find((one) => one.value === value)?.value ?? 'numbers')
          setSaid(undefined)
        }}
      />
      {scheme === 'letters' && <p class="muted small">{LETTERS_SAID}</p>}
      {scheme === 'rectangular' && (
        <ChoiceRow name="ways" label="Contacts" options={COUNTS} chosen={count} onChoose={setCount} />
      )}
      {scheme === 'own' && (
        <TextLine
          id="own-list"
          label="Names of the contacts"
          help="“1-24”, “A-F, GND”: names and spans, divided by commas or blanks."
          text={list}
          onType={setList}
          isRefused={said !== undefined}
        />
      )}
      {(scheme === 'numbers' || scheme === 'letters') && (
        <TextLine
          id="how-many"
          label="How many"
          text={count}
          onType={setCount}
          isRefused={said !== undefined}
          inputMode="numeric"
        />
      )}
      {said !== undefined && (
        <p id="contacts-refused" class="against" role="alert">
          {said}
        </p>
      )}
      <button type="submit" class="button">
        <Icon name="keep" />
        {fresh.length > 1 ? `Make ${fresh.length} contacts` : 'Make the contacts'}
      </button>
    </form>
  )
}

/** A text that is no whole number is none. */
const numberOf = (text: string): number => (/^\s*\d{1,6}\s*$/.test(text) ? Number(text) : Number.NaN)

function TextLine(given: {
  readonly id: string
  readonly label: string
  readonly help?: string
  readonly text: string
  readonly onType: (text: string) => void
  readonly isRefused: boolean
  readonly inputMode?: 'numeric'
}) {
  const { id, label, help, text, onType, isRefused, inputMode } = given
  return (
    <div class="field wide">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={text}
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        enterkeyhint="done"
        {...(inputMode !== undefined && { inputMode })}
        aria-invalid={isRefused}
        {...(isRefused && { 'aria-describedby': 'contacts-refused' })}
        onInput={(event) => onType(event.currentTarget.value)}
      />
      {help !== undefined && <p class="muted small">{help}</p>}
    </div>
  )
}
