/**
 * What a file of complaints holds, as a JSON Schema: published with the app, and what a file is checked against before it
 * goes through the gate. Names this version does not know are allowed everywhere: a newer app may have written them.
 */

import { MOST_CONTACTS } from '../../calc/connector/contact-ids.ts'
import { CONNECTOR_TEXTS, CONTACT_TEXTS, CONTACT_TYPES } from '../../calc/connector/types.ts'
import { COMPLAINT_TEXTS, PURPOSES } from '../complaint.ts'
import { SHARED_TEXTS } from '../connector.ts'
import { PHOTO_TYPES } from '../photos.ts'
import { TRACE_KINDS, TRACE_ROLES } from '../traces.ts'

/** Name and version in the head of every file. Raise the version where an older app could not read a file any more. */
export const FORMAT = 'stillpin-complaints'
export const FORMAT_VERSION = 1

/** The part of JSON Schema that is used here. */
export type Schema = {
  readonly $schema?: string
  readonly title?: string
  readonly description?: string
  readonly type?: 'object' | 'array' | 'string' | 'number' | 'integer' | 'boolean'
  readonly const?: string | number
  readonly enum?: readonly string[]
  readonly pattern?: string
  readonly minimum?: number
  readonly maxItems?: number
  readonly items?: Schema
  readonly properties?: Readonly<Record<string, Schema>>
  readonly additionalProperties?: Schema
  readonly required?: readonly string[]
  readonly anyOf?: readonly Schema[]
}

const text: Schema = { type: 'string' }
const flag: Schema = { type: 'boolean' }
const id: Schema = { type: 'string', pattern: '^[\\w-]{1,64}$', description: 'letters, digits, _ and -, 64 at most' }
const time: Schema = {
  type: 'string',
  pattern: '^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d',
  description: 'a time as 2026-11-26T08:30:00.000Z',
}
const version: Schema = { type: 'integer', minimum: 0, description: 'a whole number from 0' }
const contactName: Schema = {
  type: 'string',
  pattern: '^\\S(?:[\\s\\S]{0,38}\\S)?$',
  description: 'the name of a contact, 40 signs at most, no blank before or behind it',
}

const oneOf = (words: readonly string[]): Schema => ({ type: 'string', enum: words })
const listOf = (items: Schema): Schema => ({ type: 'array', items })
const dictionaryOf = (additionalProperties: Schema): Schema => ({ type: 'object', additionalProperties })
const record = (properties: Readonly<Record<string, Schema>>, required: readonly string[] = []): Schema => ({
  type: 'object',
  properties,
  ...(required.length > 0 && { required }),
})
const texts = (names: readonly string[]): Schema => record(Object.fromEntries(names.map((name) => [name, text])))

const kept: Schema = {
  type: 'array',
  maxItems: 1000,
  items: record({ at: text }, ['at', 'value']),
  description: 'what an earlier version did not understand, where it stood',
}

/** Where a text came from. */
const origin: Schema = {
  anyOf: [
    record({ by: { const: 'user' } }, ['by']),
    record({ by: { const: 'kind' }, source: { type: 'string', pattern: '^[A-Za-z][\\w-]{0,39}$' } }, ['by', 'source']),
    record({ by: { const: 'answer' }, node: text }, ['by', 'node']),
    record({ by: { const: 'trial' }, id: text }, ['by', 'id']),
    record({ by: { const: 'check' }, check: text }, ['by', 'check']),
    record({ by: { const: 'assumed' }, why: text, favourable: flag }, ['by', 'why', 'favourable']),
  ],
}

/** The columns of a progressive trial, as typed. */
const TRIAL_TEXTS = ['steps', 'places', 'noise', 'signal', 'repeats', 'times', 'removed'] as const

const rivalOf = (more: Readonly<Record<string, Schema>>, required: readonly string[]): Schema =>
  listOf(record({ ...more, text, at: time }, [...required, 'text', 'at']))

const line: Schema = {
  ...record(
    {
      id,
      schemaVersion: version,
      updatedAt: time,
      name: text,
      trials: listOf(
        record({ id: text, at: time, ...Object.fromEntries(TRIAL_TEXTS.map((name) => [name, text])) }, ['id', 'steps']),
      ),
      facts: dictionaryOf(record({ text, origin }, ['text', 'origin'])),
      rivals: rivalOf({ fact: text }, ['fact']),
      order: { type: 'number' },
      kept,
    },
    ['id'],
  ),
  description: 'one circuit: what was typed about it. Whether parts may be tried is asked anew on every device.',
}

const contact: Schema = record(
  { id: contactName, type: oneOf(CONTACT_TYPES), lineId: id, leg: oneOf(['a', 'b']), texts: texts(CONTACT_TEXTS) },
  ['id', 'type'],
)

const connector: Schema = record(
  {
    id,
    order: { type: 'number' },
    schemaVersion: version,
    updatedAt: time,
    name: text,
    shape: oneOf(['rectangular', 'ring']),
    contacts: { ...listOf(contact), maxItems: MOST_CONTACTS },
    shared: texts(SHARED_TEXTS),
    texts: texts(CONNECTOR_TEXTS),
    suppressors: listOf(record({ id, contacts: listOf(contactName) }, ['id', 'contacts'])),
    adjacent: listOf(record({ a: contactName, b: contactName, text }, ['a', 'b', 'text'])),
    rivals: rivalOf({ contact: text, field: text }, ['field']),
    kept,
  },
  ['id'],
)

const complaint: Schema = record(
  {
    id,
    schemaVersion: version,
    guideVersion: version,
    title: text,
    aircraft: text,
    note: text,
    createdAt: time,
    updatedAt: time,
    isDemo: flag,
    purpose: oneOf(PURPOSES),
    answers: dictionaryOf(text),
    events: listOf(
      record(
        {
          at: time,
          evidence: text,
          option: text,
          reading: text,
          note: text,
          repeats: oneOf(['agreed', 'differed', 'once']),
        },
        ['at', 'evidence', 'option'],
      ),
    ),
    checks: listOf(record({ check: text, address: text, lineId: id, rules: version, beside: text }, ['check'])),
    tables: dictionaryOf(listOf(dictionaryOf(text))),
    rivals: rivalOf({ field: oneOf(COMPLAINT_TEXTS) }, ['field']),
    lines: listOf(line),
    connectors: listOf(connector),
    kept,
  },
  ['id'],
)

/** One complaint of a file, for the check of its fields. */
export const COMPLAINT_IN_FILE = complaint

const bytes: Schema = { type: 'string', description: 'bytes in base 64' }
const beside = { owner: id, id, schemaVersion: version, takenAt: time }

/** A photo of a file. */
export const PHOTO_IN_FILE: Schema = record(
  {
    is: { const: 'photo' },
    ...beside,
    evidence: text,
    type: oneOf(PHOTO_TYPES),
    widthPx: { type: 'number', minimum: 1 },
    heightPx: { type: 'number', minimum: 1 },
    bytes,
  },
  ['is', 'owner', 'id', 'bytes'],
)

/** A measured file of a file. */
export const TRACE_IN_FILE: Schema = record(
  {
    is: { const: 'trace' },
    ...beside,
    kind: oneOf(TRACE_KINDS),
    role: oneOf(TRACE_ROLES),
    name: text,
    unit: text,
    rows: { type: 'number', minimum: 1 },
    bytes,
  },
  ['is', 'owner', 'id', 'bytes'],
)

/** The whole file. */
export const FILE_SCHEMA: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: `Complaints and designs of Stillpin, version ${FORMAT_VERSION}`,
  description:
    'What was answered and typed, never what was computed from it. The answers to the safety questions are not in it: they are asked anew on every device. Photos and measured files stand behind the complaints, each on a line of its own.',
  ...record(
    {
      format: { const: FORMAT },
      version: { const: FORMAT_VERSION },
      complaints: listOf(complaint),
      attached: listOf({ anyOf: [PHOTO_IN_FILE, TRACE_IN_FILE] }),
    },
    ['format', 'version', 'complaints'],
  ),
}
