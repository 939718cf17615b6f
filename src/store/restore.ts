/** The gate for complaints: whatever comes in, a valid complaint comes out, and what is not understood is kept aside. */

import type { Filled } from '../guide/fill-ins.ts'
import { eventsFrom } from '../guide/investigate/events.ts'
import type { Event } from '../guide/investigation.ts'
import type { Answers } from '../guide/types.ts'
import {
  COMPLAINT_SCHEMA,
  COMPLAINT_TEXTS,
  type ComplaintRecord,
  type ComplaintRival,
  PURPOSES,
  type SavedCheck,
} from './complaint.ts'
import {
  dictionaryOf,
  flag,
  id,
  item,
  listOf,
  oneOf,
  type Provenance,
  type Reader,
  readRecord,
  required,
  schema,
  type Table,
  text,
  time,
  turn,
  version,
} from './gate.ts'
import { isCheckId, newId } from './ids.ts'
import { isRecord } from './plain.ts'

const isNode = (key: string): key is string => key !== '__proto__'
const now = () => new Date().toISOString()

export const answersOf: Reader<Answers> = (value, at, gate) => {
  const read = dictionaryOf(isNode, text)(value, at, gate)
  return (
    read && Object.fromEntries(Object.entries(read).flatMap(([key, one]) => (one === undefined ? [] : [[key, one]])))
  )
}

const EVENT: Table<Event> = {
  at: required(time),
  evidence: required(text),
  option: required(text),
  reading: { read: text, or: () => undefined },
  note: { read: text, or: () => undefined },
  repeats: { read: oneOf<NonNullable<Event['repeats']>>(['agreed', 'differed', 'once']), or: () => undefined },
}

/** The history of a triage. */
export const eventsOf: Reader<readonly Event[]> = listOf(item(EVENT))

const rowOf = dictionaryOf(isNode, text)

/** Tables filled in; no key of them is undefined once it was read. */
export const tablesOf = dictionaryOf(isNode, listOf(rowOf)) as Reader<Filled>

/** The address of a check of this app: it becomes a link, and no other address may. */
export const checkAddress: Reader<string> = (value) => {
  const check = typeof value === 'string' ? /^#\/check\/([\w-]+)(?:\?|$)/.exec(value)?.[1] : undefined
  return typeof value === 'string' && isCheckId(check) ? value : undefined
}

const CHECK: Table<SavedCheck> = {
  check: required((value) => (isCheckId(value) ? value : undefined)),
  address: { read: checkAddress, or: () => undefined },
  lineId: { read: id, or: () => undefined },
  rules: { read: version, or: () => undefined },
  beside: { read: text, or: () => undefined },
}

const savedCheck: Reader<SavedCheck> = (value, at, gate) => {
  const read = item(CHECK)(value, at, gate)
  return read?.address === undefined && read?.lineId === undefined ? undefined : read
}

const RIVAL: Table<ComplaintRival> = {
  field: required(oneOf(COMPLAINT_TEXTS)),
  text: required(text),
  at: required(time),
}

const COMPLAINT: Table<Omit<ComplaintRecord, 'kept'>> = {
  id: { read: id, or: newId },
  schemaVersion: { read: schema(COMPLAINT_SCHEMA), or: () => COMPLAINT_SCHEMA },
  guideVersion: { read: version, or: () => 0 },
  title: { read: text, or: () => '' },
  aircraft: { read: text, or: () => undefined },
  note: { read: text, or: () => '' },
  createdAt: { read: time, or: now },
  updatedAt: { read: time, or: now },
  turn: { read: turn, or: () => undefined },
  deletedAt: { read: time, or: () => undefined },
  isDemo: { read: flag, or: () => false },
  purpose: { read: oneOf(PURPOSES), or: () => undefined },
  answers: { read: answersOf, or: () => ({}) },
  events: { read: eventsOf, or: () => undefined },
  checks: { read: listOf(savedCheck), or: () => [] },
  tables: { read: tablesOf, or: () => undefined },
  rivals: { read: listOf(item(RIVAL)), or: () => undefined },
}

/** Every field a complaint's record has, for the guard over the fixtures. */
export const COMPLAINT_FIELDS = [...(Object.keys(COMPLAINT) as (keyof ComplaintRecord)[]), 'kept'] as const

/** The version of a complaint's record that first kept its history. */
export const WITH_EVENTS = 3

/** Whether a raw record says it is older than a version; one that says nothing is the oldest. */
export const isBefore = (raw: unknown, version: number): boolean =>
  isRecord(raw) && (raw['schemaVersion'] === undefined || Number(raw['schemaVersion']) < version)

/** The gate for a complaint's own record. Never throws. */
export function restoreRecord(raw: unknown, from: Provenance = 'stored'): ComplaintRecord {
  const record = readRecord(COMPLAINT, isRecord(raw) ? raw : { kept: [{ at: '', value: raw }] }, from)
  if (!isBefore(raw, WITH_EVENTS) || record.events !== undefined) return record
  // Written before there were events: the answers were all there at the last change.
  return { ...record, events: eventsFrom(record.answers, record.updatedAt) }
}
