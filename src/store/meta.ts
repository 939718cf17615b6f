/** Small things the app remembers between starts: theme, current triage, scratch line, and what made room for them. */

import type { Filled } from '../guide/fill-ins.ts'
import { eventsFrom } from '../guide/investigate/events.ts'
import type { Event } from '../guide/investigation.ts'
import type { Answers } from '../guide/types.ts'
import { type Desk, inOneGo, readOne, writeOne } from './db.ts'
import { editFact, type FactEdit } from './edits.ts'
import { id, type Kept, readRecord, schema, type Table, time, version } from './gate.ts'
import { newId } from './ids.ts'
import { holdsAnything, type LooseLine, newLine, restoreLoose } from './line.ts'
import { isRecord, itemsOf } from './plain.ts'
import { answersOf, eventsOf, isBefore, tablesOf } from './restore.ts'

/** What the user chose; `auto` follows the system. */
export type ThemeChoice = 'auto' | 'day' | 'dark' | 'night' | 'glare'

/** Version of a triage's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const TRIAGE_SCHEMA = 3

/** The version of a triage that first kept its history. */
const WITH_EVENTS = 2

/** The triage under way: answers and typed facts, and the complaint it is saved in, if any. Its line's id is its own. */
export type TriageDraft = {
  readonly schemaVersion: number
  readonly updatedAt: string
  readonly answers: Answers
  /** the history behind the answers, oldest first */
  readonly events?: readonly Event[]
  /** tables filled in while it is kept in no complaint */
  readonly tables?: Filled
  readonly guideVersion: number
  readonly line: LooseLine
  readonly complaintId?: string
  readonly kept: readonly Kept[]
}

const TRIAGE: Table<Omit<TriageDraft, 'kept'>> = {
  schemaVersion: { read: schema(TRIAGE_SCHEMA), or: () => TRIAGE_SCHEMA },
  updatedAt: { read: time, or: () => '1970-01-01T00:00:00.000Z' },
  answers: { read: answersOf, or: () => ({}) },
  events: { read: eventsOf, or: () => undefined },
  tables: { read: tablesOf, or: () => undefined },
  guideVersion: { read: version, or: () => 0 },
  line: { read: (value, _at, { from }) => (isRecord(value) ? restoreLoose(value, from) : undefined), or: newLine },
  complaintId: { read: id, or: () => undefined },
}

/** Every field a triage's record has, for the guard over the fixtures. */
export const TRIAGE_FIELDS = [...Object.keys(TRIAGE), 'kept'] as const

/** How many are kept of what made room: enough for as many windows as anybody works with. */
const MOST_ASIDE = 8

const CHOICES = ['auto', 'day', 'dark', 'night', 'glare'] as const

/** Reads the theme; `auto` when none or an unknown one is stored. Fails with a `StoreError`. */
export async function readTheme(): Promise<ThemeChoice> {
  const raw = await readOne('meta', 'theme')
  return CHOICES.find((choice) => choice === raw) ?? 'auto'
}

/** Stores the theme. Fails with a `StoreError`. */
export function writeTheme(choice: ThemeChoice): Promise<void> {
  return writeOne('meta', 'theme', choice)
}

/** A triage without answers. */
export function emptyTriage(): TriageDraft {
  return {
    schemaVersion: TRIAGE_SCHEMA,
    updatedAt: new Date().toISOString(),
    answers: {},
    guideVersion: 0,
    line: newLine(),
    kept: [],
  }
}

/** True for a triage that stands nowhere else and holds an answer or anything typed. */
export function isUnkept({ complaintId, answers, tables, line }: TriageDraft): boolean {
  const isEmpty = Object.keys(answers).length === 0 && tables === undefined && !holdsAnything(line)
  return complaintId === undefined && !isEmpty
}

/** The gate for a triage; anything else becomes an empty one. Never throws. */
export function restoreTriage(raw: unknown): TriageDraft {
  const draft = readRecord(TRIAGE, isRecord(raw) ? raw : {}, 'stored')
  if (!isBefore(raw, WITH_EVENTS) || draft.events !== undefined) return draft
  return { ...draft, events: eventsFrom(draft.answers, draft.updatedAt) }
}

/** The triage left open at the last visit; an empty one when there is none. Fails with a `StoreError`. */
export async function readTriage(): Promise<TriageDraft> {
  const raw = await readOne('meta', 'triage')
  return raw === undefined ? emptyTriage() : restoreTriage(raw)
}

/** The scratch line of the quick checks; an empty one when there is none. Fails with a `StoreError`. */
export async function readScratch(): Promise<LooseLine> {
  const raw = await readOne('meta', 'scratch')
  return raw === undefined ? newLine() : restoreLoose(raw)
}

/** The triages that made room, the last one first. Fails with a `StoreError`. */
export async function readTriagesAside(): Promise<readonly TriageDraft[]> {
  return itemsOf(await readOne('meta', 'triagesAside')).map(restoreTriage)
}

/** The scratch lines that made room, the last one first. Fails with a `StoreError`. */
export async function readScratchesAside(): Promise<readonly LooseLine[]> {
  return itemsOf(await readOne('meta', 'scratchesAside')).map((raw) => restoreLoose(raw))
}

/** Puts `made` first among what made room, and takes out what came back. */
async function setAside<T>(
  desk: Desk,
  key: string,
  made: T | undefined,
  isBack: (raw: unknown) => boolean,
): Promise<void> {
  const before = itemsOf(await desk.get('meta', key))
  const after = [...(made === undefined ? [] : [made]), ...before.filter((raw) => !isBack(raw))].slice(0, MOST_ASIDE)
  if (made !== undefined || after.length !== before.length) await desk.put('meta', after, key)
}

/**
 * Stores a triage. `base` is the time of the one this window had read or written last: if another stands there by now
 * and is kept nowhere else, it is set aside. `late`: the triage was left behind by a window that has ended; it makes
 * room for a newer one. Fails with a `StoreError`.
 */
export function writeTriage(draft: TriageDraft, base?: string, late = false): Promise<void> {
  return inOneGo(['meta'], async (desk) => {
    const raw = await desk.get('meta', 'triage')
    const stored = raw === undefined ? undefined : restoreTriage(raw)
    const isOwn = stored?.line.id === draft.line.id
    const isRead =
      stored === undefined || (isOwn && (stored.updatedAt === base || stored.updatedAt === draft.updatedAt))
    const isNewer = late && !isRead && stored !== undefined && isUnkept(stored) && stored.updatedAt > draft.updatedAt
    const other = isNewer ? draft : isRead ? undefined : stored
    const isBack = (one: unknown) => !isNewer && restoreTriage(one).line.id === draft.line.id
    await setAside(desk, 'triagesAside', other && isUnkept(other) ? apart(other, isOwn) : undefined, isBack)
    if (!isNewer) await desk.put('meta', draft, 'triage')
  })
}

/** Two windows may have gone on with one triage: what is set aside then is another one. */
function apart(draft: TriageDraft, isSame: boolean): TriageDraft {
  return isSame ? { ...draft, line: { ...draft.line, id: newId() } } : draft
}

/** A scratch line as it is now, and the one fact of it that was changed, if it was one. */
export type ScratchEdit = { readonly line: LooseLine; readonly edit?: FactEdit | undefined; readonly at: string }

/**
 * Stores the scratch line: only the one fact onto the line that stands there, or the whole line; another line that
 * stood there is set aside. `late` as above. Fails with a `StoreError`.
 */
export function writeScratch({ line, edit, at }: ScratchEdit, late = false): Promise<void> {
  return inOneGo(['meta'], async (desk) => {
    const raw = await desk.get('meta', 'scratch')
    const stored = raw === undefined ? undefined : restoreLoose(raw)
    const isOwn = stored?.id === line.id
    if (isOwn && edit !== undefined) {
      await desk.put('meta', editFact(stored, edit, { at }, late), 'scratch')
      return
    }
    const isNewer = late && stored !== undefined && holdsAnything(stored) && stored.updatedAt > at
    const other = isNewer ? line : isOwn ? undefined : stored
    const isBack = (one: unknown) => !isNewer && restoreLoose(one).id === line.id
    await setAside(desk, 'scratchesAside', other && holdsAnything(other) ? other : undefined, isBack)
    if (!isNewer) await desk.put('meta', line, 'scratch')
  })
}
