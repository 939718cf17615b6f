/** One complaint asked to its end by an honest answerer. */
import { causesOf } from '../../../src/guide/investigate/causes.ts'
import { type Found, foundCause } from '../../../src/guide/investigate/ending.ts'
import { MOST_ANSWERS, nextEvidence } from '../../../src/guide/investigate/next.ts'
import { standings } from '../../../src/guide/investigate/standing.ts'
import type { Table } from '../../../src/guide/investigate/table.ts'
import type { Evidence, Part } from '../../../src/guide/investigation.ts'
import { possible, type Truth } from './honest.ts'

/** A small seeded generator (mulberry32), 0 to 1. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

export type Walked = {
  readonly found: Found | undefined
  readonly asked: readonly string[]
  /** answers before the first decision or test card */
  readonly toCard: number
  /** it ended only because enough was asked; something would still decide */
  readonly isCapped: boolean
  readonly answers: Readonly<Record<string, string>>
}

const FIXED: Readonly<Record<string, string>> = { 'gate-danger': 'none', 'gate-lines': 'none' }

function answerTo(
  item: Evidence,
  truth: Truth,
  unknown: number,
  random: () => number,
  partOf: ReadonlyMap<string, Part>,
): string {
  const fixed = FIXED[item.id]
  if (fixed !== undefined) return fixed
  if (item.id === 'wrong') return truth.symptom
  if (random() < unknown) return 'dont-know'
  const fits = possible(item, truth, partOf)
  return fits[Math.floor(random() * fits.length)]?.id ?? 'dont-know'
}

type Way = { readonly unknown: number; readonly random: () => number; readonly most?: number }

/** Walks to the end: the cause found, or undefined where the engine would say `measure`. */
export function walk(table: Table, truth: Truth, { unknown, random, most = MOST_ANSWERS }: Way): Walked {
  const partOf = new Map(table.suspects.map(({ id, part }) => [id, part]))
  const answers: Record<string, string> = {}
  const asked: string[] = []
  let card: number | undefined
  for (;;) {
    const all = standings(table, answers)
    const found = answers['wrong'] === undefined ? undefined : foundCause(causesOf(all))
    const toCard = card ?? asked.length
    if (found !== undefined) return { found, asked, answers, toCard, isCapped: false }
    const item = nextEvidence(table, answers, all, true, most)
    if (item === undefined) {
      const isCapped = nextEvidence(table, answers, all, true, Number.POSITIVE_INFINITY) !== undefined
      return { found: undefined, asked, answers, toCard, isCapped }
    }
    if (item.card !== undefined) card ??= asked.length
    answers[item.id] = answerTo(item, truth, unknown, random, partOf)
    asked.push(item.id)
  }
}
