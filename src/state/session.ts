/**
 * What is under way: the triage and the scratch line of the quick checks. Saved at every step, resumed after a kill.
 *
 * `triage`                 {answers, guideVersion, line, complaintId?}
 * `scratch`                the Line the quick checks work on
 * `resumeSession()`        once at start, before the first screen
 * `setAnswers(answers, guideVersion)`, `setTriageLine(line)`
 * `attachComplaint(id)`    from now on every step is also saved into that complaint
 * `resumeComplaint(complaint)`  goes on with a saved complaint
 * `restartTriage()`        a fresh triage; the complaint it was saved in stays in the Log
 * `triageBefore`, `undoTriage()`    the unkept triage that made room, and the way back to it
 * `writeScratchFact(fact, next)`    at every key; undefined takes the fact off
 * `openScratch(line)`, `restartScratch()`   another scratch line
 * `scratchBefore`, `undoScratch()`  the scratch line that made room, and the way back to it
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Fact, FactKey, Line } from '../calc/types.ts'
import type { Answers } from '../guide/types.ts'
import { type Complaint, newLine } from '../store/complaint.ts'
import { emptyTriage, readScratch, readTriage, type TriageDraft } from '../store/meta.ts'
import { StoreError } from '../store/trouble.ts'
import { change, complaints } from './complaints.ts'
import { recover, save, settled } from './save-queue.ts'

export type { TriageDraft }

const current = signal<TriageDraft>(emptyTriage())
const scratchLine = signal<Line>(newLine())
export const triage: ReadonlySignal<TriageDraft> = current
export const scratch: ReadonlySignal<Line> = scratchLine

const triageAside = signal<TriageDraft | undefined>(undefined)
const scratchAside = signal<Line | undefined>(undefined)
export const triageBefore: ReadonlySignal<TriageDraft | undefined> = triageAside
export const scratchBefore: ReadonlySignal<Line | undefined> = scratchAside

/** Reads back what was under way. Without storage both start empty. */
export async function resumeSession(): Promise<void> {
  const [draftBefore, lineBefore] = [current.value, scratchLine.value]
  void recover()
  await settled()
  try {
    const [draft, line] = await Promise.all([readTriage(), readScratch()])
    // An address or a quick thumb may have been faster than the storage: what was done since then stays.
    if (current.value === draftBefore) current.value = draft
    if (scratchLine.value === lineBefore) scratchLine.value = line
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
  }
}

function setTriage(draft: TriageDraft): void {
  current.value = draft
  void save({ do: 'triage', draft }, 'triage')
}

/** Replaces the answers; the whole record, since changing an early answer may drop later ones. */
export function setAnswers(answers: Answers, guideVersion: number): void {
  const draft = { ...current.value, answers, guideVersion }
  setTriage(draft)
  if (draft.complaintId !== undefined) change(draft.complaintId, { answers, guideVersion })
}

/** Replaces the line of the triage (facts typed, gate answered). */
export function setTriageLine(line: Line): void {
  const draft = { ...current.value, line }
  setTriage(draft)
  const { complaintId } = draft
  const complaint = complaints.value?.find(({ id }) => id === complaintId)
  if (complaint === undefined) return
  const isPresent = complaint.lines.some(({ id }) => id === line.id)
  const lines = isPresent ? complaint.lines.map((old) => (old.id === line.id ? line : old)) : [line, ...complaint.lines]
  change(complaint.id, { lines })
}

/** Saves every further step into this complaint too. */
export function attachComplaint(complaintId: string): void {
  setTriage({ ...current.value, complaintId })
}

const isUnkept = (draft: TriageDraft): boolean =>
  draft.complaintId === undefined && (Object.keys(draft.answers).length > 0 || holdsFacts(draft.line))

const holdsFacts = (line: Line): boolean => Object.keys(line.facts).length > 0

/** Puts another triage in place of this one, which can be brought back if it is kept nowhere else. */
function replaceTriage(draft: TriageDraft): void {
  if (isUnkept(current.value)) triageAside.value = current.value
  setTriage(draft)
}

/** Goes on with a saved complaint at the question where it was left. */
export function resumeComplaint(complaint: Complaint): void {
  const { answers, guideVersion, lines, id } = complaint
  replaceTriage({ answers, guideVersion, line: lines[0] ?? newLine(), complaintId: id })
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

function setScratch(line: Line): void {
  scratchLine.value = line
  void save({ do: 'scratch', line }, 'scratch')
}

/** Writes one fact of the scratch line, at every key; undefined takes it off. */
export function writeScratchFact(fact: FactKey, next: Fact | undefined): void {
  const { [fact]: _old, ...others } = scratchLine.value.facts
  setScratch({ ...scratchLine.value, facts: next === undefined ? others : { ...others, [fact]: next } })
}

/** Puts another scratch line in place of this one, which can be brought back if it holds anything. */
export function openScratch(line: Line): void {
  if (holdsFacts(scratchLine.value)) scratchAside.value = scratchLine.value
  setScratch(line)
}

/** Brings the scratch line back that made room last; the present one makes room in turn. */
export function undoScratch(): void {
  const back = scratchAside.value
  if (back === undefined) return
  scratchAside.value = holdsFacts(scratchLine.value) ? scratchLine.value : undefined
  setScratch(back)
}

/** An empty scratch line. */
export function restartScratch(): void {
  openScratch(newLine())
}
