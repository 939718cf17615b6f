/** What a trial proves, leaves open and excludes, in farads; and the value to try next. */
import { E6, E12 } from '../../reference/preferred-values.ts'
import { countedNumbers, type TrialReading } from './four-numbers.ts'
import type { TrialOutcome } from './outcomes.ts'
import { legFarads } from './solve.ts'

export type Zones = {
  /** a part whose least is at or above `leastF` and whose most is at or below `mostF` was shown by this trial; per leg */
  readonly proven: { readonly leastF: number; readonly mostF: number } | undefined
  /** nothing proven: did not clear up to here, per leg, 0 = nothing tried */
  readonly excludedBelowF: number
  /** degraded from here, per leg, infinite = nothing did */
  readonly excludedFromF: number
  /** no capacitor alone does it */
  readonly isShut: boolean
}

/** Whether everything is there that a proof needs: bare first and last, an empty adapter, noise and signal looked at. */
export const isComplete = ({ voids, lacks }: TrialReading): boolean => voids.length === 0 && lacks.length === 0

/**
 * The zones over the tolerance of the adapters (a share): what cleared may have been as much larger, what did no harm as
 * much smaller. Shut where what did not clear is at or above what degraded.
 */
export function zonesOf(reading: TrialReading, adapterFrac: number): Zones {
  const numbers = countedNumbers(reading)
  const leg = (farads: number) => legFarads({ farads, place: reading.place })
  const leastF = leg(numbers.clearedF * (1 + adapterFrac))
  const mostF = leg(numbers.goodF * (1 - adapterFrac))
  return {
    proven: isComplete(reading) && leastF <= mostF ? { leastF, mostF } : undefined,
    excludedBelowF: leg(numbers.notClearedF * (1 + adapterFrac)),
    excludedFromF: leg(numbers.degradedF * (1 - adapterFrac)),
    isShut: numbers.notClearedF >= numbers.degradedF,
  }
}

/** The E6 value nearest the middle of two, by ratio; undefined where none lies between them. Farads. */
export function between(fromF: number, toF: number): number | undefined {
  const middle = Math.sqrt(fromF * toF)
  return nearest(E6, middle, fromF, toF) ?? nearest(E12, middle, fromF, toF)
}

function nearest(series: readonly number[], target: number, above: number, below: number): number | undefined {
  const decade = Math.floor(Math.log10(target))
  return [decade - 1, decade, decade + 1]
    .flatMap((power) => series.map((digit) => Number((digit * 10 ** power).toPrecision(3))))
    .filter((farads) => farads > above * 1.05 && farads < below / 1.05)
    .sort((a, b) => Math.abs(Math.log(a / target)) - Math.abs(Math.log(b / target)))[0]
}

/** The value to try next, and what for; undefined where the trial is void or nothing is open. Farads as marked. */
export type Next = { readonly farads: number; readonly why: 'least' | 'most' | 'larger' | 'smaller' }

/** Ten times as much, as long as nothing was harmed. */
const STEP = 10

export function nextStep(reading: TrialReading, outcomes: readonly TrialOutcome[]): Next | undefined {
  const { notClearedF, clearedF, goodF, degradedF } = countedNumbers(reading)
  const tried = reading.steps.filter(({ part, heard }) => part === 'capacitor' && heard !== 'unread')
  if (reading.voids.length > 0 || tried.length === 0 || notClearedF >= degradedF) return undefined
  const step = (farads: number | undefined, why: Next['why']) => (farads === undefined ? undefined : { farads, why })
  // cleared, and degraded there: the answer lies below
  if (Number.isFinite(clearedF) && clearedF >= degradedF)
    return notClearedF > 0
      ? step(between(Math.max(notClearedF, goodF), degradedF), 'least')
      : step(near(degradedF / STEP), 'smaller')
  if (!Number.isFinite(clearedF)) {
    if (Number.isFinite(degradedF)) return step(between(Math.max(notClearedF, goodF), degradedF), 'least')
    // what did nothing, or no more than the one before it, is not made better by more of it
    const isHopeless = outcomes.some((one) => one === 'no-change' || one === 'levelled' || one === 'worse')
    return notClearedF > 0 && !isHopeless ? step(near(notClearedF * STEP), 'larger') : undefined
  }
  if (goodF < clearedF) return undefined
  return notClearedF > 0 && clearedF / notClearedF > 3 ? step(between(notClearedF, clearedF), 'least') : undefined
}

const near = (farads: number): number => nearest(E6, farads, 0, Number.POSITIVE_INFINITY) ?? farads

/**
 * Three values to try on a window: under its least, inside it, and near its most. Farads, E6, rounded to the inside of
 * what they are for; undefined where a side of the window is not known, or it is shut.
 */
export function offeredValues(leastF: number | undefined, mostF: number | undefined): readonly number[] {
  if (leastF === undefined || !(leastF > 0)) return mostF === undefined || !(mostF > 0) ? [] : atMost(mostF)
  const under = nearest(E6, leastF / 3, 0, leastF)
  const top = mostF === undefined ? undefined : nearest(E6, mostF / 1.2, leastF, mostF * 1.05)
  // apart from the one near the most
  const inside = between(leastF, top ?? mostF ?? leastF * STEP)
  const values = [under, inside, top].filter((farads): farads is number => farads !== undefined)
  return [...new Set(values)].sort((a, b) => a - b)
}

/** Only the signal's side is known: three values a decade apart, the largest near the most. */
function atMost(mostF: number): readonly number[] {
  return [mostF / 120, mostF / 12, mostF / 1.2].map((farads) => nearest(E6, farads, 0, mostF * 1.05) ?? farads)
}
