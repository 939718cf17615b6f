/** Works an answer out in slices, so that the screen stays alive, and keeps the one before it. */
import { type ReadonlySignal, signal, untracked } from '@preact/signals'
import type { Progress, Refused, Result, Success } from '../calc/types.ts'
import { sliceOf } from '../worker/slice.ts'

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
/** What took more work elsewhere stays there: tried here first, a slice of it would be lost at every key. */
const WORTH_TRYING_MS = SLICE_MS / 2
/** Shorter waits are not worth a progress bar. */
const SLOW_AFTER_MS = 200

/** The same computation away from the screen; undefined where there is no such place. `onSpent`: what it took there. */
export type Elsewhere = (
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
  onSpent: (spentMs: number) => void,
) => Promise<Result> | undefined

type Runner = {
  readonly answer: ReadonlySignal<Answer>
  /** runs at once; what is not done after a slice goes on `elsewhere` */
  readonly start: (begin: () => Generator<Progress, Result>, elsewhere?: Elsewhere) => void
  /** the answer waits: what was last answered stays, marked as old */
  readonly hold: () => void
  readonly stop: () => void
  readonly drop: () => void
}

/**
 * Runs one computation at a time; a new one takes the place of the one before, whose answer is never painted as its own.
 * `staysAway`: none is tried here while there is an elsewhere, whatever the last one took.
 */
export function createRunner(staysAway = false): Runner {
  const answer = signal<Answer>({ is: 'working', doneFrac: 0, slow: false, previous: undefined })
  let last: Success | undefined
  let turn: ReturnType<typeof setTimeout> | undefined
  let run = 0
  let away: AbortController | undefined
  /** the last run took longer than a slice: the next one goes elsewhere without trying */
  let isLong = staysAway

  const drop = () => {
    run += 1
    clearTimeout(turn)
    away?.abort()
  }
  const finish = (result: Result) => {
    if (result.ok) last = result
    answer.value = result.ok || last === undefined ? { is: 'done', result } : { is: 'done', result, previous: last }
  }
  const fail = (error: unknown) => {
    answer.value = { is: 'broken', message: error instanceof Error ? error.message : String(error) }
  }
  const goOn = ({ doneFrac }: Progress, startedMs: number) => {
    const slow = performance.now() - startedMs > SLOW_AFTER_MS
    answer.value = { is: 'working', doneFrac, slow, previous: last ?? previousOf(answer.peek()) }
  }
  const advance = (mine: number, running: Generator<Progress, Result>, startedMs: number) => {
    if (mine !== run) return
    try {
      const step = sliceOf(running, SLICE_MS)
      isLong = !step.done
      if (step.done) return finish(step.value)
      goOn(step.value, startedMs)
      turn = setTimeout(() => advance(mine, running, startedMs))
    } catch (error) {
      fail(error)
    }
  }
  /** Whether the computation went elsewhere. */
  const leave = (mine: number, elsewhere: Elsewhere, startedMs: number): boolean => {
    away = new AbortController()
    const isMine = () => mine === run
    const asked = elsewhere(
      (progress) => isMine() && goOn(progress, startedMs),
      away.signal,
      (spentMs) => {
        isLong = staysAway || spentMs > WORTH_TRYING_MS
      },
    )
    if (asked === undefined) return false
    goOn({ doneFrac: 0 }, startedMs)
    asked.then(
      (result) => {
        if (!isMine()) return
        // nothing is left to be stopped: to stop it all the same makes an exception at every key
        away = undefined
        finish(result)
      },
      (error) => isMine() && fail(error),
    )
    return true
  }
  return {
    answer,
    start: (begin, elsewhere) => {
      drop()
      const mine = run
      const startedMs = performance.now()
      untracked(() => {
        if (isLong && elsewhere !== undefined && leave(mine, elsewhere, startedMs)) return
        advance(mine, begin(), startedMs)
        if (isLong && elsewhere !== undefined && leave(mine, elsewhere, startedMs)) clearTimeout(turn)
      })
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

function previousOf(answer: Answer): Result | undefined {
  if (answer.is === 'done') return answer.result
  return answer.is === 'working' ? answer.previous : undefined
}
