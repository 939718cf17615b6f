/** How much of the rating a pulse uses after shape, temperature and repeats. */
import type { Repeats } from '../../reference/waveforms.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Pulse } from './pulse.ts'
import { deratedShare, repeatFactor, shapeFactor } from './rating.ts'
import { type RunFigures, usedFracOf } from './runs.ts'
import { shapeTimes } from './shape.ts'

export type Usage = {
  readonly peakW: number
  readonly factor: number
  readonly byPowerFrac: number
  readonly byShapeFrac: number
  readonly deratedFrac: number
  readonly repeatFactor: number
  readonly repeatWords: string
  /** undefined: no rating is left at this temperature */
  readonly totalFrac: number | undefined
  /** other trains with this shape, as sentences */
  readonly otherTrains: readonly string[]
}

/** Factor of the nominal shape against 10/1000 µs; the square-root rule is read from the time to half value. */
export const factorOf = ({ shape, isRing }: Pulse): number => shapeFactor(shape, isRing ? undefined : shapeTimes(shape))

/** Usage of a run; undefined without a suppressor or a rating. */
export function usageOf(
  run: RunFigures,
  given: {
    readonly factor: number
    readonly ambientC: number
    readonly zeroC: number
    readonly repeats: readonly Repeats[]
  },
): Usage | undefined {
  if (!run.used) return undefined
  const { byPowerFrac, byShapeFrac, heat } = run.used
  const train = (repeats: Repeats) => repeatFactor({ heat, energyJ: run.energyJ }, repeats)
  const counted = given.repeats.filter((r) => r.counted)
  const factors = counted.map(train)
  const worst = factors.reduce((most, factor) => Math.max(most, factor), 1)
  const deratedFrac = deratedShare(given)
  const single = usedFracOf(run.used)
  const total = deratedFrac > 0 ? (single * worst) / deratedFrac : undefined
  return {
    peakW: run.peakW,
    factor: given.factor,
    byPowerFrac,
    byShapeFrac,
    deratedFrac,
    repeatFactor: worst,
    repeatWords: counted.map((r) => r.words).join(', ') || 'a single pulse',
    totalFrac: total,
    otherTrains: given.repeats
      .filter((r) => !r.counted && deratedFrac > 0 && single > 0)
      .map((r) => {
        const frac = (single * train(r)) / deratedFrac
        return `Estimate for ${r.words} (a cable-bundle test): ${formatQuantity(frac, 'fraction')} of the rating.`
      }),
  }
}
