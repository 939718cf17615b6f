/** The numbers of the loading check: what the signal stands, what it sees, and how that is judged. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { roomPerLegF, type Taken } from '../../bounds/room.ts'
import { exactly, type SignalFilter } from '../../loading/box.ts'
import { seenFarads } from '../../loading/budget.ts'
import { type LoadingCeiling, loadingBounds } from '../../loading/ceiling.ts'
import { type LoadedSignal, loadedFigures } from '../../loading/figures.ts'
import { carriesSignal, type LcSection, signalEnds } from '../../loading/inductor.ts'
import { judgeLoading, type LoadingJudgement } from '../../loading/judge.ts'
import type { SignalFacts } from '../../loading/signal.ts'
import type { Figures, Refused, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
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

const NOTHING = { values: {}, bounds: [], rungs: [] } as const

function judged(given: LoadingGiven, kind: LineKind): LoadingFigures {
  const { bitRateHz, driverEdgeSec, signalOhm } = given
  const facts: SignalFacts = { kind, bitRateHz, driverEdgeSec, signalOhm }
  const taken: Taken = {
    isPair: kind.isPair,
    existingF: given.existingF,
    crossF: given.crossF ?? 0,
    suppressorF: given.suppressorF,
  }
  const legF = given.capacitanceF ?? 0
  const inductanceH = given.inductanceH ?? 0
  const filter: SignalFilter = {
    topology: inductanceH > 0 ? 'LC' : 'C',
    capacitorF: exactly(legF),
    inductanceH: exactly(inductanceH),
  }
  const farads = seenFarads({ ...taken, legF })
  const signal: LoadedSignal = { facts, farads, section: sectionOf(facts, inductanceH, farads) }
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
function sectionOf(facts: SignalFacts, inductanceH: number, farads: number): LcSection | undefined {
  const ends = signalEnds(facts)
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
