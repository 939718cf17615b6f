/** A long computation on this thread, which draws in between. */
import type { Progress } from '../calc/types.ts'
import { foundIn, sliceOf, TOLD_EVERY_MS } from '../worker/slice.ts'
import { stopped } from './stopped.ts'

/** Long enough for a frame at 60 Hz to keep half of its time. */
const SLICE_MS = 8

/**
 * `sliceMs`: how long it computes before it lets the page draw. Rejects with an `AbortError` when `signal` is set off, and
 * with the computation's own error. Every find is told.
 */
export function inSlices<P extends Progress, R>(
  running: Generator<P, R>,
  onProgress: (progress: P) => void,
  signal: AbortSignal,
  sliceMs = SLICE_MS,
): Promise<R> {
  return new Promise((resolve, reject) => {
    let toldMs = performance.now()
    const advance = () => {
      if (signal.aborted) return reject(stopped())
      try {
        const step = sliceOf(running, sliceMs)
        if (step.done) return resolve(step.value)
        if (foundIn(step.value) !== undefined || performance.now() - toldMs >= TOLD_EVERY_MS) {
          toldMs = performance.now()
          onProgress(step.value)
        }
        setTimeout(advance)
      } catch (error) {
        reject(error)
      }
    }
    advance()
  })
}
