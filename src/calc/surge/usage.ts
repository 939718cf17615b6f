/** How much of the rating a pulse uses after shape, temperature, repeats and wear. Numbers only. */
import { SUPPRESSOR_TYPES, type SuppressorType, VARISTOR_WEAR } from '../../reference/suppressors.ts'
import type { Repeats } from '../../reference/waveforms.ts'
import type { Pulse } from './pulse.ts'
import { deratedShare, type PulseHeat, repeatFactor, shapeFactor } from './rating.ts'
import { type RunFigures, usedFracOf } from './runs.ts'
import { shapeTimes } from './shape.ts'

export type Usage = {
  readonly peakW: number
  readonly factor: number
  readonly byPowerFrac: number
  readonly byShapeFrac: number
  readonly deratedFrac: number
  readonly repeatFactor: number
  readonly counted: readonly Repeats[]
  /** share of the rating a part that wears keeps over the counted repeats; 1 for one that does not */
  readonly wearShare: number
  /** undefined: no rating is left at this temperature */
  readonly totalFrac: number | undefined
  /** other trains with this shape, and the share of the rating each would use */
  readonly otherTrains: readonly { readonly repeats: Repeats; readonly usedFrac: number }[]
}

/** Factor of the nominal shape against 10/1000 µs; the square-root rule is read from the time to half value. */
export const factorOf = ({ shape, ring }: Pulse): number => shapeFactor(shape, ring ? undefined : shapeTimes(shape))

export type UsageQuestion = {
  readonly factor: number
  readonly ambientC: number
  readonly derateZeroC: number
  readonly repeats: readonly Repeats[]
  /** the test that is run */
  readonly test: Repeats['of']
  readonly type: SuppressorType
  /** heat of a later pulse of a train, by the share of the drive it has */
  readonly laterHeat: (driveShare: number, first: PulseHeat) => PulseHeat
}

/** Usage of a run; undefined without a suppressor or a rating. */
export function usageOf(run: Pick<RunFigures, 'used' | 'energyJ' | 'peakW'>, q: UsageQuestion): Usage | undefined {
  if (!run.used) return undefined
  const { byPowerFrac, byShapeFrac, heat } = run.used
  const first: PulseHeat = { heat, energyJ: run.energyJ }
  const train = (repeats: Repeats) => repeatFactor(first, q.laterHeat(repeats.laterDriveShare, first), repeats)
  const counted = q.repeats.filter((r) => r.of === q.test)
  const worst = Math.max(1, ...counted.map(train))
  const deratedFrac = deratedShare({ ambientC: q.ambientC, zeroC: q.derateZeroC })
  const wearShare = Math.min(1, ...counted.map((r) => wearOf(q.type, r)))
  const single = usedFracOf(run.used)
  const left = deratedFrac * wearShare
  return {
    peakW: run.peakW,
    factor: q.factor,
    byPowerFrac,
    byShapeFrac,
    deratedFrac,
    repeatFactor: worst,
    counted,
    wearShare,
    totalFrac: left > 0 ? (single * worst) / left : undefined,
    otherTrains: q.repeats
      .filter((r) => r.of !== q.test && deratedFrac > 0 && single > 0)
      .map((repeats) => ({ repeats, usedFrac: (single * train(repeats)) / (deratedFrac * wearOf(q.type, repeats)) })),
  }
}

/** n^−0.3 for a part that wears with each of n pulses. */
function wearOf(type: SuppressorType, { gaps }: Repeats): number {
  if (!SUPPRESSOR_TYPES[type].wears) return 1
  const count = gaps.reduce((product, gap) => product * gap.count, 1)
  return count ** -VARISTOR_WEAR.value
}
