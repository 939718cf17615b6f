/** The reasons of the four judgements as sentences. */
import { WIRE_H_PER_M } from '../../../../reference/instruments.ts'
import { CROWBAR_ON } from '../../../../reference/suppressors.ts'
import type {
  CapacitorReason,
  CircuitReason,
  LegsLack,
  Spread,
  SuppressorReason,
  WayReason,
} from '../../../surge/judge.ts'
import { RATED_UP_TO_SEC } from '../../../surge/rating.ts'
import type { Excess } from '../../../surge/trace.ts'
import type { Finding } from '../../../types.ts'
import { isLineReason, lineSentence } from './line.ts'
import { placeWords } from './place.ts'
import { percent, share, show, V, volts } from './show.ts'

/** How a value is put: as entered, and where it is worse. */
function spreadWords({ asEntered, worst, at }: Spread, say: (value: number) => string): string {
  if (!at || say(worst) === say(asEntered)) return say(worst)
  const place = placeWords(at)
  return place === ''
    ? `${say(asEntered)}, the other way round ${say(worst)}`
    : `${say(asEntered)} with the parts as entered and ${say(worst)} at ${place}`
}

function heldWords(excess: Excess | undefined): string {
  if (!excess || excess.voltSec <= 0) return ''
  const through = `${show(excess.voltSec * 1e6, 'number')} V·µs let through`
  return excess.isOpen
    ? `, and is still above at the end of the run (${through})`
    : `, and is above it until ${show(excess.untilSec, 'time')} (${through})`
}

export const circuitFindings = (reasons: readonly CircuitReason[]): readonly Finding[] =>
  reasons.map((reason) => ({ verdict: reason.verdict, sentence: circuitSentence(reason) }))

function circuitSentence(reason: CircuitReason): string {
  switch (reason.is) {
    case 'load-unjudged':
      return `The load sees ${spreadWords(reason.load, volts)}. Enter what the circuit withstands to judge it.`
    case 'load-hot':
      return `Hot, the breakdown is ${volts(reason.hotRiseV)} higher and lifts the load to ${volts(reason.hotV)}, ${relation(reason.verdict)} the ${V(reason.withstandV)} the circuit withstands.`
    case 'load':
      return loadSentence(reason)
    case 'insulation':
      return reason.limitV === undefined
        ? `Both legs together rise to ${volts(reason.volts)}${hotWords(reason)}, across the insulation of the line transformer. Enter what that withstands.`
        : `Both legs together rise to ${volts(reason.volts)}${hotWords(reason)}, ${relation(reason.verdict)} the ${V(reason.limitV)} the insulation of the line transformer withstands.`
    case 'between-legs':
      return betweenSentence(reason)
    case 'way-unknown':
      return waySentence('the load', reason)
    case 'way-long':
      return `${show(reason.lineH, 'inductance')} ahead of the connector is that of ${show(reason.lineH / WIRE_H_PER_M.henriesPerM / 1e3, 'number')} km of wire, and holds the pulse down. If metres were meant, enter about 1 µH for each.`
    case 'rest-unknown':
      return 'Name the line, or enter its highest peak: what it holds by itself comes on top of the pulse.'
    case 'legs-unjudged':
      return `What stands between the legs is not worked out, so the ${V(reason.pairWithstandV)} entered there are not judged: ${LEGS_LACK[reason.lacks]}.`
  }
}

/** Nobody entered the wire, and some metres of it would decide otherwise. */
const waySentence = (where: string, { volts: wayV, at, withstandV, would }: WayReason): string =>
  `The cable ahead of the connector is not known: at ${placeWords(at)} ${where} would see ${volts(wayV)}, ${relation(would)} the ${V(withstandV)} withstood. Enter its inductance.`

/** Of volts that count the temperature: what it adds. */
const hotWords = ({ hotRiseV }: { readonly hotRiseV: number }): string =>
  hotRiseV > 0 ? ` (${volts(hotRiseV)} of it because the breakdown is higher hot)` : ''

/** Of volts at 25 °C: what they become. */
const hotter = ({ worst }: Spread, hotRiseV: number): string =>
  hotRiseV > 0 ? ` and, the breakdown being higher hot, ${volts(worst + hotRiseV)}` : ''

const LEGS_LACK: Readonly<Record<LegsLack, string>> = {
  'pair-line': 'name the line, and whether it is a pair is known',
  'leg-parts':
    'this surge comes on both legs alike, and only a part from each leg to chassis says how far they then part. Judge the surge between the legs',
}

const relation = (verdict: Finding['verdict']): string =>
  verdict === 'fails' ? 'above' : verdict === 'marginal' ? 'within 5 % of' : 'below'

function loadSentence({ load, withstandV, verdict, excess }: Extract<CircuitReason, { is: 'load' }>): string {
  const peaks = `The load peaks at ${spreadWords(load, volts)}`
  if (verdict === 'fails')
    return `${peaks}, ${volts(load.worst - withstandV)} above what the circuit withstands${heldWords(excess)}.`
  return `${peaks}, ${relation(verdict)} the ${V(withstandV)} the circuit withstands.`
}

function betweenSentence({
  volts: betweenV,
  hotRiseV,
  limitV,
  borrowed,
  verdict,
}: Extract<CircuitReason, { is: 'between-legs' }>): string {
  const said = `Parts from each leg to chassis let up to ${volts(betweenV)}${hotWords({ hotRiseV })} stand between the legs`
  if (limitV === undefined || (borrowed && verdict === 'unknown'))
    return `${said}: two clamps. Enter what the circuit withstands between its legs.`
  return `${said}, ${relation(verdict)} the ${V(limitV)} ${borrowed ? 'the circuit withstands to chassis' : 'it withstands there'}.`
}

export const capacitorFindings = (reasons: readonly CapacitorReason[]): readonly Finding[] =>
  reasons.map((reason) => ({ verdict: reason.verdict, sentence: capacitorSentence(reason) }))

function capacitorSentence(reason: CapacitorReason): string {
  if (reason.is === 'way-unknown') return waySentence('a filter capacitor', reason)
  const { verdict, peak, hotRiseV, withstandV } = reason
  return withstandV === undefined
    ? `A filter capacitor sees ${spreadWords(peak, volts)}${hotter(peak, hotRiseV)}. Enter what it withstands; its working voltage is not the measure.`
    : `A filter capacitor sees ${spreadWords(peak, volts)}${hotter(peak, hotRiseV)}, ${relation(verdict)} the ${V(withstandV)} it withstands.`
}

export const suppressorFindings = (reasons: readonly SuppressorReason[]): readonly Finding[] =>
  reasons.map((reason) => ({ verdict: reason.verdict, sentence: suppressorSentence(reason) }))

function suppressorSentence(reason: SuppressorReason): string {
  if (isLineReason(reason)) return lineSentence(reason)
  switch (reason.is) {
    case 'rating-missing':
      return 'Enter the 10/1000 µs pulse power of the suppressor to judge its rating.'
    case 'no-rating-left':
      return 'At this temperature the suppressor has no rating left.'
    case 'not-in-the-way':
      return 'A part across the pair does nothing for what both legs carry alike: this surge passes it by.'
    case 'collapse-unknown':
      return `A crowbar that fires drops to about ${V(CROWBAR_ON.value)} at once: how the inductor rings then is not worked out here.`
    case 'rating-too-long':
      return `The pulse takes ${show(reason.halfSec, 'time')} to fall to half, and a 10/1000 µs rating says nothing of more than ${show(RATED_UP_TO_SEC, 'time')}: ask for the curve of the part at that length, or stand it off.`
    case 'rating':
      return ratingSentence(reason)
  }
}

function ratingSentence({ usage, usedFrac, ratedW }: Extract<SuppressorReason, { is: 'rating' }>): string {
  const peak = `${show(usage.peakW, 'power')} peak`
  const wear = usage.wearShare < 1 ? ` It wears: ${percent(usage.wearShare)} of that is left over these repeats.` : ''
  const tail = usedFrac.worst > 3 ? ' Far above the rating the figure only says that it does not survive.' : ''
  const used = spreadWords(usedFrac, share)
  return `The pulse uses ${used}${used.includes(',') ? ',' : ''} of what its ${show(ratedW, 'power')} 10/1000 µs rating allows (${peak}).${wear}${tail}`
}
