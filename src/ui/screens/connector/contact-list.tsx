import type { ContactRow } from '../../../calc/connector/contact-row.ts'
import type { Contact } from '../../../calc/connector/types.ts'
import type { Line } from '../../../calc/types.ts'
import { lineKindById } from '../../../reference/line-kinds.ts'
import { hashOfContact } from '../../../state/connector-address.ts'
import { MARK_WORDS, MarkIcon, markOf } from '../../parts/contact-mark.tsx'
import { useFrameLater } from '../../parts/frame-later.ts'
import { Windowed } from '../../parts/windowed.tsx'
import type { ViewGiven } from './connector.tsx'

export type ContactsGiven = ViewGiven & {
  /** rows of the schedule by contact, as far as they are worked out */
  readonly rows: ReadonlyMap<string, ContactRow>
}

type Given = ContactsGiven & {
  /** given: a row chooses its contact instead of opening it */
  readonly choosing?: { readonly chosen: ReadonlySet<string>; readonly toggle: (id: string) => void } | undefined
}

/** What there is to say of the first so many is drawn first, of the others a frame later. */
const FIRST = 8

/** Every contact with its sign, its function and what is decided; only those near the screen are in the page. */
export function ContactList({ complaint, connector, rows, choosing }: Given) {
  const lines = new Map(complaint.lines.map((line) => [line.id, line]))
  const laterRows = useFrameLater(rows)
  return (
    <Windowed
      label="Contacts"
      items={connector.contacts}
      keyOf={({ id }) => id}
      rowClass="one-height"
      row={(contact, at) => {
        const row = (at < FIRST ? rows : laterRows).get(contact.id)
        const words = <Words contact={contact} line={lines.get(contact.lineId ?? '')} row={row} />
        return choosing === undefined ? (
          <a href={hashOfContact(complaint.id, connector.id, contact.id)}>{words}</a>
        ) : (
          <label class="contact-choice">
            <input
              type="checkbox"
              class="pick-mark"
              checked={choosing.chosen.has(contact.id)}
              onChange={() => choosing.toggle(contact.id)}
            />
            {words}
          </label>
        )
      }}
    />
  )
}

type WordsGiven = { readonly contact: Contact; readonly line: Line | undefined; readonly row: ContactRow | undefined }

function Words({ contact, line, row }: WordsGiven) {
  const mark = markOf(contact, row)
  return (
    <span class={`contact-row ${mark}`} data-mark={mark}>
      <MarkIcon mark={mark} />
      <span class="contact-words">
        <span class="one-line">
          <strong>{contact.id}</strong> {contact.texts.function ?? ''}
        </span>
        <span class="row-note one-line">{noteOf(contact, line, row)}</span>
      </span>
      <span class="contact-mark">{MARK_WORDS[mark]}</span>
    </span>
  )
}

/** What is decided, else what the contact carries. */
function noteOf({ type, leg }: Contact, line: Line | undefined, row: ContactRow | undefined): string {
  if (row !== undefined) return row.headline
  if (type !== 'line') return ''
  const kind = line?.facts.lineKind?.text ?? ''
  const named = lineKindById(kind)?.name ?? (line === undefined ? 'no line yet' : 'kind of line not known')
  return leg === undefined ? named : `${named}, leg ${leg}`
}

/** A contact in words, for those who do not see its drawing. */
export function contactWords(contact: Contact, row: ContactRow | undefined): string {
  const said = [contact.id, contact.texts.function ?? '', MARK_WORDS[markOf(contact, row)]]
  return said.filter((part) => part !== '').join(', ')
}
