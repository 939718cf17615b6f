/** The workers of checks whose answer is never tried on the screen's own thread. */
import type { CheckId } from '../calc/types.ts'
import { type JobName, readyWorker } from './work.ts'

/** Their next answer may take twenty times the last, and a single step of it more than a slice. */
const AWAY = ['window', 'surge'] as const satisfies readonly (CheckId & JobName)[]

/** The worker that a check is always answered by; it has the name of the check. */
export const awayFor = (check: string | undefined): (typeof AWAY)[number] | undefined =>
  AWAY.find((one) => one === check)

/** Starts the worker of a check that is being opened, beside the parts of its screen. */
export function readyFor(check: string | undefined): void {
  const is = awayFor(check)
  if (is !== undefined) readyWorker(is)
}
