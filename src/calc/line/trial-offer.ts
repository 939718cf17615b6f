/** Values to try on a line: three from its window, worked out without what a trial says of it. */
import { wordlessWindow } from '../checks/window/wordless.ts'
import { offeredValues } from '../trial/zones.ts'
import type { FactKey, Line } from '../types.ts'
import { isRefused } from './evaluate.ts'
import type { Express } from './fields.ts'
import { resolve } from './resolver.ts'
import { withFact } from './with-fact.ts'

const OF_TRIALS: readonly FactKey[] = [
  'trialSteps',
  'trialNoise',
  'trialLeastF',
  'trialMostF',
  'trialBelowF',
  'trialFromF',
  'trialSideReOhm',
  'trialSideImOhm',
]

/** Least and most of one capacitor alone, in farads; each undefined while it is not known, or the line is barred. */
export function aloneOn(
  line: Line,
  express?: Express,
): { readonly leastF: number | undefined; readonly mostF: number | undefined } {
  const bare = OF_TRIALS.reduce<Line>((now, fact) => withFact(now, fact, undefined), { ...line, trials: [] })
  const alone = withFact(bare, 'topology', { text: 'C', origin: { by: 'user' } })
  const figures = resolve(alone, express).figures(wordlessWindow)
  if (isRefused(figures)) return { leastF: undefined, mostF: undefined }
  const { leastCapacitanceF, mostCapacitanceF } = figures.values
  return { leastF: leastCapacitanceF, mostF: mostCapacitanceF }
}

/** Under the least, inside, near the most, in farads; empty while neither end is known. */
export function offeredOn(line: Line, express?: Express): readonly number[] {
  const { leastF, mostF } = aloneOn(line, express)
  return offeredValues(leastF, mostF)
}
