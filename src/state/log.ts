/**
 * The Log in memory: read once, changed at once, written behind.
 *
 * `complaints`         newest first, without deleted ones; undefined until `loadComplaints()` has read them
 * `loadComplaints()`   once at start
 * `find(id)`, `lineOf(id, lineId)`   a complaint of the list, or a line of one
 * `carryOut(step)`     shows a change at once, writes it behind, and tells the other windows when it is on disk
 * `show(step)`         shows what a step does to the list; whoever calls it writes it
 * `showAgain(complaint)`  puts back what an undo brings
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { assemble, type Complaint, recordOf } from '../store/complaint.ts'
import { getComplaint, getLine, newestFirst, readLog } from '../store/complaints.ts'
import type { ConnectorStep } from '../store/connector-edits.ts'
import { madeOn } from '../store/edits.ts'
import type { KeptLine } from '../store/line.ts'
import { applyStep, type Step, withoutUndone } from '../store/steps.ts'
import { StoreError, watchStore } from '../store/trouble.ts'
import { onNews, tell } from './other-windows.ts'
import { recover, save, settled, unwritten } from './save-queue.ts'

const list = signal<readonly Complaint[] | undefined>(undefined)
export const complaints: ReadonlySignal<readonly Complaint[] | undefined> = list

export const find = (id: string | undefined): Complaint | undefined =>
  id === undefined ? undefined : list.value?.find((complaint) => complaint.id === id)

/** A line of a complaint of the list. */
export const lineOf = (id: string, lineId: string): KeptLine | undefined =>
  find(id)?.lines.find((one) => one.id === lineId)

/** Long enough for the first screen to stand. */
const TIDY_AFTER_MS = 3000

let isTidy = false
/** True while the Log could not be read: it is read again as soon as the storage answers. */
let isUnread = false
/** Counts changes made here, so that a slow read never puts an older list over newer typing. */
let changesHere = 0

/** What is not on disk yet, carried out over what was read from it. */
function withUnwritten(log: readonly Complaint[]): readonly Complaint[] {
  const steps = unwritten()
  const standing = new Set(withoutUndone(steps.map(({ step }) => step)))
  const now = steps.reduce((all, { step, late }) => (standing.has(step) ? applyStep(all, step, late) : all), log)
  return now === log ? log : [...now].sort(newestFirst)
}

type LogStep = Exclude<Step, ConnectorStep | { readonly do: 'triage' | 'scratch' }>

/** The complaint a step changes, and the line of it if it is one line. */
function placeOf(step: LogStep): { readonly id: string; readonly lineId?: string | undefined } {
  if (step.do === 'put') return { id: step.complaint.id }
  if (step.do === 'addLine') return { id: step.line.complaintId, lineId: step.line.id }
  return 'lineId' in step ? step : { id: step.id }
}

/** Shows a change at once. */
export function show(step: Step): void {
  list.value = applyStep(list.value ?? [], step)
  changesHere++
}

/** Shows a change at once, writes it behind, and tells the other windows when it is on disk. */
export async function carryOut(change: LogStep, key = ''): Promise<void> {
  const { id, lineId } = placeOf(change)
  const step = 'at' in change ? madeOn(change, lineId === undefined ? find(id) : lineOf(id, lineId)) : change
  show(step)
  await save(step, key, () => {
    const complaint = find(id)
    return complaint && { do: 'put', complaint, lineId }
  })
  tell({ is: 'changed', id, lineId })
}

/** Once a start. Where its part cannot be fetched, the Log is shown as it is. */
async function tidy(): Promise<void> {
  const part = await import('../store/tidy.ts').catch(() => undefined)
  await part?.tidyLog(undefined, () => void loadComplaints())
  isTidy = true
}

/** What was deleted long ago is not shown: it may go once there is nothing better to do. */
function tidyLater(): void {
  if (isTidy) return
  isTidy = true
  setTimeout(() => tidy().catch(() => undefined), TIDY_AFTER_MS)
}

/** Reads the Log. Without storage it holds what is not written yet, and `storeNotice` says why. */
export async function loadComplaints(): Promise<void> {
  // What is still being written, or was left unwritten, would be missing from the list.
  void recover()
  await settled()
  const changesBefore = changesHere
  let stored: readonly Complaint[] = []
  try {
    const read = await readLog()
    stored = read.complaints
    // What has no id to be found by again is given one first.
    if (!isTidy && !read.isTidy) {
      await tidy()
      stored = (await readLog()).complaints
    }
    isUnread = false
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    isUnread = true
    list.value ??= withUnwritten([])
    return
  }
  if (changesHere !== changesBefore) return loadComplaints()
  list.value = withUnwritten(stored)
  tidyLater()
}

watchStore((trouble) => {
  if (trouble === undefined && isUnread) void loadComplaints()
})

/** Reads one complaint again, or one line of it. */
async function readAgain(id: string, lineId?: string): Promise<void> {
  const changesBefore = changesHere
  const old = find(id)
  const line = old === undefined || lineId === undefined ? undefined : await getLine(id, lineId)
  const stored =
    old !== undefined && line !== undefined
      ? assemble(recordOf(old), [...old.lines.filter((one) => one.id !== lineId), line])
      : await getComplaint(id)
  if (changesHere !== changesBefore) return readAgain(id, lineId)
  const others = (list.value ?? []).filter((complaint) => complaint.id !== id)
  const isThere = stored !== undefined && stored.deletedAt === undefined
  list.value = withUnwritten(isThere ? [stored, ...others].sort(newestFirst) : others)
}

onNews((news) => {
  if (news.is === 'log') void loadComplaints()
  if (news.is !== 'changed' || list.value === undefined) return
  readAgain(news.id, news.lineId).catch(() => {
    isUnread = true
  })
})

/** Puts back into the list what an undo brings; the step for it is carried out beside this. */
export function showAgain(complaint: Complaint): void {
  const others = (list.value ?? []).filter(({ id }) => id !== complaint.id)
  list.value = [complaint, ...others].sort(newestFirst)
}
