/** Works an answer out in slices, so that the screen stays alive, and keeps the one before it. */
import { type ReadonlySignal, signal, untracked } from '@preact/signals'
import type { Progress, Refused, Result, Success } from '../calc/types.ts'

/**
 * `done`: the answer belongs to the fields as they are; where these are refused, `previous` is the last answer there was.
 * `working`: it does not yet; `previous` may be shown, marked as old, and after a moment `slow` asks for progress and a
 * way to stop. `stopped`: the user stopped it. `broken`: the check itself failed, which is our fault and is said so.
 */
export type Answer =
  | { readonly is: 'done'; readonly result: Result; readonly previous?: Success }
  | { readonly is: 'working'; readonly doneFrac: number; readonly slow: boolean; readonly previous: Result | undefined }
  | { readonly is: 'stopped' }
  | { readonly is: 'broken'; readonly message: string }

export type Standing = {
  /** the answer to be read: to the fields as they are, or the last one there was */
  readonly shown: Success | undefined
  readonly isLive: boolean
  /** why there is no answer to the fields as they are */
  readonly refused: Refused | undefined
}

/** What there is to read of an answer. */
export function standing(answer: Answer): Standing {
  const isDone = answer.is === 'done'
  const result = isDone ? answer.result : answer.is === 'working' ? answer.previous : undefined
  if (result === undefined) return { shown: undefined, isLive: false, refused: undefined }
  if (result.ok) return { shown: result, isLive: isDone, refused: undefined }
  return { shown: isDone ? answer.previous : undefined, isLive: false, refused: result }
}

/** Long enough for a frame at 60 Hz to keep half of its time. */
const SLICE_MS = 8
/** Shorter waits are not worth a progress bar. */
const SLOW_AFTER_MS = 200

type Runner = {
  readonly answer: ReadonlySignal<Answer>
  readonly start: (begin: () => Generator<Progress, Result>) => void
  /** the answer waits: what was last answered stays, marked as old */
  readonly hold: () => void
  readonly stop: () => void
  readonly drop: () => void
}

/** Runs one computation at a time; a new one takes the place of the one before, whose answer is never painted as its own. */
export function createRunner(): Runner {
  const answer = signal<Answer>({ is: 'working', doneFrac: 0, slow: false, previous: undefined })
  let last: Success | undefined
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
        const result = step.value
        if (result.ok) last = result
        answer.value = result.ok || last === undefined ? { is: 'done', result } : { is: 'done', result, previous: last }
        return
      }
      const slow = performance.now() - startedMs > SLOW_AFTER_MS
      answer.value = { is: 'working', doneFrac: step.value.doneFrac, slow, previous: last ?? previousOf(answer.peek()) }
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
    hold: () => {
      drop()
      const previous = untracked(() => last ?? previousOf(answer.peek()))
      answer.value = { is: 'working', doneFrac: 0, slow: false, previous }
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
