/**
 * What is worked out of measured files, one after the other: what is asked for while something is under way waits for it.
 *
 * `doing(asked)`       does it in its turn
 * `traceWork`          what is under way, how far, and what waits for it
 * `stopTraceWork()`    a way out that leaves everything as it was; what waited goes on
 * `leaveTraceWork()`   ends what waits, too
 */
import { type ReadonlySignal, signal } from '@preact/signals'

export type TraceWork = { readonly what: string; readonly doneFrac: number; readonly next: readonly string[] }

type Asked<T, R> = {
  readonly what: string
  /** asked for again about the same while it has not ended, only the newest counts */
  readonly about: unknown
  /** can be stopped at any time, and changes nothing */
  readonly job: (tell: (doneFrac: number) => void, stop: AbortSignal) => Promise<T>
  /** makes something of it, before the next begins: not to be stopped any more */
  readonly take: (done: T) => R | Promise<R>
}

type Turn = { readonly what: string; readonly about: unknown; readonly stop: AbortController; doneFrac: number }

const work = signal<TraceWork | undefined>(undefined)
export const traceWork: ReadonlySignal<TraceWork | undefined> = work

let turns: readonly Turn[] = []
let last: Promise<unknown> = Promise.resolve()

function stayOnly(isStaying: (turn: Turn) => boolean): void {
  turns = turns.filter(isStaying)
  tell()
}

function tell(): void {
  const [now, ...next] = turns
  work.value = now && { what: now.what, doneFrac: now.doneFrac, next: next.map(({ what }) => what) }
}

function end(isMeant: (turn: Turn, at: number) => boolean): void {
  const meant = new Set(turns.filter(isMeant))
  for (const { stop } of meant) stop.abort()
  stayOnly((one) => !meant.has(one))
}

export const stopTraceWork = (): void => end((_turn, at) => at === 0)
export const leaveTraceWork = (): void => end(() => true)

/** Does it once what was asked for before has ended; undefined where it was stopped. */
export function doing<T, R>({ what, about, job, take }: Asked<T, R>): Promise<R | undefined> {
  end((turn) => turn.about === about)
  const turn: Turn = { what, about, stop: new AbortController(), doneFrac: 0 }
  turns = [...turns, turn]
  tell()
  const done = last.then(() => inTurn(turn, job, take))
  last = done.catch(() => undefined)
  return done
}

async function inTurn<T, R>(turn: Turn, job: Asked<T, R>['job'], take: Asked<T, R>['take']): Promise<R | undefined> {
  const { signal: stopped } = turn.stop
  if (stopped.aborted) return undefined
  const telling = (doneFrac: number): void => {
    turn.doneFrac = doneFrac
    tell()
  }
  try {
    const done = await job(telling, stopped)
    if (stopped.aborted) return undefined
    stayOnly((one) => one !== turn)
    return await take(done)
  } catch (error) {
    if (stopped.aborted) return undefined
    throw error
  } finally {
    stayOnly((one) => one !== turn)
  }
}
