/**
 * What is under way: the triage and the scratch line of the quick checks. Saved at every step, resumed after a kill.
 *
 * `triage`                 {answers, guideVersion, line, complaintId?}
 * `scratch`                the Line the quick checks work on
 * `resumeSession()`        once at start, before the first screen
 * `setAnswers(answers, guideVersion, event)`, `setTriageLine(line)`
 * `attachComplaint(id)`    from now on every step is also saved into that complaint
 * `resumeComplaint(complaint)`  goes on with a saved complaint
 * `restartTriage()`        a fresh triage; the complaint it was saved in stays in the Log
 * `triageBefore`, `undoTriage()`    the unkept triage that made room, and the way back to it
 * `writeScratchFact(fact, next, base?)`    at every key; undefined takes the fact off; `base`: what the field showed before
 * `takeScratchText(fact, text, left)`      one of several texts is taken, the others (`left`) go
 * `openScratch(line)`, `restartScratch()`   another scratch line
 * `scratchBefore`, `undoScratch()`  the scratch line that made room, and the way back to it
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Fact, FactKey, Line } from '../calc/types.ts'
import type { Filled } from '../guide/fill-ins.ts'
import type { Event } from '../guide/investigation.ts'
import type { Answers } from '../guide/types.ts'
import type { Complaint } from '../store/complaint.ts'
import { editFact, type FactEdit, settleFact } from '../store/edits.ts'
import { holdsAnything, type LooseLine, looseLine, newLine } from '../store/line.ts'
import {
  emptyTriage,
  isUnkept,
  readScratch,
  readScratchesAside,
  readTriage,
  readTriagesAside,
  type TriageDraft,
} from '../store/meta.ts'
import { StoreError, watchStore } from '../store/trouble.ts'
import { addLine, change, complaints, writeLine } from './complaints.ts'
import { onNews, tell } from './other-windows.ts'
import { recover, save, settled, unwritten } from './save-queue.ts'

export type { TriageDraft }

const current = signal<TriageDraft>(emptyTriage())
const scratchLine = signal<LooseLine>(newLine())
const triageAside = signal<TriageDraft | undefined>(undefined)
const scratchAside = signal<LooseLine | undefined>(undefined)
export const triage: ReadonlySignal<TriageDraft> = current
export const scratch: ReadonlySignal<Line> = scratchLine
export const triageBefore: ReadonlySignal<TriageDraft | undefined> = triageAside
export const scratchBefore: ReadonlySignal<Line | undefined> = scratchAside

/** True while what was under way could not be read: it is read again as soon as the storage answers. */
let isUnread = false
/** What this window wrote last into a fact of the scratch line, where no field says what it showed. */
const writtenHere = new Map<FactKey, string>()
const now = (): string => new Date().toISOString()

/** Reads back what was under way. Without storage both start as they were left unwritten, or empty. */
export async function resumeSession(): Promise<void> {
  const [draftBefore, lineBefore] = [current.value, scratchLine.value]
  void recover()
  await settled()
  let [draft, line] = [draftBefore, lineBefore]
  try {
    ;[draft, line] = await Promise.all([readTriage(), readScratch()])
    isUnread = false
    await Promise.all([showTriageAside(draft.line.id), showScratchAside(line.id)])
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    isUnread = true
  }
  for (const { step } of unwritten()) {
    if (step.do === 'triage') draft = step.draft
    if (step.do === 'scratch') line = step.line
  }
  // An address or a quick thumb may have been faster than the storage: what was done since then stays.
  if (current.value === draftBefore) current.value = draft
  if (scratchLine.value === lineBefore) scratchLine.value = line
}

watchStore((trouble) => {
  if (trouble === undefined && isUnread) void resumeSession()
})

async function showTriageAside(presentId: string): Promise<void> {
  const aside = (await readTriagesAside()).find((one) => one.line.id !== presentId)
  if (current.value.line.id === presentId || triageAside.value === undefined) triageAside.value = aside
}

async function showScratchAside(presentId: string): Promise<void> {
  const aside = (await readScratchesAside()).find((one) => one.id !== presentId)
  if (scratchLine.value.id === presentId || scratchAside.value === undefined) scratchAside.value = aside
}

/** Another window went on with what this one shows, and nothing is typed here: this one follows. */
async function follow(what: 'triage' | 'scratch'): Promise<void> {
  const [draftBefore, lineBefore] = [current.value, scratchLine.value]
  if (unwritten().some(({ step }) => step.do === what)) return
  if (what === 'triage') {
    const draft = await readTriage()
    const isSame = draft.line.id === draftBefore.line.id && draft.updatedAt > draftBefore.updatedAt
    if (isSame && current.value === draftBefore) current.value = draft
    return showTriageAside(draftBefore.line.id)
  }
  const line = await readScratch()
  if (line.id === lineBefore.id && scratchLine.value === lineBefore) scratchLine.value = line
  return showScratchAside(lineBefore.id)
}

onNews((news) => {
  if (news.is !== 'triage' && news.is !== 'scratch') return
  follow(news.is).catch(() => {
    isUnread = true
  })
})

/** Writes the triage; what made room for it in the storage, also from another window, is then on offer. */
async function writeTriage(draft: TriageDraft, base: string): Promise<void> {
  await save({ do: 'triage', draft, base }, 'triage')
  tell({ is: 'triage' })
  await showTriageAside(draft.line.id).catch(() => undefined)
}

function setTriage(draft: TriageDraft): void {
  const base = current.value.updatedAt
  current.value = { ...draft, updatedAt: now() }
  void writeTriage(current.value, base)
}

/** Replaces the answers; the whole record, since changing an early answer may drop later ones. */
export function setAnswers(answers: Answers, guideVersion: number, event?: Event): void {
  const before = current.value.events
  const events = event === undefined ? before : [...(before ?? []), event]
  const changed = { answers, guideVersion, ...(events && { events }) }
  const draft = { ...current.value, ...changed }
  setTriage(draft)
  if (draft.complaintId !== undefined) change(draft.complaintId, changed)
}

/** Replaces the line of the triage (facts typed, gate answered); of a kept line, only what is new is written. */
export function setTriageLine(line: Line): void {
  const draft = { ...current.value, line: looseLine(line) }
  setTriage(draft)
  const { complaintId } = draft
  const complaint = complaints.value?.find(({ id }) => id === complaintId)
  if (complaint === undefined) return
  if (complaint.lines.some(({ id }) => id === line.id)) writeLine(complaint.id, line)
  else addLine(complaint.id, line)
}

/** Saves every further step into this complaint too. */
export function attachComplaint(complaintId: string): void {
  const { tables: _kept, ...draft } = current.value
  setTriage({ ...draft, complaintId })
  // Photos taken before go along; where that fails they are still found by the line they were taken for.
  const moved = import('../store/photos.ts').then(({ movePhotos }) => movePhotos(draft.line.id, complaintId))
  moved.catch(() => undefined)
}

/** Replaces the tables filled in so far; only while the triage is kept in no complaint. */
export function setTriageTables(tables: Filled): void {
  setTriage({ ...current.value, tables })
}

/** Whose the photos of this triage are: its complaint, and the line it was begun on. */
export function photoOwners(): readonly string[] {
  const { complaintId, line } = current.value
  return complaintId === undefined ? [line.id] : [complaintId, line.id]
}

/** Puts another triage in place of this one, which can be brought back if it is kept nowhere else. */
function replaceTriage(draft: TriageDraft): void {
  if (isUnkept(current.value)) triageAside.value = current.value
  setTriage(draft)
}

/** Goes on with a saved complaint at the question where it was left. */
export function resumeComplaint(complaint: Complaint): void {
  const { answers, events, guideVersion, lines, id } = complaint
  const line = lines[0] === undefined ? newLine() : looseLine(lines[0])
  replaceTriage({ ...emptyTriage(), answers, ...(events && { events }), guideVersion, line, complaintId: id })
}

/** Starts over. */
export function restartTriage(): void {
  replaceTriage(emptyTriage())
}

/** Brings the triage back that made room last; the present one makes room in turn. */
export function undoTriage(): void {
  const back = triageAside.value
  if (back === undefined) return
  triageAside.value = isUnkept(current.value) ? current.value : undefined
  setTriage(back)
}

async function setScratch(line: LooseLine, edit?: FactEdit): Promise<void> {
  scratchLine.value = line
  const at = line.updatedAt
  await save({ do: 'scratch', line, at, edit }, `scratch:${edit?.fact ?? ''}`)
  tell({ is: 'scratch' })
  await showScratchAside(line.id).catch(() => undefined)
}

/** Writes one fact of the scratch line, at every key; undefined takes it off. */
export function writeScratchFact(fact: FactKey, next: Fact | undefined, base?: string): void {
  const old = scratchLine.value
  const read = base ?? writtenHere.get(fact) ?? old.facts[fact]?.text ?? ''
  writtenHere.set(fact, next?.text ?? '')
  const edit = { fact, base: read, next }
  void setScratch(editFact(old, edit, { at: now() }, false), edit)
}

/** Takes one of several texts of a fact; the others that were seen go. */
export function takeScratchText(fact: FactKey, text: string, left: readonly string[]): void {
  writtenHere.delete(fact)
  void setScratch(settleFact(scratchLine.value, fact, { text, left }, { at: now() }))
}

/** Puts another scratch line in place of this one, which can be brought back if it holds anything. */
export function openScratch(line: Line): void {
  const old = scratchLine.value
  writtenHere.clear()
  if (holdsAnything(old) && old.id !== line.id) scratchAside.value = old
  void setScratch({ ...looseLine(line), updatedAt: now() })
}

/** Brings the scratch line back that made room last; the present one makes room in turn. */
export function undoScratch(): void {
  const back = scratchAside.value
  if (back === undefined) return
  scratchAside.value = undefined
  openScratch(back)
}

/** An empty scratch line. */
export function restartScratch(): void {
  openScratch(newLine())
}
