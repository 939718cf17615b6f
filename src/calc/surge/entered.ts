/** The runs with the parts as entered: every way the pulse can come, the other polarity, the other side of the filter. */
import type { Progress } from '../types.ts'
import type { SurgeAsked } from './asked.ts'
import { variantsOf } from './part.ts'
import { within } from './progress.ts'
import type { PulseHeat } from './rating.ts'
import { type RunFigures, type RunQuestion, runOnce, usedFracOf, usesMore, worseRun } from './runs.ts'
import { type Changed, circuitOf, type SurgeSetup } from './setup.ts'
import { factorOf } from './usage.ts'
import type { Way } from './ways.ts'

export type SurgeRuns = {
  readonly factor: number
  readonly rating: RunQuestion['rating']
  readonly ways: readonly Way[]
  readonly byWay: readonly RunFigures[]
  /** the worse of all ways of the polarity entered, figure by figure */
  readonly run: RunFigures
  /** the other polarity; undefined where it is the mirror of this one */
  readonly other: RunFigures | undefined
  /** the suppressor on the other side of the filter */
  readonly swapped: RunFigures | undefined
  readonly laterHeat: (driveShare: number, first: PulseHeat) => PulseHeat
}

/** For what is only mentioned or searched on from: three digits are enough. */
const ROUGH = { bend: 4e-3 } as const

/** Runs them all. A polarity mirrors the other for a part that does, on a line that rests at 0 V. */
export function* runsOf(asked: SurgeAsked, setup: SurgeSetup): Generator<Progress, SurgeRuns> {
  const factor = factorOf(setup.pulse)
  const rating = asked.ratedPulseW === undefined ? undefined : { ratedW: asked.ratedPulseW, factor }
  const isOneWay = (setup.met !== undefined && !setup.met.bidirectional) || setup.restV.some((volts) => volts !== 0)
  const turned = setup.sign === 1 ? -1 : 1
  const signs = isOneWay ? [setup.sign, turned as 1 | -1] : [setup.sign]
  const variants = variantsOf(setup.met)
  const ways: Way[] = signs.flatMap((sign) =>
    setup.restV.flatMap((restV) => variants.map((_, variant) => ({ changed: { sign, restV }, variant }))),
  )
  const question = (changed: Changed, variant: number, isRough = false): RunQuestion => ({
    ...(isRough ? { options: ROUGH } : {}),
    circuit: circuitOf(setup, variants[variant], changed),
    shape: setup.pulse.shape,
    withstandV: setup.withstandV,
    rating,
  })
  const byWay: RunFigures[] = []
  for (const [i, { changed, variant }] of ways.entries())
    byWay.push(
      yield* within(
        runOnce(question(changed, variant, changed.sign !== setup.sign)),
        (0.7 * i) / ways.length,
        (0.7 * (i + 1)) / ways.length,
      ),
    )
  const ofSign = (sign: 1 | -1) => byWay.filter((_, i) => ways[i]?.changed.sign === sign)
  const swappedWays = setup.met && setup.filter.inductanceH > 0 ? ways.filter((w) => w.changed.sign === setup.sign) : []
  const swapped: RunFigures[] = []
  const placement = setup.placement === 'connector' ? 'behind' : 'connector'
  for (const { changed, variant } of swappedWays)
    swapped.push(yield* within(runOnce(question({ ...changed, placement }, variant, true)), 0.7, 0.9))
  const hottest = ways[byWay.reduce((at, run, i) => (usesMore(byWay[at] ?? run, run) ? i : at), 0)]
  const laterHeat = yield* within(laterHeatOf(setup, question, hottest), 0.9, 1)
  return {
    factor,
    rating,
    ways,
    byWay,
    run: worstRun(ofSign(setup.sign)),
    other: isOneWay ? worstRun(ofSign(turned)) : undefined,
    swapped: swapped.length > 0 ? worstRun(swapped) : undefined,
    laterHeat,
  }
}

const worstRun = (runs: readonly RunFigures[]): RunFigures => runs.reduce((a, b) => worseRun(a, b))

/** What a weaker later pulse leaves of the heat and the energy of the first: behind a clamp more than its share squared. */
function* laterHeatOf(
  setup: SurgeSetup,
  question: (changed: Changed, variant: number, isRough?: boolean) => RunQuestion,
  way: Way | undefined,
): Generator<Progress, SurgeRuns['laterHeat']> {
  const shares = [...new Set(setup.pulse.row.repeats.map((each) => each.laterDriveShare))].filter((each) => each !== 1)
  const ratios = new Map<number, PulseHeat>()
  for (const driveShare of setup.met && way ? shares : []) {
    const first = yield* runOnce(question(way?.changed ?? {}, way?.variant ?? 0, true))
    const later = yield* runOnce(question({ ...way?.changed, driveShare }, way?.variant ?? 0, true))
    if (!first.used || !later.used || !(usedFracOf(first.used) > 0)) continue
    ratios.set(driveShare, { heat: later.used.heat / first.used.heat, energyJ: later.energyJ / first.energyJ })
  }
  return (driveShare, first) => {
    const ratio = ratios.get(driveShare)
    return ratio ? { heat: first.heat * ratio.heat, energyJ: first.energyJ * ratio.energyJ } : first
  }
}
