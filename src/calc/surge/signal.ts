/** What suppressor and filter together do to the signal of a line: the one judgement of a signal. Numbers only. */
import type { LineKind } from '../../reference/line-kinds.ts'
import { roomPerLegF, type Taken } from '../bounds/room.ts'
import { leastShare, mostShare, type Spread } from '../bounds/worst-case.ts'
import { exactly, type SignalFilter } from '../loading/box.ts'
import { judgeLoading, type LoadingJudgement } from '../loading/judge.ts'
import type { OwnCeiling, SignalFacts } from '../loading/signal.ts'
import type { Verdict } from '../terms.ts'
import type { Bound } from '../types.ts'
import type { FittedFilter } from './circuit.ts'

export type SignalAnswer =
  | { readonly is: 'none'; readonly why: 'no-line' | 'barred' | 'no-rule'; readonly kind: LineKind | undefined }
  | { readonly is: 'suppressor-unknown'; readonly verdict: 'unknown'; readonly facts: SignalFacts }
  | ({ readonly is: 'judged' } & JudgedSignal)

export type JudgedSignal = {
  readonly verdict: Verdict
  readonly facts: SignalFacts
  readonly judgement: LoadingJudgement
  /** left for the filter's capacitors, per leg, with the suppressor and without it; undefined: no ceiling is known */
  readonly room: { readonly roomF: number; readonly wholeF: number } | undefined
  /** of the suppressor as a leg sees it, at 0 V */
  readonly suppressorF: number
  readonly bounds: readonly Bound[]
}

export type SignalQuestion = {
  readonly kind: LineKind | undefined
  /** per leg, as marked */
  readonly filter: FittedFilter
  readonly spread: Spread
  readonly part: { readonly place: 'leg' | 'pair' } | undefined
  /** at 0 V; undefined = not known */
  readonly suppressorF: number | undefined
  readonly existingF: number | undefined
  readonly bitRateHz: number | undefined
  readonly driverEdgeSec: number | undefined
  readonly signalOhm: number | undefined
  /** what the user's own specification says the signal stands */
  readonly own: OwnCeiling
}

const hasOwnLimit = ({ ceilingF, mostLossDb, mostPhaseDeg }: OwnCeiling): boolean =>
  [ceilingF, mostLossDb, mostPhaseDeg].some((limit) => limit !== undefined)

/** Judges the filter over its tolerances beside the suppressor in full at 0 V and what is on the line already. */
export function signalAnswer(q: SignalQuestion): SignalAnswer {
  const { kind } = q
  if (!kind) return { is: 'none', why: 'no-line', kind }
  if (kind.barredWhy !== undefined) return { is: 'none', why: 'barred', kind }
  if (kind.loading.rule === 'none' && !hasOwnLimit(q.own)) return { is: 'none', why: 'no-rule', kind }
  const { bitRateHz, driverEdgeSec, signalOhm, own } = q
  const facts: SignalFacts = { kind, bitRateHz, driverEdgeSec, signalOhm, own }
  if (q.part && q.suppressorF === undefined) return { is: 'suppressor-unknown', verdict: 'unknown', facts }
  const suppressorF = q.part ? (q.suppressorF ?? 0) : 0
  const across = q.part?.place === 'pair'
  const taken: Taken = {
    isPair: kind.isPair,
    existingF: q.existingF ?? 0,
    crossF: across ? suppressorF : 0,
    suppressorF: across ? 0 : suppressorF,
  }
  const judgement = judgeLoading({ facts, taken, filter: signalFilterOf(q.filter, q.spread) })
  const { works } = judgement.ceiling
  const room =
    works.farads === undefined
      ? undefined
      : {
          roomF: roomPerLegF(works.farads, taken),
          wholeF: roomPerLegF(works.farads, { ...taken, crossF: 0, suppressorF: 0 }),
        }
  return {
    is: 'judged',
    verdict: judgement.verdict,
    facts,
    judgement,
    room,
    suppressorF: across ? 2 * suppressorF : suppressorF,
    bounds: room ? [boundOf(Math.max(0, room.roomF) / countOf(q.filter))] : [],
  }
}

function signalFilterOf(filter: FittedFilter, spread: Spread): SignalFilter {
  if (filter.topology === 'none') return { topology: 'C', capacitorF: exactly(0), inductanceH: exactly(0) }
  const [one, other] =
    filter.topology === 'PI' ? [filter.capacitanceF, filter.capacitance2F] : [filter.capacitanceF, filter.capacitanceF]
  const [coil, coil2] =
    filter.topology === 'T' ? [filter.inductanceH, filter.inductance2H] : [filter.inductanceH, filter.inductanceH]
  const { lowFrac, highFrac } = spread.tolerance
  return {
    topology: filter.topology,
    capacitorF: { least: leastShare(spread) * Math.min(one, other), most: mostShare(spread) * Math.max(one, other) },
    inductanceH: {
      least: Math.min(coil, coil2),
      most: (Math.max(coil, coil2) * (1 + highFrac)) / (1 - lowFrac),
    },
  }
}

const boundOf = (farads: number): Bound => ({
  id: 'surge-signal-room',
  by: { is: 'check', check: 'surge' },
  side: 'most',
  nature: 'works',
  farads,
  per: 'capacitor',
  topology: 'any',
})

/** Capacitors of the filter that share the room. */
export const countOf = ({ topology }: FittedFilter): number => (topology === 'PI' ? 2 : 1)
