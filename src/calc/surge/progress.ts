/** Progress of a part of a longer run. */
import type { Progress } from '../types.ts'

/** Drives `running` and reports its progress as a part of the whole, `from` to `to` of 1. */
export function* within<T>(running: Generator<Progress, T>, from: number, to: number): Generator<Progress, T> {
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
    yield { doneFrac: from + (to - from) * step.value.doneFrac }
  }
}

/** Drives `running` so that its progress never runs back, whatever its parts report. */
export function* rising<T>(running: Generator<Progress, T>): Generator<Progress, T> {
  let most = 0
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
    most = Math.min(1, Math.max(most, step.value.doneFrac))
    yield { doneFrac: most }
  }
}
