/**
 * The Log.
 *
 * Signals
 *   `complaints`      newest first, without deleted ones; undefined until `loadComplaints()` has read them
 *   `opened`          the complaint opened by `openComplaint(id)`, or undefined
 *   `lastDeleted`     the complaint or line whose deletion can be undone with one tap, or undefined
 *   `deletedHere`     everything deleted in this visit that can be brought back
 *   `keepsStorage`    whether the browser promised not to clear the storage; undefined until asked
 *   `saveState`, `storeNotice`, `retrySave()`   see save-queue.ts
 *
 * Doing (each shows at once and is written behind, in order; text never leaves the screen when storage fails)
 *   `loadComplaints()`                       once at start
 *   `openComplaint(id | undefined)`
 *   `add(complaint)`                          one that was just made (new-complaint.ts)
 *   `rename(id, title, base?)`, `writeNote(id, note, base?)`, `writeText(id, field, text, base?)`, `change(id, patch)`
 *   `takeText(id, field, text, left)`        one of several texts is taken, the others (`left`) go
 *   `writeLineFact(id, lineId, fact, next, base?)`  at every key; undefined takes the fact off
 *   `writeLine(id, line)`                    what is new about a line, fact by fact
 *   `takeLineText(id, lineId, fact, text, left)`
 *   `changeLine(id, lineId, patch)`, `addLine(id, line)`, `removeLine(id, lineId)`
 *   `addCheck(id, {check, address?, lineId?, rules?, beside?})`  each only once
 *   `remove(id)`, `offerUndo(removed)`, `forgetRemoved()`; `undoRemove()` see undo-remove.ts
 *
 * `base` is what the field showed before this key. Where another text stands by then, both are kept: the other one as a
 * rival, which the complaint or the line carries until one of them is taken.
 *
 * A change is written to its own record only, a line's to that line. Other windows are told which one, and read that.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { Fact, FactKey, Line, LineText } from '../calc/types.ts'
import { askToKeepStorage } from '../store/browser-storage.ts'
import {
  COMPLAINT_TEXTS,
  type Complaint,
  type ComplaintPatch,
  type ComplaintText,
  type ComplaintTexts,
  type SavedCheck,
} from '../store/complaint.ts'
import type { LinePatch } from '../store/edits.ts'
import { type KeptLine, keptLine } from '../store/line.ts'
import { carryOut, complaints, find, lineOf, loadComplaints } from './log.ts'

export type { Complaint, ComplaintPatch, ComplaintText, KeptLine, LinePatch, SavedCheck }
export { complaints, loadComplaints }

/** What was deleted last: a complaint, a line of one, or what else can be brought back (`back`). */
export type Removed = {
  readonly id: string
  readonly line?: KeptLine
  readonly back?: () => void
  readonly complaint?: Complaint
  readonly name: string
}

const openId = signal<string | undefined>(undefined)
const removed = signal<readonly Removed[]>([])
const putAway = signal<readonly Removed[]>([])
const kept = signal<boolean | undefined>(undefined)

export const opened: ReadonlySignal<Complaint | undefined> = computed(() => find(openId.value))
/** What was deleted in this visit and can be brought back, the last one at the end. */
export const deletedHere: ReadonlySignal<readonly Removed[]> = removed
export const lastDeleted: ReadonlySignal<Removed | undefined> = computed(() =>
  removed.value.filter((one) => !putAway.value.includes(one)).at(-1),
)
export const keepsStorage: ReadonlySignal<boolean | undefined> = kept

/** What this window wrote last into a text, where no field says what it showed. */
const writtenHere = new Map<string, string>()

/** Opens a complaint, or none. */
export function openComplaint(id: string | undefined): void {
  openId.value = id
}

/** Puts a complaint that was just made into the Log. */
export function add(complaint: Complaint): Complaint {
  void carryOut({ do: 'put', complaint }).then(askToKeep)
  return complaint
}

/** Asked only once there is something to lose; the browser decides. */
async function askToKeep(): Promise<void> {
  if (kept.value === undefined) kept.value = await askToKeepStorage()
}

const now = (): string => new Date().toISOString()

/** Changes parts of a complaint; the list shows it at once, moved to the front. `base`: the texts that were read. */
export function change(id: string, patch: ComplaintPatch, base: ComplaintTexts = {}): void {
  const old = find(id)
  if (old === undefined) return
  const read: { [K in ComplaintText]?: string } = { ...base }
  for (const field of COMPLAINT_TEXTS) {
    const next = patch[field]
    if (next === undefined) continue
    const place = `${id}:${field}`
    read[field] ??= writtenHere.get(place) ?? old[field] ?? ''
    writtenHere.set(place, next)
  }
  void carryOut({ do: 'change', id, patch, base: read, at: now() }, `${id}:${Object.keys(patch).sort().join()}`)
}

/** Replaces a typed text of a complaint; called at every keystroke. */
export function writeText(id: string, field: ComplaintText, text: string, base?: string): void {
  const patch: ComplaintTexts = { [field]: text }
  change(id, patch, base === undefined ? {} : { [field]: base })
}

/** Gives a complaint another title; called at every keystroke. */
export const rename = (id: string, title: string, base?: string): void => writeText(id, 'title', title, base)

/** Replaces the note of a complaint; called at every keystroke. */
export const writeNote = (id: string, note: string, base?: string): void => writeText(id, 'note', note, base)

/** Takes one of several titles, aircraft or notes; the others that were seen go. */
export function takeText(id: string, field: ComplaintText, text: string, left: readonly string[]): void {
  writtenHere.delete(`${id}:${field}`)
  void carryOut({ do: 'settle', id, field, text, left, at: now() })
}

/** Keeps a check with a complaint; the same one only once. */
export function addCheck(id: string, check: SavedCheck): void {
  if (find(id) !== undefined) void carryOut({ do: 'check', id, check, at: now() })
}

/** Writes one fact of a line, at every key; undefined takes it off. */
export function writeLineFact(id: string, lineId: string, fact: FactKey, next: Fact | undefined, base?: string): void {
  const old = lineOf(id, lineId)
  if (old === undefined) return
  const place = `${id}:${lineId}:${fact}`
  const read = base ?? writtenHere.get(place) ?? old.facts[fact]?.text ?? ''
  writtenHere.set(place, next?.text ?? '')
  void carryOut({ do: 'fact', id, lineId, fact, base: read, at: now(), next }, place)
}

/** Writes what is new about a line of a complaint, fact by fact. */
export function writeLine(id: string, line: Line): void {
  const old = lineOf(id, line.id)
  if (old === undefined) return
  if (old.gate !== line.gate) changeLine(id, line.id, { gate: line.gate })
  for (const key of Object.keys({ ...old.facts, ...line.facts }) as FactKey[])
    if (old.facts[key] !== line.facts[key]) writeLineFact(id, line.id, key, line.facts[key])
}

/** Takes one of several texts of a fact, or names; the others that were seen go. */
export function takeLineText(id: string, lineId: string, fact: LineText, text: string, left: readonly string[]): void {
  writtenHere.delete(`${id}:${lineId}:${fact}`)
  if (lineOf(id, lineId) !== undefined) void carryOut({ do: 'settleFact', id, lineId, fact, text, left, at: now() })
}

/** Changes the name, gate or trials of a line. `base`: the name that was read. */
export function changeLine(id: string, lineId: string, patch: LinePatch, base?: string): void {
  const old = lineOf(id, lineId)
  if (old === undefined) return
  const place = `${id}:${lineId}:name`
  const read = patch.name === undefined ? undefined : (base ?? writtenHere.get(place) ?? old.name)
  if (patch.name !== undefined) writtenHere.set(place, patch.name)
  const key = `${id}:${lineId}:${Object.keys(patch).sort().join()}`
  void carryOut({ do: 'line', id, lineId, patch, base: read, at: now() }, key)
}

/** Puts a line at the end of a complaint. */
export function addLine(id: string, line: Line): void {
  const old = find(id)
  if (old === undefined) return
  const order = Math.max(-1, ...old.lines.map((one) => one.order)) + 1
  void carryOut({ do: 'addLine', line: { ...keptLine(line, id, order), updatedAt: now() } })
}

/** Takes a line out of a complaint; `undoRemove` brings it back. */
export function removeLine(id: string, lineId: string): void {
  const line = lineOf(id, lineId)
  if (line === undefined) return
  offerUndo({ id, line, name: line.name || 'line without a name' })
  void carryOut({ do: 'removeLine', id, lineId, at: now() })
}

/** Deletes a complaint; `undoRemove` brings it back. */
export function remove(id: string): void {
  const old = find(id)
  if (old === undefined) return
  offerUndo({ id, complaint: old, name: old.title || 'untitled complaint' })
  void carryOut({ do: 'delete', id, at: now() })
}

/** Offers to bring back what was deleted. */
export function offerUndo(last: Removed): void {
  removed.value = [...removed.value, last]
}

/** It is brought back: there is nothing to offer any more. */
export function noteBroughtBack(which: Removed): void {
  removed.value = removed.value.filter((one) => one !== which)
}

/** Puts the offer away; the Log goes on listing what was deleted in this visit. */
export function forgetRemoved(): void {
  putAway.value = removed.value
}
