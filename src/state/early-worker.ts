/** The workers of checks whose answer is never tried on the screen's own thread. */
import type { CheckId } from '../calc/types.ts'
import { type JobName, readyWorker } from './work.ts'

/** Their next answer may take twenty times the last, and a single step of it more than a slice. */
const AWAY: Readonly<Partial<Record<CheckId, JobName>>> = { window: 'window', surge: 'surge' }

/** The worker that a check is always answered by. */
export const awayFor = (check = ''): JobName | undefined => (AWAY as Readonly<Record<string, JobName>>)[check]

/** Starts the worker of a check that is being opened, beside the parts of its screen. */
export function readyFor(check: string | undefined): void {
  const is = awayFor(check)
  if (is !== undefined) readyWorker(is)
}
