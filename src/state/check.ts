/** What a check screen shows and does: a Line in, fields and an answer out, computed in slices. */
import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import { evaluate } from '../calc/line/evaluate.ts'
import type { Express, Field } from '../calc/line/fields.ts'
import { emptied, resolve } from '../calc/line/resolver.ts'
import { withFact } from '../calc/line/with-fact.ts'
import { providerById } from '../calc/providers.ts'
import type { Check, Fact, FactKey, Input, Line, Success, Use } from '../calc/types.ts'
import { checkJob } from '../worker/answer.ts'
import type { Desk, Write } from './desk.ts'
import { awayFor } from './early-worker.ts'
import { pairsOf } from './query.ts'
import { hashOf, type Pair } from './router.ts'
import { type Answer, createRunner, type Elsewhere } from './runner.ts'
import { type Displaced, shownFields, stable } from './shown-fields.ts'
import { closeStep, lastStep, noteStep, takeStep, undoSteps } from './undo.ts'
import { pairsOfVariants, type Variants } from './variants.ts'
import { hasWorker, runInWorker } from './work.ts'

export type { Answer }

/** What is typed counts as said once nothing was typed for this long; until then a refusal waits. */
export const PAUSE_MS = 900

export type CheckModel = {
  readonly check: Check
  readonly line: ReadonlySignal<Line>
  /** pairs of the address this check has no input for; kept in the address and reported */
  readonly strangers: readonly Pair[]
  readonly fields: ReadonlySignal<readonly Field[]>
  readonly answer: ReadonlySignal<Answer>
  /** the address that brings this answer back elsewhere: everything it rests on, typed or taken over */
  readonly hash: ReadonlySignal<string>
  readonly isTouched: ReadonlySignal<boolean>
  /** what stands beside it for comparison */
  readonly variants: ReadonlySignal<Variants>
  readonly setVariants: (next: Variants) => void
  /**
   * the field that is being typed in, while its text cannot be read yet ("4" on the way to "4.7 nF"): it is not refused
   * and the last answer stays, marked as old, until typing pauses or the field is left
   */
  readonly unsaidKey: ReadonlySignal<string | undefined>
  /** the change that can be taken back next, by the name of its field; undefined: nothing was changed here */
  readonly undoable: ReadonlySignal<string | undefined>
  readonly undo: () => void
  /** enters several values at once, as one step: a row of a table, a rung of a ladder */
  readonly use: (uses: readonly Use[]) => void
  /** the field is left: what stands in it counts as said */
  readonly leave: () => void
  /** writes what was typed to the Line, at every key; `base`: the text the field showed before */
  readonly type: (key: string, text: string, base?: string) => void
  /** takes what another source says in place of what stands in the field; undefined: what comes when nothing is typed */
  readonly take: (key: string, other: Fact | undefined) => void
  /** takes one of several texts typed in different windows */
  readonly takeText: (key: string, text: string, left: readonly string[]) => void
  readonly stop: () => void
  readonly runAgain: () => void
  readonly dispose: () => void
}

export type Opened = {
  readonly line: ReadonlySignal<Line>
  readonly write: Write
  readonly takeText?: Desk['takeText']
  readonly ownKeys?: readonly string[]
  readonly strangers?: readonly Pair[]
  readonly variants?: Variants
  /** keeps the variants where the Line is kept */
  readonly keepVariants?: (next: Variants) => void
}

/**
 * Opens a check on a Line. Only what is typed is written to it; what another check, the kind or an answer says is
 * taken over anew each time. `express` works out typed calculations; it may read signals, and gives undefined while it
 * is still being fetched.
 */
export function createCheck(check: Check, opened: Opened, express: Express): CheckModel {
  const { line, write, strangers = [] } = opened
  const isTouched = signal(false)
  const ownKeys = signal<ReadonlySet<string>>(new Set(opened.ownKeys))
  const displaced = signal<Displaced>(new Map())
  const keepFields = stable<Field>(({ text, state, value, issue, origin, others, unsuited, rivals }) => [
    text,
    state,
    value,
    issue?.message,
    origin,
    others,
    unsuited,
    rivals,
  ])
  const keepTexts = stable<Field>(({ text, state }) => [text, state])
  const fields = computed(() =>
    keepFields(
      shownFields(
        { resolution: resolve(line.value, express), check, ownKeys: ownKeys.value, displaced: displaced.value },
        express,
      ),
    ),
  )
  // A change the answer does not read, as where a text comes from, computes nothing.
  const judged = computed(() => keepTexts(fields.value))
  const variants = signal<Variants>(opened.variants ?? {})
  const hash = computed(() =>
    hashFor(check, fields.value, [...pairsOfVariants(check.inputs, variants.value), ...strangers]),
  )
  const typing = signal<string | undefined>(undefined)
  const unsaidKey = computed(() => {
    const field = typing.value === undefined ? undefined : fields.value.find(({ key }) => key === typing.value)
    return field !== undefined && UNSAID.has(field.state) ? field.key : undefined
  })
  let pause: ReturnType<typeof setTimeout> | undefined
  const leave = () => {
    clearTimeout(pause)
    closeStep()
    typing.value = undefined
  }
  const noteTyping = (key: string) => {
    clearTimeout(pause)
    typing.value = key
    pause = setTimeout(leave, PAUSE_MS)
  }
  const runner = createRunner(awayFor(check.id) !== undefined)
  const stopRunning = effect(() => {
    const read = judged.value
    if (unsaidKey.value === undefined) runner.start(() => evaluate(check, read), elsewhere(check, read))
    else runner.hold()
  })
  const inputOf = (key: string): Input | undefined => check.inputs.find((input) => input.key === key)

  /** Writes one fact, remembers what is lost by it, and notes whether the field's text is its own from now on. */
  const put = (input: Input, next: Fact | undefined, isOwn: boolean, shown?: string) => {
    const { id, facts } = line.peek()
    const before = facts[input.fact]
    const field = fields.peek().find(({ key }) => key === input.key)
    const isLost = before !== undefined && (before.origin.by !== 'user' || field?.unsuited === before)
    batch(() => {
      if (isLost && next !== before) displaced.value = new Map(displaced.peek()).set(`${id} ${input.fact}`, before)
      const others = [...ownKeys.peek()].filter((own) => own !== input.key)
      ownKeys.value = new Set(isOwn ? [...others, input.key] : others)
      isTouched.value = true
      // What a field takes over is no text of the Line: nothing was read there.
      const isTakenOver = before === undefined || field?.text !== before.text
      write(input.fact, next, shown === field?.text && isTakenOver ? (before?.text ?? '') : shown)
    })
  }
  const before = (input: Input) => ({ fact: input.fact, before: line.peek().facts[input.fact] })
  const entered = (input: Input, text: string): Fact | undefined =>
    text.trim() === '' ? emptied(line.peek(), input, express) : { text, origin: { by: 'user' } }
  return {
    check,
    line,
    strangers,
    fields,
    undoable: computed(() => (undoSteps.value.length === 0 ? undefined : lastStep(line.value.id)?.what)),
    undo: () => {
      leave()
      const step = takeStep(line.peek().id)
      batch(() => {
        for (const change of step?.changes ?? [])
          write(change.fact, change.before, line.peek().facts[change.fact]?.text ?? '')
        isTouched.value = true
      })
    },
    use: (uses) => {
      leave()
      const given = uses.flatMap(({ key, text }) => {
        const input = inputOf(key)
        return input === undefined || (fields.peek().find((field) => field.key === key)?.text ?? '') === text
          ? []
          : [{ input, text }]
      })
      const [first] = given
      if (first === undefined) return
      noteStep(line.peek().id, { what: first.input.label, changes: given.map(({ input }) => before(input)) })
      batch(() => {
        for (const { input, text } of given) put(input, entered(input, text), true)
      })
    },
    answer: runner.answer,
    hash,
    isTouched,
    variants,
    setVariants: (next) => {
      batch(() => {
        variants.value = next
        isTouched.value = true
      })
      opened.keepVariants?.(next)
    },
    unsaidKey,
    leave,
    type: (key, text, base) => {
      const input = inputOf(key)
      if (input === undefined) return
      const isTyped = input.type.is !== 'choice' && input.type.is !== 'flag'
      noteStep(line.peek().id, { what: input.label, changes: [before(input)] }, isTyped)
      batch(() => {
        if (isTyped) noteTyping(key)
        put(input, entered(input, text), true, base)
      })
    },
    take: (key, other) => {
      const input = inputOf(key)
      if (input === undefined) return
      leave()
      noteStep(line.peek().id, { what: input.label, changes: [before(input)] })
      put(input, other && takenFact(line.peek(), input.fact, other, express), false)
    },
    takeText: (key, text, left) => {
      const input = inputOf(key)
      if (input !== undefined) opened.takeText?.(input.fact, text, left)
    },
    stop: runner.stop,
    runAgain: () => runner.start(() => evaluate(check, judged.peek()), elsewhere(check, judged.peek())),
    dispose: () => {
      clearTimeout(pause)
      stopRunning()
      runner.drop()
    },
  }
}

/** The same answer worked out by the worker, where there is one. */
const elsewhere =
  (check: Check, fields: readonly Field[]): Elsewhere =>
  (onProgress, signal, onSpent) => {
    const is = jobOf(check)
    return hasWorker(is) ? runInWorker({ is, input: checkJob(check, fields) }, onProgress, signal, onSpent) : undefined
  }

/** The worker that holds this check and least beside it. */
export const jobOf = ({ id }: Check): 'check' | 'provider' | 'window' | 'surge' =>
  awayFor(id) ?? (providerById(id) === undefined ? 'check' : 'provider')

/** States a text passes through on the way to one that can be read. */
const UNSAID: ReadonlySet<Field['state']> = new Set(['refused', 'missing', 'pending'])

/** What to write so that `other` fills the field: nothing where it comes by itself, itself, or typed. */
function takenFact(line: Line, fact: FactKey, other: Fact, express: Express): Fact | undefined {
  const fills = (next: Fact | undefined) => {
    const [best] = resolve(withFact(line, fact, next), express).claims(fact)
    return (best?.text ?? '') === other.text
  }
  if (fills(undefined)) return undefined
  return fills(other) ? other : { text: other.text, origin: { by: 'user' } }
}

/** Every text the answer rests on, typed or taken over; what a field cannot take is no part of it. */
function hashFor(check: Check, fields: readonly Field[], beside: readonly Pair[]): string {
  const texts = Object.fromEntries(fields.map(({ key, text }) => [key, text]))
  return hashOf('check', check.id, pairsOf(check.inputs, texts, beside))
}

/** The address that brings a check of this Line to somebody else. */
export const addressFor = (check: Check, line: Line, express?: Express): string =>
  hashFor(check, resolve(line, express).fields(check), [])

/** What is read of a check to tell whether it can use what is known. */
type Other = Pick<Check, 'id' | 'title' | 'question'> & { readonly inputs: readonly Pick<Input, 'fact'>[] }

export type Onward = { readonly check: Other; readonly sharedCount: number }

/**
 * Other checks that can use what is known of this Line, those that share most with it first. `shown`: its answer, where
 * that was worked out elsewhere: what it provides is read off it, and not worked out once more.
 */
export function onwardFrom(
  check: Check,
  line: Line,
  checks: readonly Other[],
  express?: Express,
  shown?: Success,
): readonly Onward[] {
  const resolution = resolve(line, express)
  const known = new Set(resolution.fields(check).flatMap(({ text, input }) => (text.trim() === '' ? [] : [input.fact])))
  const isThere = (fact: FactKey, key?: string): boolean =>
    shown !== undefined && key !== undefined
      ? shown.outputs[key]?.cell.is === 'si' || resolution.stated(fact) !== undefined
      : resolution.fact(fact) !== undefined
  for (const { provides, key } of check.outputs)
    if (provides !== undefined && isThere(provides, key)) known.add(provides)
  for (const { provides } of check.lists ?? []) if (isThere(provides)) known.add(provides)
  const isShared = ({ fact }: Pick<Input, 'fact'>) => known.has(fact)
  return checks
    .filter((other) => other.id !== check.id)
    .map((other) => ({ check: other, sharedCount: other.inputs.filter(isShared).length }))
    .filter(({ sharedCount }) => sharedCount > 0)
    .sort((a, b) => b.sharedCount - a.sharedCount)
}
