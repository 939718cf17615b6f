/** What is done to the whole Log, seldom: fetched when it is done. Every function fails with a `StoreError` and nothing else. */
import { type Complaint, recordOf } from './complaint.ts'
import { addComplaint } from './complaints.ts'
import { restoreConnector } from './connector.ts'
import { type Desk, inOneGo } from './db.ts'
import { type ComplaintEdit, editComplaint, editLine, type LineEdit } from './edits.ts'
import { ownersTaken, TAKEN } from './exchange/taken.ts'
import { keptLine, newLine, restoreKeptLine, restoreLoose } from './line.ts'
import { identityOf } from './listed.ts'
import { restoreTriage } from './meta.ts'
import { newComplaint } from './new-complaint.ts'
import { restorePhoto } from './photos.ts'
import { itemsOf } from './plain.ts'
import { restoreRecord } from './restore.ts'
import { restoreTrace } from './traces.ts'

/** A deletion is kept for this long at least; it is made final at a start after that. */
const UNDO_KEPT_MS = 24 * 3_600_000

/** Under this key: what the clock said at the last starts before this one, in milliseconds. */
const CLOCKS = 'clocks'
/** So many earlier starts must have found a day gone by: one wrong clock makes nothing final. */
const CLOCKS_ASKED = 2
/** Starts closer together than this are one: a wrong clock may not yet have been noticed. */
const APART_MS = 3_600_000

/** Makes a complaint of a change that has outlived its own: what was typed is worth more than where it stood. */
export function salvage(edit: ComplaintEdit | LineEdit): Promise<void> {
  const fresh: Complaint = { ...newComplaint({ title: 'Recovered' }), id: edit.id }
  if (edit.do === 'change' || edit.do === 'cell')
    return addComplaint({ ...fresh, ...editComplaint(recordOf(fresh), edit, false) })
  if (edit.do !== 'fact') return Promise.resolve()
  const line = keptLine({ ...newLine('recovered'), id: edit.lineId }, edit.id, 0)
  return addComplaint({ ...fresh, lines: [editLine(line, edit, false)] }, edit.lineId)
}

/** Stores whose records go with their complaint. */
const OWNED = ['lines', 'connectors'] as const

type Tidying = {
  readonly known: ReadonlySet<string>
  /** complaints that were given another id, by the key they stood under */
  readonly renamed: ReadonlyMap<unknown, string>
  /** complaints that are not there, of which something is */
  readonly orphans: Set<string>
  readonly nowMs: number
}

const isDue = (at: string | undefined, nowMs: number): boolean =>
  at !== undefined && nowMs - Date.parse(at) > UNDO_KEPT_MS

/**
 * The time that the clock and the last starts agree has been reached: the earliest of what they said. A clock that has
 * jumped ahead is believed only once later starts found it there too; before there were enough starts, no time at all.
 */
async function agreedMs(desk: Desk, nowMs: number): Promise<number> {
  const before = itemsOf(await desk.get('meta', CLOCKS)).filter((one) => typeof one === 'number')
  const last = before.at(-1)
  if (last === undefined || Math.abs(nowMs - last) >= APART_MS)
    await desk.put('meta', [...before, nowMs].slice(-CLOCKS_ASKED), CLOCKS)
  return before.length < CLOCKS_ASKED ? Number.NEGATIVE_INFINITY : Math.min(nowMs, ...before)
}

/**
 * Puts the Log in order, once at a start: removes for good what was deleted more than a day ago, as far as `clockMs` and
 * the clock of the last starts agree, and gives
 * what stands under an id that cannot be used another one, on disk too. Returns how many records were removed;
 * `onChange`: something that is shown was changed.
 */
export async function tidyLog(clockMs = Date.now(), onChange: () => void = () => undefined): Promise<number> {
  let isChanged = false
  const count = await inOneGo(['complaints', ...OWNED, 'photos', 'traces', 'meta'], async (desk) => {
    let removed = 0
    const nowMs = await agreedMs(desk, clockMs)
    const known = new Set<string>()
    const renamed = new Map<unknown, string>()
    for (const [key, raw] of await desk.all('complaints')) {
      const quick = identityOf(raw)
      const record = quick === undefined ? restoreRecord(raw) : undefined
      const id = record?.id ?? quick?.id ?? ''
      if (isDue(record?.deletedAt ?? quick?.goneAt, nowMs)) {
        await desk.remove('complaints', key)
        if (typeof key === 'string') for (const store of OWNED) await desk.removeOwned(store, key)
        removed++
        continue
      }
      known.add(id)
      if (id === key) continue
      renamed.set(key, id)
      await desk.put('complaints', record ?? restoreRecord(raw))
      await desk.remove('complaints', key)
    }
    const tidying = { known, renamed, orphans: new Set<string>(), nowMs }
    removed += await tidyOwned(desk, 'lines', restoreKeptLine, tidying)
    removed += await tidyOwned(desk, 'connectors', restoreConnector, tidying)
    // What belongs to a complaint that is not there any more is shown all the same.
    for (const id of tidying.orphans) {
      const { lines: _none, ...record } = newComplaint({ title: 'Recovered' })
      await desk.put('complaints', { ...record, id })
    }
    await tidyBeside(desk, nowMs)
    isChanged = renamed.size + tidying.orphans.size > 0
    return removed
  })
  if (isChanged) onChange()
  return count
}

type OwnedRecord = { readonly id: string; readonly complaintId: string; readonly removedAt?: string }

/** Lines or connectors: those removed long ago go; the others follow a complaint that was given another id. */
async function tidyOwned(
  desk: Desk,
  store: 'lines' | 'connectors',
  restore: (raw: unknown) => OwnedRecord,
  { known, renamed, orphans, nowMs }: Tidying,
): Promise<number> {
  let removed = 0
  for (const [key, raw] of await desk.all(store)) {
    const [complaintKey, ownKey] = Array.isArray(key) ? key : []
    const quick = identityOf(raw)
    // Most stand where they belong: nothing of them need be read.
    const isHome = quick?.goneAt === undefined && quick?.complaintId === complaintKey && quick?.id === ownKey
    if (isHome && typeof complaintKey === 'string' && known.has(complaintKey)) continue
    const read = restore(raw)
    const record = { ...read, complaintId: renamed.get(complaintKey) ?? read.complaintId }
    if (isDue(record.removedAt, nowMs)) {
      await desk.remove(store, key)
      removed++
      continue
    }
    if (!known.has(record.complaintId)) orphans.add(record.complaintId)
    if (record.complaintId === complaintKey && record.id === ownKey) continue
    await desk.put(store, record)
    await desk.remove(store, key)
  }
  return removed
}

/** Ids that photos and traces may belong to: complaints, their lines, the lines under way or set aside, and what a file took the place of. */
async function ownersOf(desk: Desk): Promise<ReadonlySet<unknown>> {
  const [complaints, lines, triage, triagesAside, scratch, scratchesAside, taken] = await Promise.all([
    desk.keys('complaints'),
    desk.keys('lines'),
    desk.get('meta', 'triage'),
    desk.get('meta', 'triagesAside'),
    desk.get('meta', 'scratch'),
    desk.get('meta', 'scratchesAside'),
    desk.get('meta', TAKEN),
  ])
  const triages = [triage, ...itemsOf(triagesAside)].map((raw) => restoreTriage(raw).line.id)
  const loose = [scratch, ...itemsOf(scratchesAside)].map((raw) => restoreLoose(raw).id)
  const kept = lines.map((key) => (Array.isArray(key) ? key[1] : key))
  return new Set([...complaints, ...kept, ...triages, ...loose, ...ownersTaken(taken)])
}

/** Stores that stand beside a complaint or a line, and when a record of them was made. */
const BESIDE = { photos: restorePhoto, traces: restoreTrace } as const

/** What has lost its owner goes with it, a day after it was made: another window may not have written its owner yet. */
async function tidyBeside(desk: Desk, nowMs: number): Promise<void> {
  let owners: ReadonlySet<unknown> | undefined
  for (const store of ['photos', 'traces'] as const)
    for (const key of await desk.keys(store)) {
      owners ??= await ownersOf(desk)
      const [owner, id] = Array.isArray(key) ? key : []
      if (owners.has(owner) || typeof owner !== 'string' || typeof id !== 'string') continue
      if (isDue(BESIDE[store](await desk.get(store, [owner, id]))?.takenAt, nowMs)) await desk.remove(store, key)
    }
}
