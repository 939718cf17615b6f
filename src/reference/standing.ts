/**
 * How we know a figure.
 * `read`: read in the source named (perhaps only in an excerpt or a secondary copy).
 * `memory`: recalled, not opened. `practice`: common engineering practice without a printed source.
 * `derived`: computed here from stated inputs.
 */
export type Standing = 'read' | 'memory' | 'practice' | 'derived'

/** Words a reader sees for a standing. */
export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  read: 'read in the source',
  memory: 'from memory',
  practice: 'common practice',
  derived: 'derived',
}

/** A reference to a row of `sources.ts`, with the clause and how well it is known. */
export type Cited<Id extends string = string> = {
  readonly id: Id
  readonly clause?: string
  readonly standing: Standing
}
