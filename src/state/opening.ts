/** Opens a check by its address: on the Line under way, or on a fresh one that holds what the address says. */
import type { Express } from '../calc/line/fields.ts'
import { figuresInSteps } from '../calc/line/remembered-figures.ts'
import { emptied, giverOf, type Resolution, resolve } from '../calc/line/resolver.ts'
import { withFact } from '../calc/line/with-fact.ts'
import type { Check, FactKey, Line, Progress } from '../calc/types.ts'
import { newLine } from '../store/line.ts'
import { lineOfEntry, noteAddress } from './entry.ts'
import { noteFresh } from './fresh-line.ts'
import { splitQuery } from './query.ts'
import type { Pair } from './router.ts'
import { openScratch, scratch, scratchBefore, undoScratch } from './session.ts'
import { splitVariants, type Variants } from './variants.ts'

export type Opening = {
  /** keys whose text belongs into its field whatever it is: the address gave it */
  readonly ownKeys: readonly string[]
  /** pairs of the address the check has no input for; kept in the address and reported */
  readonly strangers: readonly Pair[]
  /** the address may be older than the Line it was opened on */
  readonly isOld: boolean
  readonly variants: Variants
}

/** A fresh Line that holds the texts of an address, as typed; its safety gate is not answered. */
export function lineFrom(check: Check, query: readonly Pair[], express?: Express): Line {
  const { texts } = splitQuery(query, check.inputs)
  const stated = check.inputs.filter(({ key }) => texts[key] !== undefined)
  const isBlank = (key: string) => (texts[key] ?? '').trim() === ''
  const typed = stated
    .filter(({ key }) => !isBlank(key))
    .reduce<Line>((line, { key, fact }) => withFact(line, fact, typedFact(texts[key] ?? '')), newLine())
  return stated
    .filter(({ key }) => isBlank(key))
    .reduce((line, input) => withFact(line, input.fact, emptied(line, input, express)), typed)
}

const typedFact = (text: string) => ({ text, origin: { by: 'user' } }) as const

/**
 * Opens a check of the quick checks. An address without a query works on the Line under way. One with a query brings
 * its own Line, which is then the one under way; the one before is kept aside. The same entry of the history goes on
 * with the Line it had, so that nothing typed in other checks of it is lost by a reload.
 */
export function openAddress(check: Check, query: readonly Pair[], express?: Express): Opening {
  const { own, variants } = splitVariants(query, check.inputs)
  const { texts, strangers } = splitQuery(own, check.inputs)
  const ownKeys = Object.keys(texts)
  const opening = { ownKeys, strangers, variants }
  if (own.length === 0) return { ...opening, isOld: false }
  const lineId = lineOfEntry()
  if (lineId !== undefined && lineId === scratchBefore.peek()?.id) undoScratch()
  const { id, facts } = scratch.peek()
  if (lineId === id) {
    const asWritten = check.inputs.filter(({ key, fact }) => texts[key] === facts[fact]?.text)
    return { ...opening, ownKeys: asWritten.map(({ key }) => key), isOld: true }
  }
  openScratch(lineFrom(check, own, express))
  noteFresh()
  noteAddress(location.hash, scratch.peek().id)
  return { ...opening, isOld: false }
}

/**
 * Works out what the fields of a check rest on, in steps: what other checks give is read before it is asked for, so that
 * none takes long. What was worked out is remembered with the Line, and read at once afterwards.
 */
export function* readAhead(check: Check, line: Line, express: Express): Generator<Progress, void> {
  const resolution = resolve(line, express)
  const read = new Set<FactKey>()
  for (const [i, { fact }] of check.inputs.entries())
    for (const _step of claimsOf(resolution, fact, read)) yield { doneFrac: i / check.inputs.length }
}

function* claimsOf(resolution: Resolution, fact: FactKey, read: Set<FactKey>): Generator<undefined, void> {
  if (read.has(fact)) return
  read.add(fact)
  const giver = giverOf(fact)
  for (const input of giver?.inputs ?? []) yield* claimsOf(resolution, input.fact, read)
  if (giver !== undefined) {
    const fields = resolution.fields(giver)
    yield
    // what waits for the calculator is not remembered: read once, below
    const isFinal = fields.every(({ state }) => state !== 'pending')
    if (isFinal) for (const _step of figuresInSteps(giver, fields)) yield
  }
  resolution.claims(fact)
  yield
}
