/** From what was entered to what the rows of the window need. */
import type { LineKind } from '../../reference/line-kinds.ts'
import { crossPerLegF, legFactor, loadPerLeg, type NoiseMode, sourcePerLeg } from '../bounds/legs.ts'
import { roomPerLegF, roomToChassisF, type Taken } from '../bounds/room.ts'
import type { Need } from '../bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../bounds/worst-case.ts'
import type { WindowGiven } from '../checks/window/inputs.ts'
import { permittedLabel, worksBasis, worksWhy } from '../explain/ceiling.ts'
import { coilClauses } from '../explain/loading.ts'
import { navyWhy } from '../explain/navy-rule.ts'
import { exactly } from '../loading/box.ts'
import { type LoadingCeiling, loadingCeiling } from '../loading/ceiling.ts'
import { judgeLoading } from '../loading/judge.ts'
import type { SignalFacts } from '../loading/signal.ts'
import { CAPACITOR_COUNT } from '../network/circuit.ts'
import { navyLimit } from '../power/navy-rule.ts'
import type { Basis, Issue, Topology } from '../types.ts'
import type { Ceiling, WindowFacts } from './row.ts'

export type WindowSetup = {
  readonly facts: WindowFacts
  readonly mode: NoiseMode
  readonly isPair: boolean
  readonly needs: readonly Need[]
  readonly missing: readonly string[]
  /** fields the kind of line needs before its ceiling is known */
  readonly asks: readonly string[]
  readonly ceiling: LoadingCeiling | undefined
  /** why the ceiling is where it is, or what to enter for one; undefined = no line */
  readonly works: { readonly why: string; readonly basis: Basis } | undefined
  readonly taken: Taken
  readonly kind: LineKind | undefined
  /** differential noise that lies inside the signal band */
  readonly inBandHz: number | undefined
  /** words about rules that were asked for but could not be applied */
  readonly ruleNotes: readonly string[]
}

/**
 * Pairs each frequency with its need: one need for all, or one for each.
 * Returns an issue when the two lists have different lengths.
 */
export function pairNeeds(hz: readonly number[], db: readonly number[]): readonly Need[] | Issue {
  const first = db[0]
  if (first === undefined || hz.length === 0) return []
  if (db.length !== 1 && db.length !== hz.length) {
    return {
      key: 'neededDb',
      code: 'length-mismatch',
      message: `${counted(db.length, 'need')} for ${hz.length === 1 ? '1 frequency' : `${hz.length} frequencies`}; give one need for all, or one for each, separated by “;”.`,
    }
  }
  return hz.map((f, i) => ({ hz: f, db: db[i] ?? first }))
}

const counted = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`

/** Everything the rows need, with what is still missing in words. */
export function setUp(given: WindowGiven, kind: LineKind | undefined, needs: readonly Need[]): WindowSetup {
  const mode: NoiseMode = given.mode === 'differential' ? 'differential' : 'common'
  const isPair = kind?.isPair ?? false
  const taken: Taken = {
    isPair,
    existingF: given.existingF ?? 0,
    crossF: given.crossF ?? 0,
    suppressorF: given.suppressorF ?? 0,
  }
  const spread = spreadOf(given)
  const signal: SignalFacts | undefined = kind && { kind, ...optional(given) }
  const ceiling = signal && loadingCeiling(signal)
  const works = signal && ceiling && { why: worksWhy(signal, ceiling.works), basis: worksBasis(signal, ceiling.works) }
  const asked = asksOf(ceiling)
  const rule = kind ? chassisRule(given, kind, taken) : {}
  const useful = kind?.usefulHz?.hz
  const lowest = Math.min(...needs.map((n) => n.hz))
  return {
    mode,
    isPair,
    needs,
    taken,
    kind,
    ceiling,
    works,
    missing: [...missingOf(given, needs), ...wordsFor(asked)],
    asks: asked,
    inBandHz: mode === 'differential' && isPair && useful !== undefined && lowest <= useful ? useful : undefined,
    ruleNotes: rule.note === undefined ? [] : [rule.note],
    facts: {
      around: aroundOf(given, needs, legFactor(isPair, mode), crossPerLegF(taken.crossF, isPair, mode), spread),
      leastShare: leastShare(spread),
      mostShare: mostShare(spread),
      works: worksOf(ceiling, taken, works?.why ?? ''),
      chassis: rule.ceiling,
      permitted: kind && ceiling ? permittedOf(kind, ceiling, taken) : [],
      buildableF: given.maxBuildableF,
      ownCeilingIsEnough: kind?.family === 'power-dc' || kind?.family === 'power-ac',
      inductorHurt: hurtOf(given, kind, taken),
    },
  }
}

function optional(given: WindowGiven): { bitRateHz?: number; driverEdgeSec?: number; signalOhm?: number } {
  return {
    ...(given.bitRateHz === undefined ? {} : { bitRateHz: given.bitRateHz }),
    ...(given.driverEdgeSec === undefined ? {} : { driverEdgeSec: given.driverEdgeSec }),
    ...(given.signalOhm === undefined ? {} : { signalOhm: given.signalOhm }),
  }
}

/** Spread of the part as entered or assumed; the descriptor's assumptions fill every gap. */
export function spreadOf(given: WindowGiven): Spread {
  return {
    tolerance: given.toleranceFrac ?? { lowFrac: 0.2, highFrac: 0.2 },
    temperatureFrac: given.temperatureFrac ?? 0.15,
    biasFrac: given.biasFrac ?? 0.12,
    ageingDecades: given.ageingDecades ?? 2,
    ageingFracPerDecade: given.ageingFracPerDecade ?? 0.025,
  }
}

/** The field that would tell the ceiling, where the kind has one. */
function asksOf(ceiling: LoadingCeiling | undefined): readonly ('bitRateHz' | 'signalOhm')[] {
  const works = ceiling?.works
  return works?.farads === undefined && works?.ask !== undefined ? [works.ask] : []
}

function wordsFor(asked: ReturnType<typeof asksOf>): string[] {
  return asked.map((key) => (key === 'bitRateHz' ? 'the bit rate' : 'the signal resistance'))
}

function missingOf(given: WindowGiven, needs: readonly Need[]): string[] {
  const missing: string[] = []
  if (given.lineKind === undefined) missing.push('the line')
  if (given.frequencyHz === undefined) missing.push('the noise frequency')
  if (given.neededDb === undefined) missing.push('the attenuation needed')
  else if (needs.length === 0 && given.frequencyHz !== undefined) missing.push('a need for each frequency')
  if (given.sourceOhm === undefined) missing.push('the noise source')
  if (given.loadOhm === undefined) missing.push('the noise load')
  return missing
}

function aroundOf(
  given: WindowGiven,
  needs: readonly Need[],
  factor: number,
  crossF: number,
  spread: Spread,
): WindowFacts['around'] {
  const { sourceOhm, loadOhm } = given
  if (needs.length === 0 || sourceOhm === undefined || loadOhm === undefined) return undefined
  const least = given.inductanceH ?? 1e-6
  // The inductance entered is its least value; the same tolerance spread above it gives the most.
  const most = (least * (1 + spread.tolerance.highFrac)) / (1 - spread.tolerance.lowFrac)
  return {
    needs,
    sources: sourceOhm.map((ohm) => sourcePerLeg({ ohm, seriesH: given.sourceH ?? 0 }, factor)),
    load: loadPerLeg(
      { ohm: loadOhm, parallelF: given.loadF ?? 0, parallelH: given.loadH ?? Number.POSITIVE_INFINITY },
      factor,
    ),
    esrOhm: given.esrOhm ?? 0,
    eslH: given.eslH ?? 0,
    bondOhm: given.bondOhm ?? 0,
    bondH: given.bondH ?? 0,
    inductancesH: [least, most],
    extraF: crossF * leastShare(spread),
    extraMostF: crossF * mostShare(spread),
  }
}

function worksOf(ceiling: LoadingCeiling | undefined, taken: Taken, why: string): Ceiling | undefined {
  const works = ceiling?.works
  if (works?.farads === undefined) return undefined
  return {
    id: 'loading-works',
    roomF: roomPerLegF(works.farads, taken),
    why,
    ...(taken.suppressorF > 0 ? { bareRoomF: roomPerLegF(works.farads, { ...taken, suppressorF: 0 }) } : {}),
  }
}

function permittedOf(kind: LineKind, ceiling: LoadingCeiling, taken: Taken): Ceiling[] {
  return ceiling.permitted.map((p) => ({
    id: `permitted-${p.id}`,
    why: permittedLabel(kind, p),
    roomF: p.per === 'leg' ? roomToChassisF(p.farads, taken) : roomPerLegF(p.farads, taken),
  }))
}

function chassisRule(given: WindowGiven, kind: LineKind, taken: Taken): { ceiling?: Ceiling; note?: string } {
  if (given.navyRule !== true) return {}
  if (!kind.supply) return { note: 'The Navy line-to-ground rule is for power lines; it does not apply to this line.' }
  const supply = { supplyHz: kind.supply.nominalHz, loadW: given.loadW }
  const limit = navyLimit(supply)
  const why = navyWhy(limit, supply)
  if (limit.limitF === undefined) return { note: why }
  return { ceiling: { id: 'navy-4.2.2', roomF: roomToChassisF(limit.limitF, taken), why } }
}

function hurtOf(given: WindowGiven, kind: LineKind | undefined, taken: Taken): WindowFacts['inductorHurt'] {
  const inductanceH = exactly(given.inductanceH ?? 1e-6)
  return (topology: Topology, legF: number) => {
    if (!kind) return undefined
    const capacitorF = exactly(legF / Math.max(1, CAPACITOR_COUNT[topology]))
    const filter = { topology, capacitorF, inductanceH }
    return coilClauses(judgeLoading({ facts: { kind, ...optional(given) }, taken, filter }))[0]
  }
}
