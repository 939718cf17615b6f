/** A connector as a record of its own, and the table by which it is read back. Its lines are those of the complaint. */
import {
  CONNECTOR_TEXTS,
  CONTACT_TEXTS,
  CONTACT_TYPES,
  type Connector,
  type ConnectorText,
  type Contact,
  type ContactText,
} from '../calc/connector/types.ts'
import {
  dictionaryOf,
  id,
  item,
  type Kept,
  listOf,
  oneOf,
  type Provenance,
  place,
  type Reader,
  readRecord,
  required,
  schema,
  type Table,
  text,
  time,
  turn,
} from './gate.ts'
import { newId } from './ids.ts'
import { isRecord } from './plain.ts'

/** Version of a connector's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const CONNECTOR_SCHEMA = 2

/** The texts of the path all contacts share. */
export const SHARED_TEXTS = ['bondOhm', 'bondH'] as const

/** The texts of a connector that are typed one by one. */
export type ConnectorField = ConnectorText | 'name' | (typeof SHARED_TEXTS)[number]

/** Where a text of a connector stands: in a contact of it, or in itself. */
export type TextPlace =
  | { readonly contact: string; readonly field: ContactText }
  | { readonly contact?: never; readonly field: ConnectorField }

/** Another text, typed in another window on the same one; kept until one of them is taken. */
export type ConnectorRival = TextPlace & { readonly text: string; readonly at: string }

/** A connector of a complaint: `order` is its place among the others, `removedAt` is set while its removal can be undone. */
export type KeptConnector = Connector & {
  readonly complaintId: string
  readonly order: number
  readonly schemaVersion: number
  readonly updatedAt: string
  /** how many changes it has had, as for a complaint */
  readonly turn?: number
  readonly removedAt?: string
  readonly rivals?: readonly ConnectorRival[]
  readonly kept: readonly Kept[]
}

/** Longest name of a contact that is taken over; those made here are shorter. */
const MOST_CHARACTERS = 40

/** Any sign but those nobody can see: the name stands on an insert. */
const contactId: Reader<string> = (value) =>
  typeof value === 'string' &&
  value.trim() === value &&
  value !== '' &&
  value.length <= MOST_CHARACTERS &&
  value !== '__proto__'
    ? value
    : undefined

const among = <T extends string>(words: readonly T[]) => {
  const known: ReadonlySet<string> = new Set(words)
  return (key: string): key is T => known.has(key)
}

const CONTACT: Table<Contact> = {
  id: required(contactId),
  type: required(oneOf(CONTACT_TYPES)),
  lineId: { read: id, or: () => undefined },
  leg: { read: oneOf<'a' | 'b'>(['a', 'b']), or: () => undefined },
  // last: what it sets aside or takes back must not be lost by a refusal after it
  texts: { read: dictionaryOf(among(CONTACT_TEXTS), text), or: () => ({}) },
}

/** A contact; texts nobody knows are set aside under its name, which it keeps wherever it stands in the list. */
const contact: Reader<Contact> = (raw, _at, gate) => {
  const name = isRecord(raw) ? contactId(raw['id'], '', gate) : undefined
  return name === undefined ? undefined : item(CONTACT)(raw, `contacts.${name}`, gate)
}

/** Contacts; a second one of the same name is set aside. */
const contacts: Reader<readonly Contact[]> = (raw, at, gate) => {
  const used = new Set<string>()
  return listOf(contact)(raw, at, gate)?.filter((one) => {
    const isFirst = !used.has(one.id)
    used.add(one.id)
    if (!isFirst) gate.keep(`${at}.${one.id}.again`, one)
    return isFirst
  })
}

/** A list of names, whole or not at all. */
const contactIds: Reader<readonly string[]> = (raw, at, gate) =>
  Array.isArray(raw) && raw.every((one) => contactId(one, at, gate) !== undefined) ? raw : undefined

const isField = (value: unknown): value is ConnectorField =>
  value === 'name' || [...SHARED_TEXTS, ...CONNECTOR_TEXTS].some((one) => one === value)

/** A place from anything; undefined where there is none of that name. */
export function readPlace(raw: Record<string, unknown>): TextPlace | undefined {
  const { contact: name, field } = raw
  if (name === undefined) return isField(field) ? { field } : undefined
  const known = CONTACT_TEXTS.find((one) => one === field)
  return typeof name === 'string' && known !== undefined ? { contact: name, field: known } : undefined
}

const rival: Reader<ConnectorRival> = (raw, at, gate) => {
  const where = isRecord(raw) ? readPlace(raw) : undefined
  const typed = item<{ text: string; at: string }>({ text: required(text), at: required(time) })(raw, at, gate)
  return where && typed && { ...typed, ...where }
}

const CONNECTOR: Table<Omit<KeptConnector, 'kept'>> = {
  id: { read: id, or: newId },
  complaintId: { read: id, or: newId },
  order: { read: place, or: () => 0 },
  schemaVersion: { read: schema(CONNECTOR_SCHEMA), or: () => CONNECTOR_SCHEMA },
  // not "now": a connector without a time must not look newer than what was typed since
  updatedAt: { read: time, or: () => '1970-01-01T00:00:00.000Z' },
  turn: { read: turn, or: () => undefined },
  removedAt: { read: time, or: () => undefined },
  name: { read: text, or: () => '' },
  shape: { read: oneOf<KeptConnector['shape']>(['rectangular', 'ring']), or: () => 'ring' },
  contacts: { read: contacts, or: () => [] },
  shared: { read: dictionaryOf(among(SHARED_TEXTS), text), or: () => ({}) },
  texts: { read: dictionaryOf(among(CONNECTOR_TEXTS), text), or: () => ({}) },
  suppressors: {
    read: listOf(item({ id: required(id), contacts: required(contactIds) })),
    or: () => [],
  },
  adjacent: {
    read: listOf(item({ a: required(contactId), b: required(contactId), text: required(text) })),
    or: () => [],
  },
  rivals: { read: listOf(rival), or: () => undefined },
}

/** Every field a connector's record has, for the guard over the fixtures. */
export const CONNECTOR_FIELDS = [...Object.keys(CONNECTOR), 'kept'] as const

/** The gate for a connector. Never throws; restoring what was restored changes nothing. */
export function restoreConnector(raw: unknown, from: Provenance = 'stored'): KeptConnector {
  return readRecord(CONNECTOR, isRecord(raw) ? raw : { kept: [{ at: '', value: raw }] }, from)
}

/** A connector without contacts. */
export const newConnector = (name = ''): Connector => ({
  id: newId(),
  name,
  shape: 'ring',
  contacts: [],
  shared: {},
  texts: {},
  suppressors: [],
  adjacent: [],
})

/** A connector as it is stored for a complaint. */
export function keptConnector(connector: Connector, complaintId: string, order: number): KeptConnector {
  return {
    schemaVersion: CONNECTOR_SCHEMA,
    kept: [],
    ...connector,
    complaintId,
    order,
    updatedAt: new Date().toISOString(),
  }
}
