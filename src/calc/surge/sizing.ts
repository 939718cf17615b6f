/** The other way round: which stand-off, dynamic resistance and pulse power carry this surge, smallest first. */
import { busSurgesOf } from '../../reference/bus-surges.ts'
import { COLD_SOAK_C, FORWARD_STARTS, PULSE_POWER_CLASSES_W, STAND_OFF_STEPS_V } from '../../reference/suppressors.ts'
import type { Progress } from '../types.ts'
import { usageQuestionOf } from './answer.ts'
import type { SurgeAsked } from './asked.ts'
import { setupAt } from './box.ts'
import type { SurgeRuns } from './entered.ts'
import { CLOSE, MOSTLY_USED } from './judge.ts'
import { linePeaksOf } from './line.ts'
import { betweenLegs, type FittedPart, variantsOf } from './part.ts'
import { within } from './progress.ts'
import { deratedShare } from './rating.ts'
import { runOnce } from './runs.ts'
import { circuitOf, type SurgeSetup } from './setup.ts'
import { breakdownAt, breakdownOfClass, dynamicOhmOfClass, standsUnder } from './suppressor.ts'
import { type UsageQuestion, usageOf } from './usage.ts'
import type { WorstFigures } from './worst.ts'

export type SizingQuestion = {
  /** at the worst place of its box */
  readonly setup: SurgeSetup
  readonly lineHighV: number
  /** lowest of the line; undefined = nobody said */
  readonly lineLowV: number | undefined
  readonly withstandV: number
  readonly usage: UsageQuestion
  readonly like: Pick<FittedPart, 'bidirectional' | 'capacitanceF' | 'leadH' | 'type' | 'place'>
}

export type Size = {
  readonly ratedPulseW: number
  readonly standoffV: number
  readonly dynamicOhm: number
  /** with the breakdown as it is at the temperature entered */
  readonly loadV: number
  readonly usedFrac: number
}

export type SizeRow =
  | { readonly is: 'works'; readonly ratedPulseW: number; readonly from: Size; readonly to: Size }
  | { readonly is: 'fails'; readonly ratedPulseW: number; readonly by: 'load' | 'rating'; readonly size: Size }

/** Coarse: a table of classes needs no fourth digit. */
const COARSE = { bend: 6e-3 } as const
/** Heat and peaks of a ring are over long before its tail is. */
const RING_CYCLES = 30
/** Classes shown after the smallest that works. */
const WORKING_SHOWN = 3

/** What sizes are looked for; undefined where line or withstand is not known, or a part there would do nothing. */
export function sizingOf(
  asked: SurgeAsked,
  setup: SurgeSetup,
  runs: SurgeRuns,
  worst: WorstFigures,
): SizingQuestion | undefined {
  const { part, kind, mode, withstandV } = setup
  const like = {
    bidirectional: asked.bidirectional,
    capacitanceF: part?.capacitanceF ?? 0,
    leadH: part?.leadH ?? 0,
    type: part?.type ?? 'avalanche',
    place: part?.place ?? (asked.suppressorPlace === 'pair' ? 'pair' : 'leg'),
  } as const
  if (withstandV === undefined || (like.place === 'pair' && mode === 'common')) return undefined
  const peaks = linePeaksOf({ ...asked, part: like, kind })
  // on a line that goes below chassis only a bidirectional one can be listed
  const bidirectional = like.bidirectional || (peaks.lowV !== undefined && peaks.lowV <= -FORWARD_STARTS.value)
  const supply = kind?.ownPeaks?.surgesOf
  if (supply !== undefined && asked.busMaxV === undefined && asked.supplyCategory === undefined) return undefined
  const surges =
    supply === undefined || asked.supplyCategory === undefined ? [] : busSurgesOf(supply, asked.supplyCategory)
  if (peaks.highV === undefined) return undefined
  const place = worst.load.at.place
  return {
    setup: setupAt(setup, { ...place }),
    lineHighV: Math.max(peaks.highV, ...surges.map((row) => row.peakV)),
    lineLowV: peaks.lowV,
    withstandV,
    usage: usageQuestionOf(asked, setup, runs),
    like: { ...like, bidirectional },
  }
}

/** Stand-off and resistance of a class with its load peak and the share of its rating used. */
function* trySize(q: SizingQuestion, ratedPulseW: number, standoffV: number): Generator<Progress, Size> {
  const spread = breakdownOfClass(standoffV)
  const dynamicOhm = dynamicOhmOfClass({ mostBreakdownV: spread.mostV, ratedPulseW })
  const part: FittedPart = { ...spread, fromClass: true, dynamicOhm, ohmFromClass: true, standoffV, ...q.like }
  const { pulse } = q.setup
  const shape = pulse.ring
    ? { ...pulse.shape, endSec: Math.min(pulse.shape.endSec, RING_CYCLES / pulse.ring.hz) }
    : pulse.shape
  let [loadV, usedFrac] = [0, 0]
  const met = q.setup.mode === 'differential' && part.place === 'leg' ? betweenLegs(part) : part
  const ways = variantsOf(met).flatMap((suppressor) => q.setup.restV.map((restV) => ({ suppressor, restV })))
  for (const [i, { suppressor, restV }] of ways.entries()) {
    const question = {
      circuit: circuitOf(q.setup, suppressor, { restV }),
      shape,
      rating: { ratedW: ratedPulseW, factor: q.usage.factor },
      options: COARSE,
    }
    const run = yield* within(runOnce(question), i / ways.length, (i + 1) / ways.length)
    loadV = Math.max(loadV, run.load.value)
    usedFrac = Math.max(usedFrac, usageOf(run, q.usage)?.totalFrac ?? 0)
  }
  const hotV = Math.max(0, breakdownAt({ breakdownV: spread.mostV, tempC: q.usage.ambientC }) - spread.mostV)
  return { ratedPulseW, standoffV, dynamicOhm, loadV: loadV + hotV, usedFrac }
}

/** Only with margin: what would be judged close when it is entered is not offered. */
const fits = (size: Size, q: SizingQuestion) => size.loadV <= (1 - CLOSE) * q.withstandV && size.usedFrac <= MOSTLY_USED

/** Stand-off and cold breakdown above the line, forward drop below it. */
function stands(standoffV: number, { lineHighV, lineLowV, like }: SizingQuestion): boolean {
  const coldV = breakdownAt({ breakdownV: breakdownOfClass(standoffV).leastV, tempC: COLD_SOAK_C })
  const lowV = like.bidirectional ? -coldV : -FORWARD_STARTS.value
  return standsUnder({ standoffV, highV: lineHighV }) && (lineLowV === undefined || lineLowV > lowV)
}

/** Rows by class, smallest first; none where no stand-off fits between line and withstand. */
export function* sizeRows(q: SizingQuestion): Generator<Progress, readonly SizeRow[]> {
  const steps = STAND_OFF_STEPS_V.filter((v) => stands(v, q) && breakdownOfClass(v).mostV < q.withstandV)
  const rows: SizeRow[] = []
  const lowest = steps[0]
  if (lowest === undefined || deratedShare({ ambientC: q.usage.ambientC, zeroC: q.usage.derateZeroC }) <= 0) return rows
  for (const [i, ratedPulseW] of PULSE_POWER_CLASSES_W.entries()) {
    const [start, end] = [i / PULSE_POWER_CLASSES_W.length, (i + 1) / PULSE_POWER_CLASSES_W.length]
    const from = yield* within(trySize(q, ratedPulseW, lowest), start, (start + end) / 2)
    if (!fits(from, q)) {
      rows.push({
        is: 'fails',
        ratedPulseW,
        by: from.loadV > (1 - CLOSE) * q.withstandV ? 'load' : 'rating',
        size: from,
      })
      continue
    }
    let to = from
    let [low, high] = [0, steps.length - 1]
    let done = (start + end) / 2
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      const next = (done + end) / 2
      const size = yield* within(trySize(q, ratedPulseW, steps[middle] ?? lowest), done, next)
      done = next
      if (fits(size, q)) {
        to = size
        low = middle
      } else high = middle - 1
    }
    rows.push({ is: 'works', ratedPulseW, from, to })
    if (rows.filter((row) => row.is === 'works').length >= WORKING_SHOWN) break
  }
  return rows
}
