/** What a check screen shows and does: typed texts in, fields and an answer out, computed in slices. */
import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals'
import { FACTS, type FactKey } from '../calc/ids.ts'
import { evaluate } from '../calc/line/evaluate.ts'
import { type Express, type Field, readFields } from '../calc/line/fields.ts'
import { textsForCheck } from '../calc/line/resolver.ts'
import { printText } from '../calc/quantity/format.ts'
import type { Check, Fact, Input, Line, Progress, Result } from '../calc/types.ts'
import { hashOf, type Pair, pairsOf, splitQuery } from './router.ts'

export type Texts = Readonly<Record<string, string | undefined>>

/**
 * `done`: the answer belongs to the fields as they are. `working`: it does not yet; `previous` may be shown, marked as
 * old, and after a moment `slow` asks for progress and a way to stop. `stopped`: the user stopped it. `broken`: the
 * check itself failed, which is our fault and is said so.
 */
export type Answer =
  | { readonly is: 'done'; readonly result: Result }
  | { readonly is: 'working'; readonly doneFrac: number; readonly slow: boolean; readonly previous: Result | undefined }
  | { readonly is: 'stopped' }
  | { readonly is: 'broken'; readonly message: string }

/** Long enough for a frame at 60 Hz to keep half of its time. */
const SLICE_MS = 8
/** Shorter waits are not worth a progress bar. */
const SLOW_AFTER_MS = 200

export type CheckModel = {
  readonly check: Check
  /** pairs of the address this check has no input for; kept in the address and reported */
  readonly strangers: readonly Pair[]
  readonly texts: ReadonlySignal<Texts>
  readonly fields: ReadonlySignal<readonly Field[]>
  readonly answer: ReadonlySignal<Answer>
  /** the address that brings these texts back */
  readonly hash: ReadonlySignal<string>
  readonly isTouched: ReadonlySignal<boolean>
  readonly type: (key: string, text: string) => void
  readonly stop: () => void
  readonly runAgain: () => void
  readonly dispose: () => void
}

/**
 * Opens a check on the texts of an address. `express` works out typed calculations; it may read signals, and gives
 * undefined while it is still being fetched.
 */
export function createCheck(check: Check, query: readonly Pair[], express: Express): CheckModel {
  const opened = splitQuery(query, check.inputs)
  const texts = signal<Texts>(opened.texts)
  const isTouched = signal(false)
  const fields = computed(() => readFields(check, texts.value, express))
  const hash = computed(() => hashOf('check', check.id, pairsOf(check.inputs, texts.value, opened.strangers)))
  const runner = createRunner()
  const stopRunning = effect(() => runner.start(() => evaluate(check, fields.value)))
  return {
    check,
    strangers: opened.strangers,
    texts,
    fields,
    answer: runner.answer,
    hash,
    isTouched,
    type: (key, text) => {
      isTouched.value = true
      texts.value = { ...texts.peek(), [key]: text }
    },
    stop: runner.stop,
    runAgain: () => runner.start(() => evaluate(check, fields.peek())),
    dispose: () => {
      stopRunning()
      runner.drop()
    },
  }
}

type Runner = {
  readonly answer: ReadonlySignal<Answer>
  readonly start: (begin: () => Generator<Progress, Result>) => void
  readonly stop: () => void
  readonly drop: () => void
}

function createRunner(): Runner {
  const answer = signal<Answer>({ is: 'working', doneFrac: 0, slow: false, previous: undefined })
  let turn: ReturnType<typeof setTimeout> | undefined
  let run = 0

  const drop = () => {
    run += 1
    clearTimeout(turn)
  }
  const advance = (mine: number, running: Generator<Progress, Result>, startedMs: number) => {
    if (mine !== run) return
    try {
      const step = sliceOf(running)
      if (step.done) {
        answer.value = { is: 'done', result: step.value }
        return
      }
      const slow = performance.now() - startedMs > SLOW_AFTER_MS
      answer.value = { is: 'working', doneFrac: step.value.doneFrac, slow, previous: previousOf(answer.peek()) }
      turn = setTimeout(() => advance(mine, running, startedMs))
    } catch (error) {
      answer.value = { is: 'broken', message: error instanceof Error ? error.message : String(error) }
    }
  }
  return {
    answer,
    start: (begin) => {
      drop()
      const running = begin()
      const mine = run
      untracked(() => advance(mine, running, performance.now()))
    },
    stop: () => {
      drop()
      answer.value = { is: 'stopped' }
    },
    drop,
  }
}

/** Drives the generator until its time is up; a short check ends within its first slice. */
function sliceOf(running: Generator<Progress, Result>): IteratorResult<Progress, Result> {
  const untilMs = performance.now() + SLICE_MS
  let step = running.next()
  while (!step.done && performance.now() < untilMs) step = running.next()
  return step
}

function previousOf(answer: Answer): Result | undefined {
  if (answer.is === 'done') return answer.result
  return answer.is === 'working' ? answer.previous : undefined
}

/** The texts `check` opens with for a line: what was prefilled wins, then what the resolver knows of the line. */
export function pairsForLine(
  check: Check,
  line: Line,
  prefill: Readonly<Record<string, string>>,
  express?: Express,
): readonly Pair[] {
  const known = textsForCheck(check, line, express)
  const texts: Record<string, string> = {}
  for (const input of check.inputs) {
    const text = prefill[input.key] ?? known[input.key]
    if (text !== undefined && (prefill[input.key] !== undefined || suits(input, text))) texts[input.key] = text
  }
  return pairsOf(check.inputs, texts)
}

/** Facts a check holds by now: what was typed, and the outputs that are facts themselves. */
export function factsOf(check: Check, texts: Texts, result: Result | undefined): ReadonlyMap<FactKey, string> {
  const facts = new Map<FactKey, string>()
  for (const output of check.outputs) {
    const cell = result?.ok ? result.outputs[output.key]?.cell : undefined
    if (cell?.is === 'si' && 'quantity' in output && isFact(output.key))
      facts.set(output.key, printText(cell.si, output.quantity))
  }
  for (const { key, fact, defaultText } of check.inputs) {
    const text = texts[key] ?? defaultText ?? ''
    if (text.trim() !== '') facts.set(fact, text)
  }
  return facts
}

function isFact(key: string): key is FactKey {
  return Object.hasOwn(FACTS, key)
}

/** Whether a text that one check accepts can stand in this input of another: one number where one is asked, a known choice. */
function suits(input: Input, text: string): boolean {
  if (text.trim() === '') return false
  if (input.type.is === 'choice') return input.type.options.some((option) => option.value === text)
  return !text.includes(';') || (input.type.is === 'number' && input.type.many === true)
}

/** The line with what was typed in a check; an emptied field takes its fact off. Results never enter. */
export function lineWith(line: Line, check: Check, texts: Texts): Line {
  const facts: { [K in FactKey]?: Fact } = { ...line.facts }
  for (const { key, fact } of check.inputs) {
    const text = texts[key]
    if (text === undefined) continue
    if (text.trim() === '') delete facts[fact]
    else if (facts[fact]?.text !== text) facts[fact] = { text, origin: { by: 'user' } }
  }
  return { ...line, facts }
}

export type Onward = { readonly check: Check; readonly hash: string; readonly sharedCount: number }

/** Other checks that can use these facts, those that share most first. */
export function onwardFrom(
  check: Check,
  facts: ReadonlyMap<FactKey, string>,
  checks: readonly Check[],
): readonly Onward[] {
  return checks
    .filter((other) => other.id !== check.id)
    .map((other) => {
      const shared = other.inputs.filter((input) => suits(input, facts.get(input.fact) ?? ''))
      const texts = Object.fromEntries(shared.map((input) => [input.key, facts.get(input.fact) ?? '']))
      return { check: other, hash: hashOf('check', other.id, pairsOf(other.inputs, texts)), sharedCount: shared.length }
    })
    .filter((onward) => onward.sharedCount > 0)
    .sort((a, b) => b.sharedCount - a.sharedCount)
}
