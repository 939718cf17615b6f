/** What the judgement of a signal says, sentence by sentence. Shared by every check that judges a signal. */
import type { LineKind } from '../../reference/line-kinds.ts'
import type { CeilingAsk } from '../loading/ceiling.ts'
import type { LoadingJudgement, LoadingReason } from '../loading/judge.ts'
import { bitSecOf, type SignalFacts, signalOhmOf } from '../loading/signal.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Finding } from '../types.ts'
import { askedWord, permittedInLegs, worksWhy } from './ceiling.ts'

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)

/** Every reason of a judgement as a finding. */
export function judgementFindings(facts: SignalFacts, judgement: LoadingJudgement): readonly Finding[] {
  return judgement.reasons.map((reason) => ({
    verdict: reason.verdict,
    sentence: reasonSentence(facts, judgement, reason),
  }))
}

/** One reason as a sentence with its numbers. */
export function reasonSentence(facts: SignalFacts, { ceiling }: LoadingJudgement, reason: LoadingReason): string {
  switch (reason.is) {
    case 'no-ceiling':
      return worksWhy(facts, ceiling.works)
    case 'works':
      return worksSentence(facts, reason, worksWhy(facts, ceiling.works))
    case 'permitted':
      return permittedSentence(facts.kind, ceiling.permitted, reason)
    case 'own-lacks':
      return ownLacksSentence(facts, reason.ask)
    case 'cross-on-single':
      return CROSS_ON_SINGLE.sentence
    default:
      return coilSentence(reason, 'the inductor')
  }
}

/** A line-to-line capacitor where there is but one wire. */
export const CROSS_ON_SINGLE: Finding = {
  verdict: 'unknown',
  sentence:
    'A line-to-line capacitor has no meaning on a single line and was not counted: enter it as already on the line.',
}

/** What a coil of this name does to the signal. */
export const coilSentence = (reason: CoilReason, coil: string): string => `With ${coil} ${coilClause(reason)}.`

export const ownLacksSentence = (facts: SignalFacts, ask: CeilingAsk): string =>
  `A limit of your own is not judged yet: enter ${askedWord(facts, ask)}.`

type CeilingReason = Extract<
  LoadingReason,
  { is: 'no-ceiling' | 'works' | 'permitted' | 'own-lacks' | 'cross-on-single' }
>
export type CoilReason = Exclude<LoadingReason, CeilingReason>

const OF_CEILING: ReadonlySet<string> = new Set<CeilingReason['is']>([
  'no-ceiling',
  'works',
  'permitted',
  'own-lacks',
  'cross-on-single',
])

export const isCoil = (reason: LoadingReason): reason is CoilReason => !OF_CEILING.has(reason.is)

/** What a coil does to the signal, worst first, as clauses with a subject: "the line rings near 2 MHz …". */
export function coilClauses({ reasons }: LoadingJudgement): readonly string[] {
  const coil = reasons.filter(isCoil)
  return [
    ...coil.filter(({ verdict }) => verdict === 'fails'),
    ...coil.filter(({ verdict }) => verdict !== 'fails'),
  ].map(coilClause)
}

function coilClause(reason: CoilReason): string {
  switch (reason.is) {
    case 'resistance-unknown':
      return 'the line may ring: whether it does is not known until the signal resistance is entered'
    case 'ringing':
      return `the line rings near ${show(reason.hz, 'frequency')} (damping ${show(reason.damping, 'number', 2)} at worst, below ${reason.leastDamping})`
    case 'overshoot':
      return `the line rings: a step goes over by ${show(reason.overshootFrac, 'fraction', 2)} at worst, more than ${show(reason.mostFrac, 'fraction', 2)}`
    case 'gain':
      return `a resonance lifts the signal by ${show(reason.gainDb, 'decibel')} near ${show(reason.hz, 'frequency')}`
    case 'own-edge':
      return `its own edge takes ${show(reason.edgeSec, 'time')}, over the ${show(reason.limitSec, 'time')} a bit leaves`
    case 'edge':
      return `the edge is ${show(reason.edgeSec, 'time')}, over the ${show(reason.limitSec, 'time')} allowed`
    case 'mask':
      return `the return loss is ${show(reason.returnLossDb, 'decibel')} at ${show(reason.hz, 'frequency')}; the mask asks ${show(reason.maskDb, 'decibel')}`
    case 'band-loss':
      return `the signal loses ${show(reason.lossDb, 'decibel')} at ${show(reason.hz, 'frequency')}, over the ${show(reason.limitDb, 'decibel')} it may`
    case 'phase':
      return `the carrier turns by ${show(reason.deg, 'angle')} at ${show(reason.hz, 'frequency')}, over the ${show(reason.limitDeg, 'angle')} it may`
    case 'terminal':
      return `the terminal is ${show(reason.ohm, 'resistance')} at ${show(reason.hz, 'frequency')}, below the ${show(reason.leastOhm, 'resistance')} it must keep`
  }
}

function worksSentence(facts: SignalFacts, reason: Extract<LoadingReason, { is: 'works' }>, why: string): string {
  const { seenF, worksF, roomF, verdict } = reason
  if (verdict === 'ok' || roomF > 0) {
    const sees = `The signal sees ${show(seenF, 'capacitance')}${facts.kind.isPair ? ' between the wires' : ''}`
    return verdict === 'ok'
      ? `${sees}, of the ${show(worksF, 'capacitance')} it stands: ${why}.`
      : `${sees}; it stands ${show(worksF, 'capacitance')}: ${why}. ${slowerRate(facts, reason)}`.trim()
  }
  return `Nothing is left for a filter: ${why}. ${slowerRate(facts, reason)}`.trim()
}

/** The rate at which this capacitance would work, for kinds that are judged by the bit. */
function slowerRate(facts: SignalFacts, { seenF, worksF }: Extract<LoadingReason, { is: 'works' }>): string {
  const bitSec = bitSecOf(facts)
  const { rule } = facts.kind.loading
  const byBit = rule === 'own-edge' || rule === 'can-recessive' || rule === 'slew'
  if (bitSec === undefined || !byBit || facts.kind.bitRateHz !== undefined || seenF <= 0) return ''
  return `At ${show(worksF / seenF / bitSec, 'bitRate')} or slower it would work.`
}

function permittedSentence(
  kind: LineKind,
  permitted: LoadingJudgement['ceiling']['permitted'],
  { id, roomF }: Extract<LoadingReason, { is: 'permitted' }>,
): string {
  const figure = permitted.find((one) => one.id === id)
  const said = figure === undefined ? id : permittedInLegs(kind, figure, roomF)
  return `More than is allowed (${said}). Going over it needs design approval.`
}

/** Names the slowest legal driver where the ceiling counts from the nominal edge because none was entered. */
export function driverFindings({ kind, driverEdgeSec }: SignalFacts): readonly Finding[] {
  const rule = kind.loading
  if (rule.rule !== 'edge-rss' || driverEdgeSec !== undefined) return []
  return [
    {
      verdict: 'ok',
      sentence: `Counted from the nominal driver edge of ${show(rule.driverEdgeSec, 'time')}. The slowest legal driver, ${show(rule.slowestDriverSec, 'time')}, leaves no room at all: measure the edge and enter it.`,
    },
  ]
}

/** What is true of the kind whatever was entered: the slowest legal driver, the kind's range of resistance. */
export function kindFindings(facts: SignalFacts, seenF: number): readonly Finding[] {
  const rule = facts.kind.loading
  const said: Finding[] = [...driverFindings(facts)]
  if (rule.rule === 'slew' && seenF > 0 && rule.driverA / seenF > rule.limitVPerSec)
    said.push({
      verdict: 'ok',
      sentence: `With so little on the line ${show(rule.driverA, 'current')} would exceed ${rule.limitVPerSec / 1e6} V/µs: the driver must limit its own slew.`,
    })
  const range = facts.kind.signalOhm
  if (
    facts.signalOhm === undefined &&
    range?.leastOhm !== undefined &&
    range.mostOhm !== undefined &&
    signalOhmOf(facts) === range.mostOhm
  )
    said.push({
      verdict: 'ok',
      sentence: `Signal resistance taken at the top of ${show(range.leastOhm, 'resistance')} to ${show(range.mostOhm, 'resistance')}: a lower one leaves more room. What rings with an inductor is judged at the lowest.`,
    })
  return said
}
