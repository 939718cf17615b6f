/** The Log on disk. Every function fails with a `StoreError` and nothing else. */
import { assemble, type Complaint, recordOf } from './complaint.ts'
import { type Desk, inOneGo, readAll, readKeys, readOne } from './db.ts'
import { type ComplaintEdit, editComplaint, editLine, type Late, type LineEdit } from './edits.ts'
import { type KeptLine, restoreKeptLine } from './line.ts'
import { identityOf, lineHeadOf, listed } from './listed.ts'
import { isRecord } from './plain.ts'
import { restoreRecord } from './restore.ts'

export const newestFirst = (a: Complaint, b: Complaint): number =>
  backwards(a.updatedAt, b.updatedAt) || backwards(a.createdAt, b.createdAt) || -backwards(a.id, b.id)

/** Times in UTC and ids sort by their signs. */
const backwards = (a: string, b: string): number => (a < b ? 1 : a > b ? -1 : 0)

/** All complaints that are not deleted, the last changed one first. */
export const listComplaints = async (): Promise<readonly Complaint[]> => (await readLog()).complaints

/** The same; `isTidy`: every record stands under an id of its own, so that the next reading finds it there again. */
export async function readLog(): Promise<{ readonly complaints: readonly Complaint[]; readonly isTidy: boolean }> {
  const [records, rawLines, connectors] = await Promise.all([
    readAll('complaints'),
    readAll('lines'),
    readKeys('connectors'),
  ])
  const lines = new Map<string, unknown[]>()
  for (const raw of rawLines) {
    const { complaintId } = lineHeadOf(raw) ?? restoreKeptLine(raw)
    const others = lines.get(complaintId)
    if (others === undefined) lines.set(complaintId, [raw])
    else others.push(raw)
  }
  const idOf = (raw: unknown): string => (isRecord(raw) ? String(raw['id']) : '')
  const complaints = records.flatMap((raw) => listed(raw, lines.get(idOf(raw)) ?? []) ?? []).sort(newestFirst)
  const known = new Set(records.map(idOf))
  const owners = [...lines.keys(), ...connectors.map((key) => (Array.isArray(key) ? String(key[0]) : ''))]
  const isTidy = records.every(identityOf) && rawLines.every(identityOf) && owners.every((id) => known.has(id))
  return { complaints, isTidy }
}

/** One complaint, deleted or not, or undefined when there is none with this id. */
export function getComplaint(id: string): Promise<Complaint | undefined> {
  return inOneGo(['complaints', 'lines'], async (desk) => {
    const [raw, lines] = await Promise.all([desk.get('complaints', id), desk.ownedBy('lines', id)])
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

/** Writes a line unless it is there already. */
export async function addMissing(desk: Desk, line: KeptLine): Promise<void> {
  if ((await desk.get('lines', [line.complaintId, line.id])) === undefined) await desk.put('lines', line)
}

/** Writes a line of a complaint unless it is there already. */
export function addLine(line: KeptLine): Promise<void> {
  return inOneGo(['lines'], (desk) => addMissing(desk, line))
}

/**
 * Changes a complaint's own record on top of what is stored now; false when there is none. `also` is done in the same go
 * among the small records; where it says no, nothing is to be changed any more.
 */
export function changeComplaint(
  edit: ComplaintEdit,
  late: Late = false,
  also?: (desk: Desk) => Promise<boolean>,
): Promise<boolean> {
  return inOneGo(also ? ['complaints', 'meta'] : ['complaints'], async (desk) => {
    const raw = await desk.get('complaints', edit.id)
    if (raw === undefined) return false
    if (also && !(await also(desk))) return true
    await desk.put('complaints', { ...editComplaint(restoreRecord(raw), edit, late), id: edit.id })
    return true
  })
}

/** Changes one line on top of what is stored now, and nothing else; false when there is none. */
export function changeLine(edit: LineEdit, late: Late = false): Promise<boolean> {
  return inOneGo(['lines'], (desk) => changeLineAt(desk, edit, late))
}

/** The same among other changes. */
export async function changeLineAt(desk: Desk, edit: LineEdit, late: Late): Promise<boolean> {
  const raw = await desk.get('lines', [edit.id, edit.lineId])
  if (raw === undefined) return false
  await desk.put('lines', editLine(restoreKeptLine(raw), edit, late))
  return true
}
