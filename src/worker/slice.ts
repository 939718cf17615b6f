/** One slice of a long computation, wherever it runs. */

/** A step that has found a part of the answer, which may be shown before the rest is there. */
export type Found<Part = unknown> = { readonly found?: Part }

/**
 * Drives the generator until its time is up, or something is found; a short computation ends within its first slice.
 */
export function sliceOf<Y, R>(running: Generator<Y, R>, sliceMs: number): IteratorResult<Y, R> {
  const untilMs = performance.now() + sliceMs
  let step = running.next()
  while (!step.done && foundIn(step.value) === undefined && performance.now() < untilMs) step = running.next()
  return step
}

/** What a step has found, where it is one that finds anything. */
export const foundIn = (step: unknown): unknown =>
  typeof step === 'object' && step !== null && 'found' in step ? step.found : undefined

/** A progress bar moves no oftener. */
export const TOLD_EVERY_MS = 50
