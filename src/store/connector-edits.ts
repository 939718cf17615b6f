/**
 * What a change does to a connector's record, as pure functions: the same for the list in memory and for the disk, now
 * or late. A typed text is written as those of a line are; contacts that were changed together are laid over what
 * stands there now, contact by contact, so that two windows on one connector lose nothing of each other.
 */
import { CONTACT_TEXTS, type Connector, type Contact, type ContactText } from '../calc/connector/types.ts'
import type { ConnectorRival, KeptConnector, TextPlace } from './connector.ts'
import {
  type Choice,
  isNewer,
  type Late,
  type LineEdit,
  stampOf,
  unseen,
  type When,
  withRivals,
  writeText,
} from './edits.ts'
import type { KeptLine } from './line.ts'
import { union, unionById } from './union.ts'

/** The parts of a connector that are changed as a whole; its texts are written one by one. */
export type ConnectorPatch = Partial<Pick<Connector, 'shape' | 'contacts' | 'suppressors' | 'adjacent'>>

/** What happens to lines of the complaint in the same step. */
export type LineStep = { readonly do: 'addLine'; readonly line: KeptLine } | LineEdit
type WithLines = { readonly lines?: readonly LineStep[] }

/** A change to one connector of a complaint. `base`: what was read, on which it was changed. */
export type ConnectorEdit = { readonly id: string; readonly connectorId: string } & When &
  (
    | { readonly do: 'connectorText'; readonly place: TextPlace; readonly next: string; readonly base: string }
    | ({ readonly do: 'settleConnector'; readonly place: TextPlace } & Choice)
    | ({ readonly do: 'changeConnector'; readonly patch: ConnectorPatch; readonly base: ConnectorPatch } & WithLines)
    | ({ readonly do: 'removeConnector' | 'undoRemoveConnector' } & WithLines)
  )

export type ConnectorStep =
  | ({ readonly do: 'addConnector'; readonly connector: KeptConnector } & WithLines)
  | ConnectorEdit

const STEPS: readonly ConnectorStep['do'][] = [
  'addConnector',
  'connectorText',
  'settleConnector',
  'changeConnector',
  'removeConnector',
  'undoRemoveConnector',
]

/** Whether a step says that it is about a connector. */
export const isConnectorStep = <T extends { readonly do?: unknown }>(step: T): step is T & Pick<ConnectorStep, 'do'> =>
  STEPS.some((one) => one === step.do)

const isAt =
  (place: TextPlace) =>
  (rival: ConnectorRival): boolean =>
    rival.field === place.field && rival.contact === place.contact

/** The text that stands at a place; empty where there is none. */
export function connectorText(connector: Connector, { contact, field }: TextPlace): string {
  if (contact !== undefined) return connector.contacts.find((one) => one.id === contact)?.texts[field] ?? ''
  if (field === 'name') return connector.name
  if (field === 'bondOhm' || field === 'bondH') return connector.shared[field] ?? ''
  return connector.texts[field] ?? ''
}

/** The texts with one written; an empty one is not there. */
function written<T extends Readonly<Record<string, string | undefined>>>(texts: T, field: keyof T, text: string): T {
  const { [field]: _old, ...rest } = texts
  // an optional text was taken off, or put there
  return (text === '' ? rest : { ...rest, [field]: text }) as T
}

function withText<C extends Connector>(connector: C, { contact, field }: TextPlace, text: string): C {
  if (contact !== undefined) {
    const isThere = connector.contacts.some((one) => one.id === contact)
    // Taken out in another window meanwhile: what is typed here brings it back.
    const back: Contact[] = isThere || text.trim() === '' ? [] : [{ id: contact, type: 'line', texts: {} }]
    const contacts = [...connector.contacts, ...back].map((one) =>
      one.id === contact ? { ...one, texts: written(one.texts, field, text) } : one,
    )
    return { ...connector, contacts }
  }
  if (field === 'name') return { ...connector, name: text }
  if (field === 'bondOhm' || field === 'bondH') return { ...connector, shared: written(connector.shared, field, text) }
  return { ...connector, texts: written(connector.texts, field, text) }
}

type Typed = { readonly place: TextPlace; readonly next: string; readonly base: string; readonly at: string }

/** The connector with one text written onto the one that was read. */
function editText(old: KeptConnector, { place, next, base, at }: Typed, staysNewer: boolean): KeptConnector {
  const all = old.rivals ?? []
  const { text, rivals } = writeText(
    { text: connectorText(old, place), rivals: all.filter(isAt(place)) },
    { base, next, staysNewer },
    (other): ConnectorRival => ({ ...place, text: other, at }),
  )
  const others = all.filter((one) => !isAt(place)(one))
  return withText(withRivals<ConnectorRival, KeptConnector>(old, [...others, ...rivals]), place, text)
}

function settle(old: KeptConnector, place: TextPlace, choice: Choice, at: string): KeptConnector {
  const all = old.rivals ?? []
  const rivals = unseen(
    { text: connectorText(old, place), rivals: all.filter(isAt(place)) },
    choice,
    (text): ConnectorRival => ({ ...place, text, at }),
  )
  const others = all.filter((one) => !isAt(place)(one))
  return withText(withRivals<ConnectorRival, KeptConnector>(old, [...others, ...rivals]), place, choice.text)
}

const isSameUse = (a: Contact, b: Contact): boolean => a.type === b.type && a.lineId === b.lineId && a.leg === b.leg

const changedTexts = (a: Contact, b: Contact): readonly ContactText[] =>
  CONTACT_TEXTS.filter((field) => (a.texts[field] ?? '') !== (b.texts[field] ?? ''))

const isSameContact = (a: Contact, b: Contact): boolean => isSameUse(a, b) && changedTexts(a, b).length === 0

const byId = (contacts: readonly Contact[]): ReadonlyMap<string, Contact> =>
  new Map(contacts.map((contact) => [contact.id, contact]))

/** What happened here to the contacts, laid over those that stand there now. */
function mergeContacts(
  old: KeptConnector,
  { now, base, at }: { readonly now: readonly Contact[]; readonly base: readonly Contact[]; readonly at: string },
  staysNewer: boolean,
): KeptConnector {
  const [stored, read, wanted] = [byId(old.contacts), byId(base), byId(now)]
  const typed: Typed[] = []
  const kept = now.flatMap((contact): Contact[] => {
    const [there, before] = [stored.get(contact.id), read.get(contact.id)]
    if (there === undefined) return before !== undefined && isSameContact(before, contact) ? [] : [contact]
    const from: Contact = before ?? { id: contact.id, type: there.type, texts: {} }
    for (const field of changedTexts(from, contact))
      typed.push({
        place: { contact: contact.id, field },
        next: contact.texts[field] ?? '',
        base: from.texts[field] ?? '',
        at,
      })
    const isOthers = isSameUse(from, contact) || (staysNewer && !isSameUse(from, there))
    return [{ ...(isOthers ? there : contact), texts: there.texts }]
  })
  const extra = old.contacts.filter((there) => {
    const before = read.get(there.id)
    return !wanted.has(there.id) && (before === undefined || !isSameContact(before, there))
  })
  const merged: KeptConnector = { ...old, contacts: [...kept, ...extra] }
  return typed.reduce((one, text) => editText(one, text, staysNewer), merged)
}

/** Parts that come late onto newer ones: those stand, and what they lack comes to them. The shape stays. */
const beside = (old: KeptConnector, { suppressors, adjacent }: ConnectorPatch): ConnectorPatch => ({
  ...(suppressors && { suppressors: unionById(old.suppressors, suppressors) }),
  ...(adjacent && { adjacent: union(old.adjacent, adjacent) }),
})

/** The connector after a change. `late`: it was left behind by a window that has ended, so what is newer stays. */
export function editConnector(old: KeptConnector, edit: ConnectorEdit, late: Late): KeptConnector {
  const staysNewer = late !== false && isNewer(old, edit)
  const stamp = stampOf(old, edit, staysNewer)
  switch (edit.do) {
    case 'connectorText':
      return { ...editText(old, edit, staysNewer), ...stamp }
    case 'settleConnector':
      return { ...settle(old, edit.place, edit, edit.at), ...stamp }
    case 'changeConnector': {
      const { contacts, ...whole } = edit.patch
      const placed = { ...old, ...(staysNewer ? beside(old, whole) : whole) }
      if (contacts === undefined) return { ...placed, ...stamp }
      const changed = { now: contacts, base: edit.base.contacts ?? [], at: edit.at }
      return { ...mergeContacts(placed, changed, staysNewer), ...stamp }
    }
    case 'removeConnector':
      return { ...old, ...stamp, ...(!staysNewer && { removedAt: edit.at }) }
    case 'undoRemoveConnector': {
      const { removedAt: _gone, ...rest } = old
      return { ...rest, ...stamp }
    }
  }
}

/** The connectors of a complaint once a step is carried out, removed ones among them. */
export function applyConnectorStep(
  all: readonly KeptConnector[],
  step: ConnectorStep,
  late: Late = false,
): readonly KeptConnector[] {
  if (step.do === 'addConnector') return all.some(({ id }) => id === step.connector.id) ? all : [...all, step.connector]
  return all.map((one) => (one.id === step.connectorId ? editConnector(one, step, late) : one))
}

/** The complaint a step belongs to, and the connector. */
export const placeOfStep = (step: ConnectorStep): { readonly id: string; readonly connectorId: string } =>
  step.do === 'addConnector' ? { id: step.connector.complaintId, connectorId: step.connector.id } : step
