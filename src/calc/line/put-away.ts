/** What the trials that were put away on a line still say: where none is under way, and beside one that is. */
import { NOTED_FACTS } from '../trial/note.ts'
import type { Fact, FactKey, Figures, Line, Refused, Trial } from '../types.ts'
import { isRefused } from './evaluate.ts'

/** A column of the last trial that was put away, where none is under way. */
export function notedFact(line: Line, fact: FactKey): Fact | undefined {
  const last = line.trials.at(-1)
  const column = NOTED_FACTS[fact]
  if (last === undefined || column === undefined || isUnderWay(line)) return undefined
  return { text: last[column], origin: { by: 'trial', id: last.id } }
}

/** Whether a trial that was put away says this, though the one under way was emptied again. */
export const wasPutAway = ({ trials }: Line, fact: FactKey): boolean =>
  trials.length > 0 && NOTED_FACTS[fact] !== undefined

const isUnderWay = ({ facts }: Line): boolean => facts.trialSteps !== undefined

/** Whether the trial under way has anything in a column that tells what a part did. */
const isReadYet = ({ facts: { trialNoise, trialSignal } }: Line): boolean =>
  [trialNoise, trialSignal].some((column) => /[^;\s]/u.test(column?.text ?? ''))

/** The line as it was when that trial was the last on it. */
function lineOf(line: Line, trial: Trial): Line {
  const facts = Object.fromEntries(
    Object.entries(line.facts).filter(([key]) => NOTED_FACTS[key as FactKey] === undefined),
  )
  return { ...line, facts, trials: [trial] }
}

/**
 * The figures of the trial check on a line, as other checks count them. While nothing is read in a trial that was begun, the
 * last one counts. What harmed the signal in any of them still does: a later trial of other parts takes nothing of that
 * back. What did not clear the noise may since have been mended in the line, and counts as the last trial has it.
 */
export function triedOn(line: Line, figuresOn: (line: Line) => Figures | Refused): Figures | Refused {
  const last = line.trials.at(-1)
  const isEmpty = isUnderWay(line) && !isReadYet(line)
  const base = figuresOn(isEmpty && last !== undefined ? lineOf(line, last) : line)
  if (isRefused(base)) return base
  const before = isUnderWay(line) && !isEmpty ? line.trials : line.trials.slice(0, -1)
  const earlier = before.map((trial) => figuresOn(lineOf(line, trial)))
  const fromF = Math.min(...[base, ...earlier].map(harmedFromF))
  return Number.isFinite(fromF) ? { ...base, values: { ...base.values, fromF } } : base
}

const harmedFromF = (one: Figures | Refused): number =>
  isRefused(one) ? Number.POSITIVE_INFINITY : (one.values['fromF'] ?? Number.POSITIVE_INFINITY)
