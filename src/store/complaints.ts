/** The Log on disk. Every function fails with a `StoreError` and nothing else. */
import type { Complaint, ComplaintPatch } from './complaint.ts'
import { changeOne, readAll, readOne, removeMany, writeOne } from './db.ts'
import { restoreComplaint } from './restore.ts'

/** A deletion can be undone for this long; it is made final at the first start after that. */
const UNDO_KEPT_MS = 24 * 3_600_000

const newestFirst = (a: Complaint, b: Complaint): number =>
  b.updatedAt.localeCompare(a.updatedAt) || b.createdAt.localeCompare(a.createdAt) || a.id.localeCompare(b.id)

async function allComplaints(): Promise<readonly Complaint[]> {
  return (await readAll('complaints')).map((raw) => restoreComplaint(raw, 'stored'))
}

/** All complaints that are not deleted, the last changed one first. */
export async function listComplaints(): Promise<readonly Complaint[]> {
  const all = await allComplaints()
  return all.filter((complaint) => complaint.deletedAt === undefined).sort(newestFirst)
}

/** One complaint, deleted or not, or undefined when there is none with this id. */
export async function getComplaint(id: string): Promise<Complaint | undefined> {
  const raw = await readOne('complaints', id)
  return raw === undefined ? undefined : restoreComplaint(raw, 'stored')
}

/** Writes a whole complaint, new or not. */
export function putComplaint(complaint: Complaint): Promise<void> {
  return writeOne('complaints', complaint.id, complaint)
}

/** Writes a whole complaint unless one with its id is there already, in one transaction. */
export function addComplaint(complaint: Complaint): Promise<void> {
  return changeOne('complaints', complaint.id, (raw) => (raw === undefined ? complaint : undefined))
}

/** Changes only the parts given, on top of what is stored now; `atTime` is the new time of change. */
export function changeComplaint(id: string, patch: ComplaintPatch, atTime = new Date().toISOString()): Promise<void> {
  return changeStored(id, (old) => ({ ...old, ...patch, updatedAt: atTime }))
}

/** Marks a complaint as deleted; `undeleteComplaint` brings it back until a start a day later. */
export function deleteComplaint(id: string, atTime = new Date().toISOString()): Promise<void> {
  return changeStored(id, (old) => ({ ...old, deletedAt: atTime }))
}

/** Takes a deletion back. */
export function undeleteComplaint(id: string): Promise<void> {
  return changeStored(id, ({ deletedAt: _gone, ...rest }) => rest)
}

/** Removes for good what was deleted more than a day before `nowMs`. Returns how many. */
export async function purgeDeleted(nowMs = Date.now()): Promise<number> {
  const all = await allComplaints()
  const due = all.filter(({ deletedAt }) => deletedAt !== undefined && nowMs - Date.parse(deletedAt) > UNDO_KEPT_MS)
  if (due.length > 0)
    await removeMany(
      'complaints',
      due.map(({ id }) => id),
    )
  return due.length
}

function changeStored(id: string, change: (old: Complaint) => Complaint): Promise<void> {
  return changeOne('complaints', id, (raw) => (raw === undefined ? undefined : change(restoreComplaint(raw, 'stored'))))
}
