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
