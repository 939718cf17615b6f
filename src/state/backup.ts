/**
 * When the whole Log was last saved as a file, and whether it is time again. Kept in the small storage, so that it is
 * there after a reload; the changes are counted where they are written (save-queue.ts).
 *
 * `backupDue`      a sentence, or undefined while there is nothing to say; `lookAtBackup()` looks again
 * `changesSoFar()` to be asked before the file is made
 * `noteSaved()`    the whole Log has just been saved as a file, with so many changes in it
 * `putOff()`       not now: asked again after as many changes or days more
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { keepSmallText, smallText } from '../store/browser-storage.ts'
import { isRecord } from '../store/plain.ts'

/** A change is one text or one answer, however many keys it took. */
export const MOST_CHANGES = 50
export const MOST_DAYS = 14

const DAY_MS = 86_400_000

const due = signal<string | undefined>(undefined)
export const backupDue: ReadonlySignal<string | undefined> = due
const NAME = 'backup'
const CHANGES = 'changes'

/** `from`, `count`: when and at how many changes the counting began; `isSaved`: with a file, not with the first look. */
type Mark = { readonly from: number; readonly count: number; readonly isSaved: boolean; readonly later?: Later }
type Later = { readonly from: number; readonly count: number }

/** How many changes were written on this device. */
export const changesSoFar = (): number => Number(smallText(CHANGES)) || 0

const isCount = (value: unknown): value is number => Number.isFinite(value)

function readMark(nowMs: number): Mark {
  try {
    const raw: unknown = JSON.parse(smallText(NAME) ?? '')
    if (isRecord(raw) && isCount(raw['from']) && isCount(raw['count'])) {
      const { from, count, later } = raw
      const off = isRecord(later) && isCount(later['from']) && isCount(later['count'])
      // a clock that was ahead says nothing of the days since
      return {
        from: Math.min(from, nowMs),
        count,
        isSaved: raw['isSaved'] === true,
        ...(off && { later: { from: Math.min(Number(later['from']), nowMs), count: Number(later['count']) } }),
      }
    }
  } catch {
    // none, or damaged: it begins anew
  }
  return { from: nowMs, count: 0, isSaved: false }
}

const write = (mark: Mark): void => keepSmallText(NAME, JSON.stringify(mark))

const isDueSince = ({ from, count }: Later, nowMs: number): boolean => {
  const changes = changesSoFar() - count
  return changes >= MOST_CHANGES || (changes > 0 && nowMs - from >= MOST_DAYS * DAY_MS)
}

/** Whether the Log should be saved as a file. */
export function lookAtBackup(nowMs = Date.now()): void {
  due.value = wordsOf(nowMs)
}

function wordsOf(nowMs: number): string | undefined {
  const mark = readMark(nowMs)
  write(mark)
  if (!isDueSince(mark, nowMs) || (mark.later !== undefined && !isDueSince(mark.later, nowMs))) return undefined
  const changes = changesSoFar() - mark.count
  const days = Math.floor((nowMs - mark.from) / DAY_MS)
  const since = days < 1 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`
  const what = changes === 1 ? 'One change' : `${changes} changes`
  return mark.isSaved
    ? `${what} since the Log was last saved as a file, ${since}.`
    : `${what}, and the Log was never saved as a file.`
}

/** `count`: the changes the file holds; what was changed while it was made is not in it. */
export function noteSaved(nowMs = Date.now(), count = changesSoFar()): void {
  write({ from: nowMs, count, isSaved: true })
  lookAtBackup(nowMs)
}

export function putOff(nowMs = Date.now()): void {
  write({ ...readMark(nowMs), later: { from: nowMs, count: changesSoFar() } })
  due.value = undefined
}
