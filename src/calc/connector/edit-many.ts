/** One change to several contacts at once: what their connector and its lines are afterwards. */
import { lineKindById } from '../../reference/line-kinds.ts'
import { saySame } from '../line/fields.ts'
import { withFact } from '../line/with-fact.ts'
import type { FactKey, Line } from '../types.ts'
import { inputOfFact } from './pasted-facts.ts'
import { withKind } from './pasted-line.ts'
import type { Connector, Contact, ContactText, ContactType } from './types.ts'

export type ManyChange =
  | { readonly is: 'type'; readonly type: ContactType }
  | { readonly is: 'text'; readonly field: ContactText; readonly text: string }
  | { readonly is: 'kind'; readonly kind: string }
  /** the safety question of their lines: whether one of them is of those that never get a part */
  | { readonly is: 'gate'; readonly gate: 'clear' | 'barred' }
  /** an empty text says that it is not known */
  | { readonly is: 'fact'; readonly fact: FactKey; readonly text: string }

export type EditedMany = {
  readonly contacts: readonly Contact[]
  readonly lines: readonly Line[]
  /** contacts that were changed */
  readonly changed: readonly string[]
  /** contacts that carry no line and so cannot have a fact of one */
  readonly without: readonly string[]
}

type Given = {
  readonly connector: Connector
  readonly lines: readonly Line[]
  readonly ids: readonly string[]
  readonly change: ManyChange
  readonly newLine: (name: string) => Line
}

/** A contact of type line without a line gets one; the legs of a pair have one fact between them. */
export function editMany({ connector, lines, ids, change, newLine }: Given): EditedMany {
  const chosen = new Set(ids)
  const now = new Map(lines.map((line) => [line.id, line]))
  const edited = new Set<string>()
  const changed: string[] = []
  const without: string[] = []
  const contacts = connector.contacts.map((contact): Contact => {
    if (!chosen.has(contact.id)) return contact
    if (change.is === 'type' || change.is === 'text') {
      const next = change.is === 'type' ? withType(contact, change.type) : withText(contact, change)
      if (next !== contact) changed.push(contact.id)
      return next
    }
    if (contact.type !== 'line') {
      without.push(contact.id)
      return contact
    }
    const before = contact.lineId === undefined ? undefined : now.get(contact.lineId)
    const line = before ?? newLine(lineName(connector, contact))
    const next = withChange(line, change)
    if (next !== before) {
      now.set(next.id, next)
      edited.add(next.id)
    }
    if (edited.has(next.id)) changed.push(contact.id)
    return contact.lineId === next.id ? contact : { ...contact, lineId: next.id }
  })
  return { contacts, lines: [...edited].flatMap((id) => now.get(id) ?? []), changed, without }
}

/** What a line is called that was made for a contact. */
export const lineName = ({ name }: Pick<Connector, 'name'>, { id, texts }: Contact): string =>
  [name === '' ? id : `${name}-${id}`, texts.function?.trim() ?? ''].filter((part) => part !== '').join(' ')

/** Only a contact of type line carries one; its line stays with the complaint. */
export function withType(contact: Contact, type: ContactType): Contact {
  if (contact.type === type) return contact
  if (type === 'line') return { ...contact, type }
  const { lineId: _line, leg: _leg, ...rest } = contact
  return { ...rest, type }
}

function withText(contact: Contact, { field, text }: { readonly field: ContactText; readonly text: string }): Contact {
  if ((contact.texts[field] ?? '') === text) return contact
  const { [field]: _old, ...others } = contact.texts
  return { ...contact, texts: text === '' ? others : { ...others, [field]: text } }
}

function withChange(line: Line, change: Extract<ManyChange, { is: 'kind' | 'fact' | 'gate' }>): Line {
  if (change.is === 'gate') return line.gate === change.gate ? line : { ...line, gate: change.gate }
  if (change.is === 'kind') return withKind(line, change.kind)
  const before = line.facts[change.fact]
  if (before !== undefined && saySame(inputOfFact(change.fact), before.text, change.text)) return line
  return withFact(line, change.fact, { text: change.text, origin: { by: 'user' } })
}

/** Contacts whose line nobody answered the safety question of; a kind that is barred answers it by itself. */
export function waitingContacts({ contacts }: Pick<Connector, 'contacts'>, lines: readonly Line[]): readonly string[] {
  const waiting = new Set(
    lines
      .filter(
        ({ gate, facts }) => gate === 'unknown' && lineKindById(facts.lineKind?.text ?? '')?.barredWhy === undefined,
      )
      .map(({ id }) => id),
  )
  return contacts.filter(({ lineId }) => lineId !== undefined && waiting.has(lineId)).map(({ id }) => id)
}
