/** The numbers of a surge: runs with the parts as entered, the worst over their tolerances, judgements, rungs, sizes. */

import { judgeSurge, limitsOf, type SurgeJudged, verdictOf } from '../../surge/answer.ts'
import type { SurgeAsked } from '../../surge/asked.ts'
import { spreadOf } from '../../surge/asked.ts'
import { axesOf } from '../../surge/box.ts'
import { runsOf, type SurgeRuns } from '../../surge/entered.ts'
import { typedPeakV } from '../../surge/line.ts'
import { longWayOf } from '../../surge/long-way.ts'
import { asOnePart } from '../../surge/part.ts'
import { rising, within } from '../../surge/progress.ts'
import { surgeRungs } from '../../surge/rungs.ts'
import { type SurgeSetup, setUpSurge } from '../../surge/setup.ts'
import { type SizeRow, sizeRows, sizingOf } from '../../surge/sizing.ts'
import type { Wanted } from '../../surge/wanted.ts'
import { type WorstFigures, type WorstQuestion, worstOf } from '../../surge/worst.ts'
import type { Figures, Progress, Refused, Verdict } from '../../types.ts'
import type { SurgeGiven } from './inputs.ts'
import { refusalIssue } from './words/refusals.ts'

export type SurgeWaiting = { readonly is: 'waiting'; readonly wanted: readonly Wanted[] }
export type SurgeFound = {
  readonly is: 'found'
  /** the fields as those of one part */
  readonly asked: SurgeAsked
  readonly setup: SurgeSetup
  readonly runs: SurgeRuns
  readonly worst: WorstFigures
  readonly judged: SurgeJudged
  /** undefined: line or withstand is not known */
  readonly sizes: readonly SizeRow[] | undefined
}
export type SurgeFigures = Figures & { readonly verdict: Verdict; readonly surge: SurgeWaiting | SurgeFound }

/** Runs, searches, judges; pauses every few dozen steps of a run. */
export const surgeFigures = (given: SurgeGiven): Generator<Progress, SurgeFigures | Refused> => rising(figures(given))

function* figures(given: SurgeGiven): Generator<Progress, SurgeFigures | Refused> {
  const entered = asOnePart(given)
  const answer = setUpSurge(entered)
  if (answer.is === 'refused') return { ok: false, issues: [refusalIssue(answer.refusal)] }
  if (answer.is === 'missing')
    return { verdict: 'unknown', values: {}, bounds: [], rungs: [], surge: { is: 'waiting', wanted: answer.wanted } }
  const { setup } = answer
  const place = entered.suppressorPlace === 'pair' ? 'pair' : 'leg'
  const asked = { ...entered, busMaxV: typedPeakV({ ...entered, kind: setup.kind, part: { place } }) }
  const runs = yield* within(runsOf(asked, setup), 0, 0.3)
  const question: WorstQuestion = {
    setup,
    axes: axesOf(setup, spreadOf(asked)),
    ways: runs.ways,
    asEntered: runs.byWay,
    rating: runs.rating,
    limits: limitsOf(asked, setup, runs),
  }
  const worst = yield* within(worstOf(question), 0.3, 0.6)
  const worstWay = yield* within(longWayOf(asked, question), 0.6, 0.75)
  const judged = judgeSurge(entered, setup, runs, worst, worstWay)
  const size = sizingOf(asked, setup, runs, worst)
  const sizes = size === undefined ? undefined : yield* within(sizeRows(size), 0.75, 1)
  yield { doneFrac: 1 }
  const found: SurgeFound = { is: 'found', asked, setup, runs, worst, judged, sizes }
  return {
    verdict: verdictOf(judged),
    values: valuesOf(found),
    bounds: judged.signal.is === 'judged' ? judged.signal.bounds : [],
    rungs: surgeRungs({
      run: runs.run,
      load: judged.load,
      capacitor: judged.capacitorPeak,
      part: setup.part,
      isMet: setup.met !== undefined,
      ambientC: asked.ambientC,
      withstandV: setup.withstandV,
      capacitorWithstandV: asked.capacitorWithstandV,
      busMaxV: asked.busMaxV,
      peaks: judged.peaks,
      kind: setup.kind,
      supplyCategory: asked.supplyCategory,
    }),
    surge: found,
  }
}

/** Figures by output key; absent = does not exist. */
function valuesOf({ asked, setup, runs, worst, judged }: SurgeFound): Readonly<Record<string, number>> {
  const { run } = runs
  const { place } = worst.load.at
  const numbers: Readonly<Record<string, number | undefined>> = {
    loadPeakV: run.load.value,
    loadPeakSec: run.load.sec,
    connectorPeakV: run.connector.value,
    connectorPeakSec: run.connector.sec,
    capacitorPeakV: run.capacitor?.value,
    worstLoadPeakV: worst.load.value,
    worstCapacitorPeakV: worst.capacitor?.value,
    worstCapacitanceF: place.capacitanceF,
    worstInductanceH: place.inductanceH,
    worstRingHz: place.ringHz,
    heldAfterSec: run.excess?.isOpen ? undefined : run.excess?.untilSec,
    letThroughVs: run.excess?.voltSec,
    betweenLegsV: judged.betweenLegsV,
    ...(setup.met
      ? {
          suppressorPeakV: run.clamp.value,
          suppressorPeakSec: run.clamp.sec,
          peakA: run.amps.value,
          peakASec: run.amps.sec,
          energyJ: run.energyJ,
          usedFrac: judged.usage?.totalFrac,
          worstUsedFrac: judged.usedFrac?.worst,
          overshootV: run.overshoot?.volts,
          overshootSec: run.overshoot?.sec,
        }
      : {}),
    ...(setup.pulse.bundle && asked.bundleShareFrac !== undefined ? { contactA: setup.pulse.shortCircuitA } : {}),
  }
  return Object.fromEntries(
    Object.entries(numbers).filter((entry): entry is [string, number] => entry[1] !== undefined),
  )
}
