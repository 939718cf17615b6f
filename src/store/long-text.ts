/**
 * A long text while it is typed, as a note of what each key changed in it: the text it began with is written once, every
 * key adds one line. The lines are read back in their order; one that was torn ends the reading there.
 */
import { entriesOf, isRecord, parsed } from './plain.ts'
import type { Step } from './steps.ts'

/** Ends the name under which the text stands that a journal began with. */
export const TEXT = ':text'

/** At `at`, `cut` letters made room for `insert`. */
export type Difference = readonly [at: number, cut: number, insert: string]

/** Where two texts part, compared by whole pieces: letter by letter, a long text would take longer than a key. */
function commonStart(a: string, b: string): number {
  let [same, upTo] = [0, Math.min(a.length, b.length)]
  if (a.slice(0, upTo) === b.slice(0, upTo)) return upTo
  while (upTo - same > 1) {
    const middle = (same + upTo) >> 1
    if (a.slice(same, middle) === b.slice(same, middle)) same = middle
    else upTo = middle
  }
  return same
}

function commonEnd(a: string, b: string, most: number): number {
  let [same, upTo] = [0, most]
  const piece = (text: string, from: number, to: number) => text.slice(text.length - to, text.length - from)
  if (piece(a, 0, upTo) === piece(b, 0, upTo)) return upTo
  while (upTo - same > 1) {
    const middle = (same + upTo) >> 1
    if (piece(a, same, middle) === piece(b, same, middle)) same = middle
    else upTo = middle
  }
  return same
}

/** What turns one text into another: one piece, between what both begin and end with. */
export function differenceOf(was: string, now: string): Difference {
  const at = commonStart(was, now)
  const end = commonEnd(was, now, Math.min(was.length, now.length) - at)
  return [at, was.length - end - at, now.slice(at, now.length - end)]
}

export const applied = (text: string, [at, cut, insert]: Difference): string =>
  text.slice(0, at) + insert + text.slice(at + cut)

/** What says which text a journal began with, without holding it: its length, and a sum in which every letter counts. */
export type Mark = { readonly length: number; readonly sum: number }

/** The Fowler-Noll-Vo hash (1a, 32 bits), taken of whole letters. */
const [HASH_BASIS, HASH_PRIME] = [0x811c9dc5, 0x01000193]

export function markOf(text: string): Mark {
  let sum = HASH_BASIS
  for (let at = 0; at < text.length; at++) sum = Math.imul(sum ^ text.charCodeAt(at), HASH_PRIME)
  return { length: text.length, sum }
}

export const isMarked = (text: string, { length, sum }: Mark): boolean =>
  text.length === length && markOf(text).sum === sum

/** In place of a long text of a step: the text after so many differences. */
type Placed = { readonly textAfter: number }

type Journal = {
  /** counts the keys of a window: of two copies, the one with the higher number is the later */
  readonly count: number
  readonly run: number
  readonly began: Mark
  readonly steps: readonly Step[]
  readonly differences: readonly Difference[]
  /** after how many differences a long text of the steps stood, or undefined for any other text */
  readonly placeOf: (text: string) => number | undefined
}

/** The journal as lines: what was changed, with its long texts named by their place, then the differences. */
export function journalLines({ count, run, began, steps, differences, placeOf }: Journal): string {
  const placed = (_key: string, value: unknown): unknown => {
    const at = typeof value === 'string' ? placeOf(value) : undefined
    return at === undefined ? value : { textAfter: at }
  }
  const head = JSON.stringify({ count, run, began, steps }, placed)
  return [head, ...differences.map((one) => JSON.stringify(one))].join('\n')
}

type Head = { readonly count: number; readonly run: number; readonly began: Mark; readonly complaintId: string }
export type ReadJournal = Head & {
  /** the steps, their long texts made anew from the text the journal began with */
  readonly stepsOn: (began: string) => readonly unknown[]
}

const isPlaced = (value: unknown): value is Placed =>
  isRecord(value) && Number.isSafeInteger(value['textAfter']) && Object.keys(value).length === 1

function differenceFrom(line: string): Difference | undefined {
  const raw = parsed(line)
  if (!Array.isArray(raw)) return undefined
  const [at, cut, insert]: readonly unknown[] = raw
  return typeof at === 'number' && typeof cut === 'number' && typeof insert === 'string' ? [at, cut, insert] : undefined
}

/** Reads a journal back; undefined where even its first line is torn. Never throws. */
export function readJournal(lines: string): ReadJournal | undefined {
  const [first = '', ...rest] = lines.split('\n')
  const head = parsed(first)
  if (!isRecord(head) || !isRecord(head['began']) || !Array.isArray(head['steps'])) return undefined
  const { length, sum } = head['began']
  if (typeof length !== 'number') return undefined
  const all = rest.map(differenceFrom)
  const torn = all.indexOf(undefined)
  const differences = (torn < 0 ? all : all.slice(0, torn)).filter((one) => one !== undefined)
  const raw: readonly unknown[] = head['steps']
  return {
    count: Number(head['count']),
    run: Number(head['run']),
    // without a sum it fits no text but the one that is kept with the journal
    began: { length, sum: Number(sum) },
    complaintId: isRecord(raw[0]) ? String(raw[0]['id']) : '',
    stepsOn: (began) => {
      const wanted = new Set<number>()
      const collect = (value: unknown): void => {
        if (isPlaced(value)) wanted.add(Math.min(value.textAfter, differences.length))
        else if (isRecord(value)) for (const one of Object.values(value)) collect(one)
      }
      raw.forEach(collect)
      // only those that are asked for: all of them together would fill the memory
      const texts = new Map<number, string>()
      let text = began
      for (let after = 0; after <= differences.length; after++) {
        const difference = differences[after - 1]
        if (difference !== undefined) text = applied(text, difference)
        if (wanted.has(after)) texts.set(after, text)
      }
      const whole = (value: unknown): unknown => {
        if (isPlaced(value)) return texts.get(Math.min(value.textAfter, differences.length))
        if (!isRecord(value)) return value
        return Object.fromEntries(entriesOf(value).map(([key, one]) => [key, whole(one)]))
      }
      return raw.map(whole)
    },
  }
}
