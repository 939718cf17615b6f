/** The numbers of the loading check: what the signal stands, what it sees, and how that is judged. */

import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { roomPerLegF, type Taken } from '../../bounds/room.ts'
import { leastShare, mostShare, type Spread } from '../../bounds/worst-case.ts'
import { coilCount, type SignalFilter } from '../../loading/box.ts'
import { seenFarads } from '../../loading/budget.ts'
import { type LoadingCeiling, loadingBounds } from '../../loading/ceiling.ts'
import { type LoadedSignal, loadedFigures } from '../../loading/figures.ts'
import { carriesSignal, type LcSection, signalEnds } from '../../loading/inductor.ts'
import { judgeLoading, type LoadingJudgement } from '../../loading/judge.ts'
import type { SignalFacts } from '../../loading/signal.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import type { Figures, Refused, Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { ownOf } from '../own-ceiling.ts'
import type { LoadingGiven } from './inputs.ts'

/** What is known once the line is named and may be worked on. */
export type Loaded = {
  readonly signal: LoadedSignal
  readonly taken: Taken
  readonly legF: number
  /** whether a capacitance was entered; without one only the ceiling is given */
  readonly isEntered: boolean
  readonly judgement: LoadingJudgement
  readonly ceiling: LoadingCeiling
}

export type LoadingFigures = Figures & {
  readonly verdict: Verdict
  /** absent = the line is not named, or barred */
  readonly loaded?: Loaded
}

export function loadingFigures(given: LoadingGiven): LoadingFigures | Refused {
  if (given.lineKind === undefined) return { verdict: 'unknown', ...NOTHING }
  const kind = lineKindById(given.lineKind)
  if (kind === undefined) {
    const message = 'This line is not in the list; choose one from it.'
    return { ok: false, issues: [{ key: 'lineKind', code: 'unknown-choice', message }] }
  }
  return kind.barredWhy === undefined ? judged(given, kind) : { verdict: 'fails', ...NOTHING }
}

/** The filter with each part over what was entered of its tolerance; nothing entered: the part as it is. */
function filterOf(given: LoadingGiven, legF: number, inductanceH: number): SignalFilter {
  const topology = topologyOf(given.topology as Topology | undefined, legF, inductanceH)
  const capacitorF = legF / Math.max(1, CAPACITOR_COUNT[topology])
  const { toleranceFrac: tolerance } = given
  const spread: Spread = {
    tolerance: tolerance ?? { lowFrac: 0, highFrac: 0 },
    temperatureFrac: given.temperatureFrac ?? 0,
    biasFrac: given.biasFrac ?? 0,
    ageingDecades: given.ageingDecades ?? 0,
    ageingFracPerDecade: given.ageingFracPerDecade ?? 0,
  }
  const growth = (1 + spread.tolerance.highFrac) / (1 - spread.tolerance.lowFrac)
  return {
    topology,
    capacitorF: { least: leastShare(spread) * capacitorF, most: mostShare(spread) * capacitorF },
    inductanceH: { least: inductanceH, most: growth * inductanceH },
  }
}

/** An inductor that was entered counts even where no topology names it, and a capacitor even beside an L. */
function topologyOf(asked: Topology | undefined, legF: number, inductanceH: number): Topology {
  if (inductanceH === 0) return asked === 'PI' ? 'PI' : 'C'
  return asked === undefined || (asked === 'L' && legF > 0) ? 'LC' : asked
}

/** Whether anything was entered of how far a part can be from its mark. */
export const hasSpread = (given: LoadingGiven): boolean =>
  [given.toleranceFrac, given.temperatureFrac, given.biasFrac, given.ageingDecades].some((one) => one !== undefined)

const NOTHING = { values: {}, bounds: [], rungs: [] } as const

function judged(given: LoadingGiven, kind: LineKind): LoadingFigures {
  const { bitRateHz, driverEdgeSec, signalOhm } = given
  const facts: SignalFacts = { kind, bitRateHz, driverEdgeSec, signalOhm, own: ownOf(given) }
  const taken: Taken = {
    isPair: kind.isPair,
    existingF: given.existingF,
    crossF: given.crossF ?? 0,
    suppressorF: given.suppressorF,
  }
  const legF = given.capacitanceF ?? 0
  const inductanceH = given.inductanceH ?? 0
  const filter = filterOf(given, legF, inductanceH)
  const farads = seenFarads({ ...taken, legF })
  const signal: LoadedSignal = { facts, farads, section: sectionOf(facts, filter, farads) }
  const judgement = judgeLoading({ facts, taken, filter })
  const isEntered = given.capacitanceF !== undefined
  // With nothing entered a line that already carries too much still fails.
  const verdict = isEntered || judgement.verdict === 'fails' ? judgement.verdict : worse(judgement.verdict, 'unknown')
  return {
    verdict,
    values: valuesOf({ signal, taken, isEntered, judgement }),
    bounds: loadingBounds(facts),
    rungs: [],
    loaded: { signal, taken, legF, isEntered, judgement, ceiling: judgement.ceiling },
  }
}

/** The section the coil as entered makes with what the signal sees; undefined without one or on power. */
function sectionOf(facts: SignalFacts, filter: SignalFilter, farads: number): LcSection | undefined {
  const ends = signalEnds(facts)
  const inductanceH = coilCount(filter.topology) * filter.inductanceH.least
  if (inductanceH === 0 || ends === undefined || !carriesSignal(facts.kind)) return undefined
  return { henries: (facts.kind.isPair ? 2 : 1) * inductanceH, farads, ...ends }
}

function valuesOf(q: Pick<Loaded, 'signal' | 'taken' | 'isEntered' | 'judgement'>): Readonly<Record<string, number>> {
  const { works } = q.judgement.ceiling
  return {
    ...(q.isEntered && q.taken.isPair ? { differentialF: q.signal.farads } : {}),
    ...(q.isEntered ? loadedFigures(q.signal) : {}),
    ...(works.farads === undefined ? {} : { mostCapacitanceF: Math.max(0, roomPerLegF(works.farads, q.taken)) }),
  }
}
