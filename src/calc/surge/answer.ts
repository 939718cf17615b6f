/** All judgements of a surge, from its runs and the worst over its box. Numbers only. */
import { SUPPRESSOR_TYPES } from '../../reference/suppressors.ts'
import type { Verdict } from '../terms.ts'
import { worse } from '../verdict.ts'
import { type SurgeAsked, spreadOf } from './asked.ts'
import type { SurgeRuns } from './entered.ts'
import { hotRiseOf } from './hot.ts'
import {
  type CapacitorReason,
  type CircuitReason,
  capacitorJudgement,
  circuitJudgement,
  type Judgement,
  judged,
  type LegsLack,
  ratingReason,
  type Spread,
  type SuppressorReason,
} from './judge.ts'
import { type LinePeaks, type LineQuestion, linePeaksOf, lineReasons } from './line.ts'
import { LONGEST_WAY_H, NO_CABLE_H } from './long-way.ts'
import { RATED_UP_TO_SEC } from './rating.ts'
import { usedFracOf } from './runs.ts'
import type { SurgeSetup } from './setup.ts'
import { shapeTimes } from './shape.ts'
import { type SignalAnswer, signalAnswer } from './signal.ts'
import { type Usage, type UsageQuestion, usageOf } from './usage.ts'
import type { Found, WorstFigures, WorstQuestion } from './worst.ts'

export type SurgeJudged = {
  readonly circuit: Judgement<CircuitReason>
  /** undefined: no suppressor */
  readonly suppressor: Judgement<SuppressorReason> | undefined
  /** undefined: no filter capacitor */
  readonly capacitor: Judgement<CapacitorReason> | undefined
  readonly signal: SignalAnswer
  readonly usage: Usage | undefined
  readonly load: Spread
  readonly capacitorPeak: Spread | undefined
  readonly usedFrac: Spread | undefined
  readonly betweenLegsV: number | undefined
  readonly peaks: LinePeaks | undefined
  /** every run was followed to its end */
  readonly isWhole: boolean
}

export const usageQuestionOf = (asked: SurgeAsked, setup: SurgeSetup, runs: SurgeRuns): UsageQuestion => ({
  factor: runs.factor,
  ambientC: asked.ambientC,
  derateZeroC: asked.derateZeroC,
  repeats: setup.pulse.row.repeats,
  test: setup.pulse.bundle || setup.pulse.row.isBundleOnly ? 'bundle' : 'pin',
  type: setup.part?.type ?? 'avalanche',
  laterHeat: runs.laterHeat,
})

export const lineQuestionOf = (
  asked: SurgeAsked,
  part: LineQuestion['part'],
  kind: LineQuestion['kind'],
): LineQuestion => ({
  part,
  kind,
  busMaxV: asked.busMaxV,
  busMinV: asked.busMinV,
  supplyCategory: asked.supplyCategory,
  busSourceOhm: asked.busSourceOhm,
  ratedPulseW: asked.ratedPulseW,
  holdingA: asked.holdingA,
})

/** What the runs must stay below: as volts, and as the share of the rating one pulse may use. */
export function limitsOf(asked: SurgeAsked, setup: SurgeSetup, runs: SurgeRuns): WorstQuestion['limits'] {
  const usage = usageOf(runs.run, usageQuestionOf(asked, setup, runs))
  const single = runs.run.used ? usedFracOf(runs.run.used) : 0
  return {
    ...(setup.withstandV === undefined ? {} : { load: setup.withstandV }),
    ...(asked.capacitorWithstandV === undefined ? {} : { capacitor: asked.capacitorWithstandV }),
    ...(usage?.totalFrac === undefined || single === 0 ? {} : { usedFrac: single / usage.totalFrac }),
  }
}

const spread = (asEntered: number, found: Found, times = 1): Spread => ({
  asEntered,
  worst: Math.max(asEntered, found.value * times),
  at: found.value * times > asEntered * (1 + 1e-6) ? found.at : undefined,
})

/** Judges them all; `worstWay`: with the cable of a bundle test, where it was not entered. */
export function judgeSurge(
  asked: SurgeAsked,
  setup: SurgeSetup,
  runs: SurgeRuns,
  worst: WorstFigures,
  worstWay?: WorstFigures,
): SurgeJudged {
  const { part, met, kind } = setup
  const { run } = runs
  const usage = usageOf(run, usageQuestionOf(asked, setup, runs))
  const load = spread(run.load.value, worst.load)
  const single = run.used ? usedFracOf(run.used) : 0
  const usedFrac =
    usage?.totalFrac === undefined || !worst.usedFrac || single === 0
      ? undefined
      : spread(usage.totalFrac, worst.usedFrac, usage.totalFrac / single)
  const capacitorPeak = run.capacitor && worst.capacitor ? spread(run.capacitor.value, worst.capacitor) : undefined
  const hotRiseV = hotRiseOf(setup, { ambientC: asked.ambientC, runs, worst })
  const longWay = worstWay && {
    worst: worstWay,
    hotRiseV: hotRiseOf({ ...setup, lineH: LONGEST_WAY_H }, { ambientC: asked.ambientC, runs, worst: worstWay }),
  }
  const betweenRiseV = (met?.bidirectional ? 2 : 1) * hotRiseV
  const coldLegsV = betweenLegsOf(setup, load, runs)
  const betweenLegsV = coldLegsV === undefined ? undefined : coldLegsV + betweenRiseV
  const isDifferential = setup.mode === 'differential'
  return {
    usage,
    load,
    capacitorPeak,
    usedFrac,
    betweenLegsV,
    isWhole: worst.isWhole,
    peaks: part && linePeaksOf(lineQuestionOf(asked, part, kind)),
    circuit: circuitJudgement({
      load,
      connectorV: worst.connector.value,
      withstandV: setup.withstandV,
      isRestUnknown: isRestUnknown(asked, setup),
      hotRiseV,
      excess: run.excess,
      betweenLegsV,
      betweenRiseV,
      pairWithstandV: asked.pairWithstandV,
      legsLack: legsLackOf(setup),
      isInsulated: kind?.transformer !== undefined && !isDifferential,
      insulationWithstandV: asked.insulationWithstandV ?? kind?.transformer?.insulationPeakV,
      longWay,
      oddWayH: setup.lineH > NO_CABLE_H ? setup.lineH : undefined,
    }),
    suppressor: part && suppressorJudgement(asked, setup, usage, usedFrac),
    capacitor:
      capacitorPeak &&
      capacitorJudgement({
        peak: capacitorPeak,
        hotRiseV,
        withstandV: asked.capacitorWithstandV,
        longWay,
      }),
    signal: signalAnswer({
      kind,
      filter: legFilterOf(setup),
      spread: spreadOf(asked),
      part,
      suppressorF: asked.suppressorF,
      existingF: asked.existingF,
      bitRateHz: asked.bitRateHz,
      driverEdgeSec: asked.driverEdgeSec,
      signalOhm: asked.signalOhm,
      own: {
        ceilingF: asked.ownCeilingF,
        usefulHz: asked.usefulHz,
        mostLossDb: asked.ownLossDb,
        mostPhaseDeg: asked.ownPhaseDeg,
      },
    }),
  }
}

/** Leg parts of a pair clamp each leg by itself: one may stand at its clamp while the other stands at the opposite one. */
function betweenLegsOf({ kind, met, mode }: SurgeSetup, load: Spread, { other }: SurgeRuns): number | undefined {
  if (!kind?.isPair || mode !== 'common' || met === undefined) return undefined
  return load.worst + (met.bidirectional ? load.worst : (other?.load.value ?? load.worst))
}

/** The volts judged then lack those the line holds when the pulse comes; with a part they are asked for on its account. */
const isRestUnknown = ({ busMaxV, capacitorWithstandV }: SurgeAsked, { kind, part, withstandV }: SurgeSetup): boolean =>
  part === undefined &&
  kind === undefined &&
  busMaxV === undefined &&
  (withstandV !== undefined || capacitorWithstandV !== undefined)

/** A surge between the legs is judged there itself, and a line named as single has no second leg. */
function legsLackOf({ kind, met, mode }: SurgeSetup): LegsLack | undefined {
  if (mode !== 'common') return undefined
  if (kind === undefined) return 'pair-line'
  return kind.isPair && met === undefined ? 'leg-parts' : undefined
}

/** The signal counts each leg's own parts, whichever way the surge comes. */
function legFilterOf({ filter, mode }: SurgeSetup): SurgeSetup['filter'] {
  if (mode === 'common') return filter
  return {
    ...filter,
    capacitanceF: 2 * filter.capacitanceF,
    capacitance2F: 2 * filter.capacitance2F,
    inductanceH: filter.inductanceH / 2,
    inductance2H: filter.inductance2H / 2,
  }
}

/** Far beyond its curve a part heats through to its leads, and no root of time says what it stands. */
function tooLong({ shape, ring }: SurgeSetup['pulse']): readonly SuppressorReason[] {
  const halfSec = ring ? 0 : shapeTimes(shape).halfSec
  return halfSec > RATED_UP_TO_SEC ? [{ is: 'rating-too-long', verdict: 'unknown', halfSec }] : []
}

function suppressorJudgement(
  asked: SurgeAsked,
  { part, met, kind, filter, pulse }: SurgeSetup,
  usage: Usage | undefined,
  usedFrac: Spread | undefined,
): Judgement<SuppressorReason> {
  if (!part) return judged([])
  const collapses = SUPPRESSOR_TYPES[part.type].latches && filter.inductanceH > 0
  return judged<SuppressorReason>([
    met ? ratingReason(usage, usedFrac, asked.ratedPulseW) : { is: 'not-in-the-way', verdict: 'ok' },
    ...(met ? tooLong(pulse) : []),
    ...(collapses ? ([{ is: 'collapse-unknown', verdict: 'unknown' }] as const) : []),
    ...lineReasons(lineQuestionOf(asked, part, kind)),
  ])
}

/** The worst of all of them; a run that could not be followed is never a yes. */
export const verdictOf = ({ circuit, suppressor, capacitor, signal, isWhole }: SurgeJudged): Verdict =>
  [
    circuit.verdict,
    suppressor?.verdict,
    capacitor?.verdict,
    signal.is === 'none' ? undefined : signal.verdict,
    isWhole ? undefined : ('unknown' as const),
  ]
    .filter((verdict) => verdict !== undefined)
    .reduce<Verdict>(worse, 'ok')
