/**
 * The least power class of suppressor that carries a surge: each class of the reference table, smallest first, through
 * the same runs, box and judgements as the surge check. It carries the surge where what is left of its 10/1000 µs rating
 * is used by no more than earns a yes, and neither circuit nor filter capacitor comes close to what it withstands, worst
 * over the box of tolerances. What nobody entered is not judged, and is named by `isHeld`. Watts, volts, SI. Valid where
 * the surge check is: 0.1 µs to 10 ms. Source: the ratings and ratios of the suppressor classes.
 */
import { PULSE_POWER_CLASSES_W } from '../../reference/suppressors.ts'
import type { Progress, Verdict } from '../types.ts'
import { judgeSurge, limitsOf, type SurgeJudged } from './answer.ts'
import { type SurgeAsked, spreadOf } from './asked.ts'
import { axesOf } from './box.ts'
import { runsOf } from './entered.ts'
import { MOSTLY_USED } from './judge.ts'
import { within } from './progress.ts'
import { setUpSurge } from './setup.ts'
import { worstOf } from './worst.ts'

/** One class with the worst that was found of it. `usedFrac` undefined: nothing of a rating is left at its temperature. */
export type TriedClass = {
  readonly ratedPulseW: number
  readonly usedFrac: number | undefined
  readonly loadV: number
  /** what refuses it; undefined: nothing does */
  readonly by: 'rating' | 'volts' | 'unfollowed' | undefined
  /** the circuit's withstand was known wherever it was asked for */
  readonly isHeld: boolean
}

/** `found`: the least that carries it; `below`: the class before, refused. Without `found` the largest is in `below`. */
export type LeastClass = { readonly found: TriedClass | undefined; readonly below: TriedClass | undefined }

/** Tries them from the smallest. The pulse and the filter of `asked` must be complete; its own rating is left aside. */
export function* leastClass(asked: SurgeAsked): Generator<Progress, LeastClass> {
  let below: TriedClass | undefined
  const count = PULSE_POWER_CLASSES_W.length
  for (const [i, ratedPulseW] of PULSE_POWER_CLASSES_W.entries()) {
    const tried = yield* within(tryClass({ ...asked, ratedPulseW, dynamicOhm: undefined }), i / count, (i + 1) / count)
    if (tried.by === undefined) return { found: tried, below }
    below = tried
  }
  return { found: undefined, below }
}

/** Surges of equal stress once each, in their order. */
export function* leastClasses(stresses: readonly SurgeAsked[]): Generator<Progress, readonly LeastClass[]> {
  const found: LeastClass[] = []
  for (const [i, asked] of stresses.entries())
    found.push(yield* within(leastClass(asked), i / stresses.length, (i + 1) / stresses.length))
  return found
}

function* tryClass(asked: SurgeAsked & { readonly ratedPulseW: number }): Generator<Progress, TriedClass> {
  const answer = setUpSurge(asked)
  if (answer.is !== 'setup') throw new RangeError('a surge that is not complete has no class')
  const { setup } = answer
  const runs = yield* within(runsOf(asked, setup), 0, 0.3)
  const about = {
    setup,
    ways: runs.ways,
    asEntered: runs.byWay,
    rating: runs.rating,
    limits: limitsOf(asked, setup, runs),
  }
  const asEntered = yield* worstOf({ ...about, axes: [] })
  const { ratedPulseW } = asked
  const first = triedOf(ratedPulseW, judgeSurge(asked, setup, runs, asEntered))
  // the box only makes it worse
  if (first.by !== undefined) return first
  const worst = yield* within(worstOf({ ...about, axes: axesOf(setup, spreadOf(asked)) }), 0.3, 1)
  return triedOf(ratedPulseW, judgeSurge(asked, setup, runs, worst))
}

const isRefused = ({ verdict }: { readonly verdict: Verdict }): boolean => verdict === 'fails' || verdict === 'marginal'

function triedOf(ratedPulseW: number, { usedFrac, load, circuit, capacitor, isWhole }: SurgeJudged): TriedClass {
  const used = usedFrac?.worst
  const reasons = [...circuit.reasons, ...(capacitor?.reasons ?? [])]
  const by =
    used === undefined || used > MOSTLY_USED
      ? 'rating'
      : reasons.some(isRefused)
        ? 'volts'
        : isWhole
          ? undefined
          : 'unfollowed'
  return {
    ratedPulseW,
    usedFrac: used,
    loadV: load.worst,
    by,
    isHeld: !circuit.reasons.some(({ verdict }) => verdict === 'unknown'),
  }
}
