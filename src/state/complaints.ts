/**
 * The Log.
 *
 * Signals
 *   `complaints`      newest first, without deleted ones; undefined until `loadComplaints()` has read them
 *   `opened`          the complaint opened by `openComplaint(id)`, or undefined
 *   `lastDeleted`     the complaint or line whose deletion can be undone with one tap, or undefined
 *   `keepsStorage`    whether the browser promised not to clear the storage; undefined until asked
 *   `saveState`, `storeNotice`, `retrySave()`   see save-queue.ts
 *
 * Doing (each shows at once and is written behind, in order; text never leaves the screen when storage fails)
 *   `loadComplaints()`                       once at start; also after another window changed the Log
 *   `openComplaint(id | undefined)`
 *   `createFromTriage({title, answers, guideVersion, line})`, `createFromCheck({title, check, line})`
 *   `rename(id, title)`, `writeNote(id, note)`, `change(id, patch)`
 *   `writeLineFact(id, lineId, fact, next)`  at every key; undefined takes the fact off
 *   `changeLine(id, lineId, patch)`, `addLine(id, line)`, `removeLine(id, lineId)`
 *   `addCheck(id, {check, address?, lineId?})`  each only once
 *   `remove(id)`, `undoRemove()` (of a complaint or a line), `forgetRemoved()`
 *   `addDemo()`
 *
 * Other windows of the app are told after every save and read the Log again; a window with unsaved changes keeps its own.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { CheckId, Fact, FactKey, Line } from '../calc/types.ts'
import type { Answers } from '../guide/types.ts'
import { type Complaint, type ComplaintPatch, newComplaint, type SavedCheck } from '../store/complaint.ts'
import { listComplaints, purgeDeleted } from '../store/complaints.ts'
import type { Step } from '../store/steps.ts'
import { StoreError } from '../store/trouble.ts'
import { recover, save, saveState, settled } from './save-queue.ts'

export type { Complaint, ComplaintPatch, SavedCheck }

/** The parts of a line that are changed as a whole; its facts are written one by one. */
export type LinePatch = Partial<Pick<Line, 'name' | 'gate' | 'trials'>>

/** What was deleted last: a complaint, or a line of one. */
export type Removed = { readonly id: string; readonly line?: Line; readonly name: string }

const list = signal<readonly Complaint[] | undefined>(undefined)
const openId = signal<string | undefined>(undefined)
const removed = signal<Removed | undefined>(undefined)
let removedComplaint: Complaint | undefined
const kept = signal<boolean | undefined>(undefined)

export const complaints: ReadonlySignal<readonly Complaint[] | undefined> = list
export const opened: ReadonlySignal<Complaint | undefined> = computed(() => find(openId.value))
export const lastDeleted: ReadonlySignal<Removed | undefined> = removed
export const keepsStorage: ReadonlySignal<boolean | undefined> = kept

const find = (id: string | undefined): Complaint | undefined =>
  id === undefined ? undefined : list.value?.find((complaint) => complaint.id === id)

let isPurged = false
/** Counts changes made here, so that a slow read never puts an older list over newer typing. */
let changesHere = 0

const otherWindows = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('stillpin-log')
otherWindows?.addEventListener('message', () => {
  if (list.value !== undefined) void loadComplaints()
})

/** Queues a write and tells the other windows when it is on disk. */
async function keep(step: Step, key?: string): Promise<void> {
  changesHere++
  await save(step, key)
  otherWindows?.postMessage('saved')
}

/** Reads the Log. Without storage it is empty and `storeNotice` says why. */
export async function loadComplaints(): Promise<void> {
  // What is still being written, or was left unwritten, would be missing from the list.
  void recover()
  await settled()
  if (saveState.value === 'failed' && list.value !== undefined) return
  const changesBefore = changesHere
  try {
    if (!isPurged) await purgeDeleted()
    isPurged = true
    const stored = await listComplaints()
    if (changesHere === changesBefore) list.value = stored
    else await loadComplaints()
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    list.value ??= []
  }
}

/** Opens a complaint, or none. */
export function openComplaint(id: string | undefined): void {
  openId.value = id
}

function add(complaint: Complaint): Complaint {
  list.value = [complaint, ...(list.value ?? [])]
  void keep({ do: 'put', complaint }).then(askToKeep)
  return complaint
}

/** Asked only once there is something to lose; the browser decides. */
async function askToKeep(): Promise<void> {
  if (kept.value !== undefined || typeof navigator === 'undefined' || !navigator.storage?.persist) return
  kept.value = await navigator.storage.persist().catch(() => false)
}

/** A new complaint from the triage under way. */
export function createFromTriage(parts: {
  readonly title: string
  readonly answers: Answers
  readonly guideVersion: number
  readonly line: Line
}): Complaint {
  const { title, answers, guideVersion, line } = parts
  return add(newComplaint({ title, answers, guideVersion, lines: [line] }))
}

/** A new complaint from a quick check. */
export function createFromCheck(parts: {
  readonly title: string
  readonly check: CheckId
  readonly line: Line
}): Complaint {
  const { title, check, line } = parts
  return add(newComplaint({ title, lines: [line], checks: [{ check, lineId: line.id }] }))
}

/** Changes parts of a complaint; the list shows it at once, moved to the front. */
export function change(id: string, patch: ComplaintPatch): void {
  const old = find(id)
  if (old === undefined) return
  const updatedAt = new Date().toISOString()
  const changed = { ...old, ...patch, updatedAt }
  list.value = [changed, ...(list.value ?? []).filter((complaint) => complaint.id !== id)]
  void keep({ do: 'change', id, patch, at: updatedAt }, `${id}:${Object.keys(patch).sort().join()}`)
}

/** Gives a complaint another title. */
export function rename(id: string, title: string): void {
  change(id, { title })
}

/** Replaces the note of a complaint; called at every keystroke. */
export function writeNote(id: string, note: string): void {
  change(id, { note })
}

/** Keeps a check with a complaint; the same one only once. */
export function addCheck(id: string, saved: SavedCheck): void {
  const old = find(id)
  const isSame = (one: SavedCheck) =>
    one.check === saved.check && one.address === saved.address && one.lineId === saved.lineId
  if (old === undefined || old.checks.some(isSame)) return
  change(id, { checks: [...old.checks, saved] })
}

function editLine(id: string, lineId: string, edit: (line: Line) => Line): void {
  const old = find(id)
  if (old === undefined) return
  change(id, { lines: old.lines.map((line) => (line.id === lineId ? edit(line) : line)) })
}

/** Writes one fact of a line, at every key; undefined takes it off. */
export function writeLineFact(id: string, lineId: string, fact: FactKey, next: Fact | undefined): void {
  editLine(id, lineId, (line) => {
    const { [fact]: _old, ...others } = line.facts
    return { ...line, facts: next === undefined ? others : { ...others, [fact]: next } }
  })
}

/** Changes the name, gate or trials of a line. */
export function changeLine(id: string, lineId: string, patch: LinePatch): void {
  editLine(id, lineId, (line) => ({ ...line, ...patch }))
}

/** Puts a line at the end of a complaint. */
export function addLine(id: string, line: Line): void {
  const old = find(id)
  if (old !== undefined) change(id, { lines: [...old.lines, line] })
}

/** Takes a line out of a complaint; `undoRemove` brings it back. */
export function removeLine(id: string, lineId: string): void {
  const old = find(id)
  const line = old?.lines.find((one) => one.id === lineId)
  if (old === undefined || line === undefined) return
  change(id, { lines: old.lines.filter((one) => one.id !== lineId) })
  removed.value = { id, line, name: line.name || 'line without a name' }
}

/** Deletes a complaint; `undoRemove` brings it back. */
export function remove(id: string): void {
  const old = find(id)
  if (old === undefined) return
  list.value = (list.value ?? []).filter((complaint) => complaint.id !== id)
  removedComplaint = old
  removed.value = { id, name: old.title || 'untitled complaint' }
  void keep({ do: 'delete', id, at: new Date().toISOString() })
}

/** Brings back what was deleted last. */
export function undoRemove(): void {
  const last = removed.value
  if (last === undefined) return
  removed.value = undefined
  if (last.line !== undefined) addLine(last.id, last.line)
  if (last.line !== undefined || removedComplaint === undefined) return
  list.value = [removedComplaint, ...(list.value ?? [])].sort((a, b) => b.updatedAt.localeCompare(a.updatedAt))
  void keep({ do: 'undelete', id: last.id, at: new Date().toISOString() })
}

/** Puts the undo offer away; the complaint itself goes at a later start. */
export function forgetRemoved(): void {
  removed.value = undefined
}

/** Puts the invented example into the Log, once. */
export async function addDemo(): Promise<Complaint> {
  const present = list.value?.find((complaint) => complaint.isDemo)
  if (present !== undefined) return present
  const { demoComplaint } = await import('../store/demo.ts')
  return add(demoComplaint())
}
