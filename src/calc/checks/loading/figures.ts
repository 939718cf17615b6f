/** The numbers of the loading check: what the signal stands, what it sees, and how that is judged. */

import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { roomPerLegF, type Taken } from '../../bounds/room.ts'
import { leastShare, mostShare, type Spread } from '../../bounds/worst-case.ts'
import { TOO_MUCH_LEAKAGE } from '../../explain/choke.ts'
import { coilCount, type SignalFilter } from '../../loading/box.ts'
import { seenFarads } from '../../loading/budget.ts'
import { type LoadingCeiling, loadingBounds } from '../../loading/ceiling.ts'
import { type LoadedSignal, loadedFigures } from '../../loading/figures.ts'
import { carriesSignal, type LcSection, type Span, signalEnds } from '../../loading/inductor.ts'
import { judgeLoading, type LoadingJudgement } from '../../loading/judge.ts'
import type { SignalFacts } from '../../loading/signal.ts'
import { leakageSpanH } from '../../network/choke.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import type { Figures, Issue, Refused, Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { nodeIssues, onLine } from '../nodes.ts'
import { ownOf } from '../own-ceiling.ts'
import type { LoadingGiven } from './inputs.ts'

/** What is known once the line is named and may be worked on. */
export type Loaded = {
  readonly signal: LoadedSignal
  readonly taken: Taken
  readonly legF: number
  /** whether a capacitance or a choke was entered; without either only the ceiling is given */
  readonly isEntered: boolean
  /** absent = no choke */
  readonly choke: LoadedChoke | undefined
  readonly judgement: LoadingJudgement
  readonly ceiling: LoadingCeiling
}

/** A choke as the loop of the signal sees it: its leakage as entered, and whether it was. */
export type LoadedChoke = { readonly loopH: number; readonly isLeakageStated: boolean; readonly isOneWire: boolean }

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
  const issues = [...chokeIssues(given), ...nodeIssues(kind, given.nodeCount)]
  if (issues.length > 0) return { ok: false, issues }
  return kind.barredWhy === undefined ? judged(given, kind) : { verdict: 'fails', ...NOTHING }
}

function chokeIssues({ chokeH, chokeLeakageH }: LoadingGiven): readonly Issue[] {
  return chokeH !== undefined && chokeLeakageH !== undefined && chokeLeakageH > 2 * chokeH
    ? [{ key: 'chokeLeakageH', code: 'impossible', message: TOO_MUCH_LEAKAGE }]
    : []
}

/** Around one wire the signal meets the winding itself; every wire through the core leaves its leakage. */
function chokeOf(given: LoadingGiven, growth: number): { readonly span: Span; readonly seen: LoadedChoke } | undefined {
  const { chokeH: windingH, chokeLeakageH: leakageH, chokeWires } = given
  if (windingH === undefined || windingH === 0) return undefined
  const isOneWire = chokeWires === 'one'
  const span = isOneWire ? { least: windingH, most: growth * windingH } : leakageSpanH({ windingH, leakageH, growth })
  const loopH = isOneWire ? windingH : leakageSpanH({ windingH, leakageH, growth: 1 }).most
  return { span, seen: { loopH, isLeakageStated: leakageH !== undefined, isOneWire } }
}

/** The filter with each part over what was entered of its tolerance; nothing entered: the part as it is. */
function filterOf(given: LoadingGiven, legF: number, inductanceH: number): SignalFilter {
  const topology = topologyOf(given.topology as Topology | undefined, legF, inductanceH)
  const capacitorF = legF / Math.max(1, CAPACITOR_COUNT[topology])
  const spread = spreadOf(given)
  const growth = growthOf(given)
  const choke = chokeOf(given, growth)
  return {
    topology,
    capacitorF: { least: leastShare(spread) * capacitorF, most: mostShare(spread) * capacitorF },
    inductanceH: { least: inductanceH, most: growth * inductanceH },
    ...(choke === undefined ? {} : { chokeH: choke.span }),
  }
}

/** How far a capacitor can be from its mark; nothing entered: as marked. */
function spreadOf(given: LoadingGiven): Spread {
  return {
    tolerance: given.toleranceFrac ?? { lowFrac: 0, highFrac: 0 },
    temperatureFrac: given.temperatureFrac ?? 0,
    biasFrac: given.biasFrac ?? 0,
    ageingDecades: given.ageingDecades ?? 0,
    ageingFracPerDecade: given.ageingFracPerDecade ?? 0,
  }
}

/** Most over least of an inductance of that tolerance. */
const growthOf = ({ toleranceFrac: tolerance }: LoadingGiven): number =>
  tolerance === undefined ? 1 : (1 + tolerance.highFrac) / (1 - tolerance.lowFrac)

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
  const [spread, crossF] = [spreadOf(given), given.crossF ?? 0]
  const taken: Taken = {
    isPair: kind.isPair,
    ...onLine(kind, given),
    crossF: crossF * mostShare(spread),
    crossLeastF: crossF * leastShare(spread),
    suppressorF: given.suppressorF,
  }
  const legF = given.capacitanceF ?? 0
  const inductanceH = given.inductanceH ?? 0
  const filter = filterOf(given, legF, inductanceH)
  const farads = seenFarads({ ...taken, legF })
  const choke = chokeOf(given, growthOf(given))?.seen
  const signal: LoadedSignal = { facts, farads, section: sectionOf(facts, filter, farads, choke?.loopH ?? 0) }
  const judgement = judgeLoading({ facts, taken, filter })
  const isEntered = given.capacitanceF !== undefined || choke !== undefined
  // With nothing entered the question is for the most it may be: that stands, or there is none.
  const isDoubtful = choke?.isOneWire === true && judgement.verdict !== 'fails'
  const verdict = isDoubtful ? worse(judgement.verdict, 'unknown') : judgement.verdict
  return {
    verdict,
    values: valuesOf({ signal, taken, isEntered, judgement }),
    bounds: loadingBounds(facts),
    rungs: [],
    loaded: { signal, taken, legF, isEntered, choke, judgement, ceiling: judgement.ceiling },
  }
}

/** The section the coil as entered makes with what the signal sees; undefined without one or on power. */
function sectionOf(facts: SignalFacts, filter: SignalFilter, farads: number, chokeH: number): LcSection | undefined {
  const ends = signalEnds(facts)
  const inductanceH = coilCount(filter.topology) * filter.inductanceH.least
  const henries = (facts.kind.isPair ? 2 : 1) * inductanceH + chokeH
  if (henries === 0 || ends === undefined || !carriesSignal(facts.kind)) return undefined
  return { henries, farads, ...ends }
}

function valuesOf(q: Pick<Loaded, 'signal' | 'taken' | 'isEntered' | 'judgement'>): Readonly<Record<string, number>> {
  const { works } = q.judgement.ceiling
  return {
    ...(q.isEntered && q.taken.isPair ? { differentialF: q.signal.farads } : {}),
    ...(q.isEntered ? loadedFigures(q.signal) : {}),
    ...(works.farads === undefined ? {} : { mostCapacitanceF: Math.max(0, roomPerLegF(works.farads, q.taken)) }),
  }
}
