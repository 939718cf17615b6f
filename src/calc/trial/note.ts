/** A trial as it is noted and put away. */
import type { FactKey } from '../ids.ts'

/** One trial on a line as it was noted: a text for each column, a step between two semicolons; typed, never computed. */
export type Trial = {
  readonly id: string
  /** when it was put away */
  readonly at: string
  readonly steps: string
  readonly places: string
  readonly noise: string
  readonly signal: string
  readonly repeats: string
  readonly times: string
  /** who took the last adapter out, and when; empty = not recorded */
  readonly removed: string
}

/** The columns of a trial, in the order they are noted. */
export const TRIAL_COLUMNS = ['steps', 'places', 'noise', 'signal', 'repeats', 'times'] as const
export type TrialColumn = (typeof TRIAL_COLUMNS)[number]

/** The trial that counts on a line: the one under way, or the last one that was put away. */
export const TRIAL_NOTED = 'noted'

/** The facts of the trial under way, by the column they are put away as. */
export const NOTED_FACTS: { readonly [K in FactKey]?: TrialColumn | 'removed' } = {
  trialSteps: 'steps',
  trialPlaces: 'places',
  trialNoise: 'noise',
  trialSignal: 'signal',
  trialRepeats: 'repeats',
  trialTimes: 'times',
  trialRemoved: 'removed',
}
