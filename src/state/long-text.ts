/**
 * A long text that is typed: its record is written when a pause comes, and until then every key is kept as what it
 * changed, in the database (a killed browser loses no key) and in the small storage (nor does a window that is closed).
 * Fetched with the first field that holds such a text.
 */
import { keepSmallText } from '../store/browser-storage.ts'
import { changeComplaint } from '../store/complaints.ts'
import { type Desk, inOneGo } from '../store/db.ts'
import type { Late } from '../store/edits.ts'
import { type Difference, differenceOf, journalLines, markOf, TEXT } from '../store/long-text.ts'
import { markOpen } from '../store/open-windows.ts'
import { isRecord } from '../store/plain.ts'
import { performStep, type Step } from '../store/steps.ts'
import { LONG_LETTERS, TYPING } from './journal.ts'
import { onNews } from './other-windows.ts'
import { holdBack } from './save-queue.ts'

/** Nobody types the next key of a word later than this. */
const PAUSE_MS = 2000
/** Other windows see what is typed after this long at the latest. */
const LONGEST_MS = 10_000
/** After so many keys, or so much that is new, the text is written whole once more, and the journal begins anew. */
const MOST_DIFFERENCES = 300
const MOST_INSERTED = LONG_LETTERS

const mine = Math.random().toString(36).slice(2)
const NAME = TYPING + mine

/** Counts the keys, and the texts that were written whole. */
let [count, run] = [0, 0]
let first = ''
let began = markOf(first)
let differences: Difference[] = []
/** The texts the steps are about, each with the number of differences it stands after; the newest at the end. */
let known: readonly (readonly [text: string, after: number])[] = []

const isLongText = (text: string | undefined): text is string => text !== undefined && text.length >= LONG_LETTERS

/** Only a note grows long. */
const isLong = (step: Step): boolean => step.do === 'change' && isLongText(step.patch.note)

const longTexts = (steps: readonly Step[]): readonly string[] =>
  steps.flatMap((step) => (step.do === 'change' ? [step.base?.note, step.patch.note].filter(isLongText) : []))

const placeOf = (text: string): number | undefined => known.find(([one]) => one === text)?.[1]

function beginWith(text: string): void {
  run++
  first = text
  began = markOf(text)
  differences = []
  known = [[text, 0]]
}

/** Whether the journal holds so much that it is not to be written again with every key. */
function isFull(): boolean {
  const inserted = differences.reduce((sum, [, , insert]) => sum + insert.length, 0)
  return differences.length > MOST_DIFFERENCES || inserted > MOST_INSERTED
}

/** Follows the text to what it is in these steps. */
function follow(texts: readonly string[]): void {
  const [oldest] = texts
  const isNew = oldest !== undefined && lines === '' && (oldest !== known.at(-1)?.[0] || isFull())
  if (isNew) beginWith(oldest)
  for (const text of texts) {
    if (placeOf(text) !== undefined) continue
    differences.push(differenceOf(known.at(-1)?.[0] ?? '', text))
    known = [...known, [text, differences.length]]
  }
  known = known.filter(([text], at) => texts.includes(text) || at === known.length - 1)
}

let lines = ''
/** how many steps they hold */
let heldSteps = 0
/** the run whose first text is in the database */
let writtenRun = 0
let isWriting = false
let isStale = false

/** Puts the journal into the database; keys that come meanwhile go with the next. */
async function write(): Promise<void> {
  isStale = true
  if (isWriting) return
  isWriting = true
  while (isStale) {
    isStale = false
    const [journal, text] = [{ count, lines }, writtenRun === run || lines === '' ? undefined : { run, text: first }]
    try {
      const isPut = await inOneGo(['meta'], async (desk) => {
        if (!(await isOlder(desk, journal.count))) return false
        if (text !== undefined) await desk.put('meta', text, NAME + TEXT)
        await desk.put('meta', journal, NAME)
        return true
      })
      if (isPut && text !== undefined) writtenRun = text.run
    } catch {
      // the record itself is written at once instead, and whoever types is told how that went
      hurry()
    }
  }
  isWriting = false
}

/** Whether the journal on the disk does not go as far as that. */
async function isOlder(desk: Desk, upTo: number): Promise<boolean> {
  const raw = await desk.get('meta', NAME)
  return !isRecord(raw) || Number(raw['count']) < upTo
}

/**
 * Writes the record, and in the same go that the journal holds nothing more: read again after that, it would put what
 * another window wrote since beside a text that this one is made of.
 */
function writeWhole(step: Step, late: Late): Promise<boolean> {
  if (step.do !== 'change' || !isLong(step) || heldSteps !== 1) return performStep(step, late)
  const upTo = count
  return changeComplaint(step, late, async (desk) => {
    // keys that came since are in it by now
    if (await isOlder(desk, upTo + 1)) await desk.put('meta', { count: upTo, lines: '' }, NAME)
    return true
  })
}

function keep(steps: readonly Step[], isStopped: boolean): readonly Step[] {
  const long = steps.filter(isLong)
  if (long.length === 0 && lines === '') return steps
  heldSteps = long.length
  if (long.length > 0) follow(longTexts(long))
  count++
  lines = long.length === 0 ? '' : journalLines({ count, run, began, steps: long, differences, placeOf })
  keepSmallText(NAME, lines === '' ? undefined : lines)
  if (!isStopped) void write()
  if (lines === '') since = undefined
  return steps.filter((step) => !isLong(step))
}

let timer: ReturnType<typeof setTimeout> | undefined
/** when the first key came that is not in its record yet */
let since: number | undefined

/** Every key begins the wait anew, up to the longest: from then on it is no timer that has to find a gap between keys. */
function delays(step: Step): boolean {
  if (!isLong(step) || isFull()) return false
  const now = performance.now()
  since ??= now
  const leftMs = since + LONGEST_MS - now
  clearTimeout(timer)
  if (leftMs <= 0) return false
  timer = setTimeout(hurry, Math.min(PAUSE_MS, leftMs))
  return true
}

function hurry(): void {
  clearTimeout(timer)
  since = undefined
  start()
}

let start = (): void => undefined
// Only where the other windows are told that this one is open: a new one would take over its journal. Elsewhere every
// key is written whole, as before this was fetched.
void markOpen(mine).then((isKnown) => {
  if (isKnown) start = holdBack({ keep, delays, hurry, write: writeWhole })
})
// Another window that writes to the same record is met at once, not ten seconds later.
onNews(hurry)
addEventListener('pagehide', hurry)
addEventListener('visibilitychange', hurry)
