/** The Log on disk. Every function fails with a `StoreError` and nothing else. */
import { assemble, type Complaint, type ComplaintRecord, newComplaint, recordOf } from './complaint.ts'
import { type Desk, inOneGo, readAll, readOne } from './db.ts'
import { type ComplaintEdit, editComplaint, editLine, type LineEdit } from './edits.ts'
import { type KeptLine, keptLine, newLine, restoreKeptLine } from './line.ts'
import { restoreRecord } from './restore.ts'

/** A deletion can be undone for this long; it is made final at the first start after that. */
const UNDO_KEPT_MS = 24 * 3_600_000

export const newestFirst = (a: Complaint, b: Complaint): number =>
  b.updatedAt.localeCompare(a.updatedAt) || b.createdAt.localeCompare(a.createdAt) || a.id.localeCompare(b.id)

/** All complaints that are not deleted, the last changed one first. */
export async function listComplaints(): Promise<readonly Complaint[]> {
  const [records, rawLines] = await Promise.all([readAll('complaints'), readAll('lines')])
  const lines = new Map<string, KeptLine[]>()
  for (const line of rawLines.map((raw) => restoreKeptLine(raw))) {
    const others = lines.get(line.complaintId)
    if (others === undefined) lines.set(line.complaintId, [line])
    else others.push(line)
  }
  return records
    .map((raw) => restoreRecord(raw))
    .filter(({ deletedAt }) => deletedAt === undefined)
    .map((record) => assemble(record, lines.get(record.id) ?? []))
    .sort(newestFirst)
}

/** One complaint, deleted or not, or undefined when there is none with this id. */
export function getComplaint(id: string): Promise<Complaint | undefined> {
  return inOneGo(['complaints', 'lines'], async (desk) => {
    const [raw, lines] = await Promise.all([desk.get('complaints', id), desk.linesOf(id)])
    if (raw === undefined) return undefined
    return assemble(
      restoreRecord(raw),
      lines.map((line) => restoreKeptLine(line)),
    )
  })
}

/** One line of a complaint, taken out or not, or undefined when there is none with these ids. */
export async function getLine(complaintId: string, lineId: string): Promise<KeptLine | undefined> {
  const raw = await readOne('lines', [complaintId, lineId])
  return raw === undefined ? undefined : restoreKeptLine(raw)
}

/**
 * Writes a whole complaint unless it is there already: a late copy of it must never wipe what was written since. With
 * `lineId`, that line of it is written too if it is missing.
 */
export function addComplaint(complaint: Complaint, lineId?: string): Promise<void> {
  return inOneGo(['complaints', 'lines'], async (desk) => {
    if ((await desk.get('complaints', complaint.id)) === undefined) {
      await desk.put('complaints', recordOf(complaint))
      for (const line of complaint.lines) await addMissing(desk, line)
      return
    }
    const line = complaint.lines.find(({ id }) => id === lineId)
    if (line !== undefined) await addMissing(desk, line)
  })
}

async function addMissing(desk: Desk, line: KeptLine): Promise<void> {
  if ((await desk.get('lines', [line.complaintId, line.id])) === undefined) await desk.put('lines', line)
}

/** Writes a line of a complaint unless it is there already. */
export function addLine(line: KeptLine): Promise<void> {
  return inOneGo(['lines'], (desk) => addMissing(desk, line))
}

/** Changes a complaint's own record on top of what is stored now; false when there is none. */
export function changeComplaint(edit: ComplaintEdit, late = false): Promise<boolean> {
  return inOneGo(['complaints'], async (desk) => {
    const raw = await desk.get('complaints', edit.id)
    if (raw === undefined) return false
    await desk.put('complaints', { ...editComplaint(restoreRecord(raw), edit, late), id: edit.id })
    return true
  })
}

/** Changes one line on top of what is stored now, and nothing else; false when there is none. */
export function changeLine(edit: LineEdit, late = false): Promise<boolean> {
  return inOneGo(['lines'], async (desk) => {
    const raw = await desk.get('lines', [edit.id, edit.lineId])
    if (raw === undefined) return false
    await desk.put('lines', editLine(restoreKeptLine(raw), edit, late))
    return true
  })
}

/** Makes a complaint of a change that has outlived its own: what was typed is worth more than where it stood. */
export function salvage(edit: ComplaintEdit | LineEdit): Promise<void> {
  const fresh: Complaint = { ...newComplaint({ title: 'Recovered' }), id: edit.id }
  if (edit.do === 'change') return addComplaint({ ...fresh, ...editComplaint(recordOf(fresh), edit, false) })
  if (edit.do !== 'fact') return Promise.resolve()
  const line = keptLine({ ...newLine('recovered'), id: edit.lineId }, edit.id, 0)
  return addComplaint({ ...fresh, lines: [editLine(line, edit, false)] }, edit.lineId)
}

const isDue = (at: string | undefined, nowMs: number): boolean =>
  at !== undefined && nowMs - Date.parse(at) > UNDO_KEPT_MS

/**
 * Puts the Log in order, once at a start: removes for good what was deleted more than a day before `nowMs`, and gives
 * what stands under an id that cannot be used another one, on disk too. Returns how many records were removed.
 */
export function tidyLog(nowMs = Date.now()): Promise<number> {
  return inOneGo(['complaints', 'lines'], async (desk) => {
    let removed = 0
    const known = new Map<string, ComplaintRecord>()
    const renamed = new Map<unknown, string>()
    for (const [key, raw] of await desk.all('complaints')) {
      const record = restoreRecord(raw)
      if (isDue(record.deletedAt, nowMs)) {
        await desk.remove('complaints', key)
        if (typeof key === 'string') await desk.removeLinesOf(key)
        removed++
        continue
      }
      known.set(record.id, record)
      if (record.id === key) continue
      renamed.set(key, record.id)
      await desk.put('complaints', record)
      await desk.remove('complaints', key)
    }
    removed += await tidyLines(desk, known, renamed, nowMs)
    return removed
  })
}

async function tidyLines(
  desk: Desk,
  known: ReadonlyMap<string, ComplaintRecord>,
  renamed: ReadonlyMap<unknown, string>,
  nowMs: number,
): Promise<number> {
  let removed = 0
  const orphans = new Set<string>()
  for (const [key, raw] of await desk.all('lines')) {
    const [complaintKey, lineKey] = Array.isArray(key) ? key : []
    const read = restoreKeptLine(raw)
    const line = { ...read, complaintId: renamed.get(complaintKey) ?? read.complaintId }
    if (isDue(line.removedAt, nowMs)) {
      await desk.remove('lines', key)
      removed++
      continue
    }
    if (!known.has(line.complaintId)) orphans.add(line.complaintId)
    if (line.complaintId === complaintKey && line.id === lineKey) continue
    await desk.put('lines', line)
    await desk.remove('lines', key)
  }
  // A line whose complaint is not there any more is shown all the same.
  for (const id of orphans) {
    const { lines: _none, ...record } = newComplaint({ title: 'Recovered' })
    await desk.put('complaints', { ...record, id })
  }
  return removed
}
