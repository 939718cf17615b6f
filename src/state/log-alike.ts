/**
 * Complaints of the Log whose words are spelt nearly as typed. Their words are gathered in slices, ahead of the first key;
 * after that a key compares with each different word once, however many complaints hold it.
 */
import type { Progress } from '../calc/types.ts'
import type { Complaint } from '../store/complaint.ts'
import { searchedText, wantedWords } from './log-search.ts'

/** Short words are matched as they are: one letter off is another trade term. */
const ALIKE_FROM_LETTERS = 5
/** From here on two letters may be off. */
const TWO_OFF_FROM_LETTERS = 9
const LETTERS_A_STEP = 30_000
/** What is left of complaints that have changed since is thrown away when there is as much of it as of the rest. */
const MOST_STALE_RATIO = 2

/** Which complaints hold a word. */
let holders = new Map<string, Set<Complaint>>()
let gathered = new Set<Complaint>()
/** What a typed word met, until more words are gathered. */
let met = new Map<string, ReadonlySet<Complaint>>()

const WORDS = /\p{L}{4,}/gu

/** Gathers the words of complaints that were not gathered yet, a step between two yields. */
export function* gatherWords(log: readonly Complaint[]): Generator<Progress, void> {
  if (gathered.size > MOST_STALE_RATIO * log.length) {
    holders = new Map()
    gathered = new Set()
  }
  let letters = 0
  for (const [at, complaint] of log.entries()) {
    if (gathered.has(complaint)) continue
    const text = searchedText(complaint)
    for (const { 0: word, index } of text.matchAll(WORDS)) {
      const known = holders.get(word)
      if (known === undefined) holders.set(word, new Set([complaint]))
      else known.add(complaint)
      if (letters + index > LETTERS_A_STEP) {
        letters = -index
        yield { doneFrac: at / log.length }
      }
    }
    letters += text.length
    gathered.add(complaint)
    met = new Map()
  }
}

const ONLY_LETTERS = /^\p{L}+$/u

/** Letters that may be off in a word of so many; none where it holds a figure. */
const mostOff = (typed: string): number =>
  !ONLY_LETTERS.test(typed) || typed.length < ALIKE_FROM_LETTERS ? 0 : typed.length < TWO_OFF_FROM_LETTERS ? 1 : 2

/**
 * Letters that are wrong, missing, too many or exchanged with their neighbour between a typed word and the beginning of
 * another, which may go on; Infinity above `most`. Optimal string alignment, the rows of its table one after the other.
 */
export function lettersOff(typed: string, word: string, most: number): number {
  if (word.length < typed.length - most) return Number.POSITIVE_INFINITY
  // more of it cannot match any better
  const width = Math.min(word.length, typed.length + most)
  let [before, row, next] = [new Array<number>(width + 1), new Array<number>(width + 1), new Array<number>(width + 1)]
  for (let j = 0; j <= width; j++) row[j] = j
  for (let i = 1; i <= typed.length; i++) {
    next[0] = i
    let least = i
    for (let j = 1; j <= width; j++) {
      const isSame = typed[i - 1] === word[j - 1]
      let off = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (isSame ? 0 : 1))
      if (i > 1 && j > 1 && typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1])
        off = Math.min(off, (before[j - 2] ?? 0) + 1)
      next[j] = off
      least = Math.min(least, off)
    }
    if (least > most) return Number.POSITIVE_INFINITY
    ;[before, row, next] = [row, next, before]
  }
  const off = Math.min(...row)
  return off > most ? Number.POSITIVE_INFINITY : off
}

const NOBODY: ReadonlySet<Complaint> = new Set()

/** Those that hold a word like the typed one. */
function alike(typed: string): ReadonlySet<Complaint> {
  const most = mostOff(typed)
  if (most === 0 || holders.size === 0) return NOBODY
  const known = met.get(typed)
  if (known !== undefined) return known
  const found = new Set<Complaint>()
  for (const [word, by] of holders) {
    if (lettersOff(typed, word, most) > most) continue
    for (const complaint of by) found.add(complaint)
  }
  met.set(typed, found)
  return found
}

/** Those that hold every word or one spelt nearly so, and not every word itself: fewest misspelt words first. */
export function nearlyWithWords(log: readonly Complaint[], text: string): readonly Complaint[] {
  const wanted = wantedWords(text)
  const near = wanted.map(alike)
  if (near.every(({ size }) => size === 0)) return []
  const groups = wanted.map((): Complaint[] => [])
  for (const complaint of log) {
    let misspelt = 0
    const holds = wanted.every((word, at) => {
      if (searchedText(complaint).includes(word)) return true
      misspelt += 1
      return near[at]?.has(complaint) === true
    })
    if (holds && misspelt > 0) groups[misspelt - 1]?.push(complaint)
  }
  return groups.flat()
}
