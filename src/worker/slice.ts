/** One slice of a long computation, wherever it runs. */

/** Drives the generator until its time is up; a short computation ends within its first slice. */
export function sliceOf<Y, R>(running: Generator<Y, R>, sliceMs: number): IteratorResult<Y, R> {
  const untilMs = performance.now() + sliceMs
  let step = running.next()
  while (!step.done && performance.now() < untilMs) step = running.next()
  return step
}

/** A progress bar moves no oftener. */
export const TOLD_EVERY_MS = 50
