/** Does the circuit live, does the suppressor live, does the filter capacitor live: each with its reasons as numbers. */
import type { Verdict } from '../terms.ts'
import { worse } from '../verdict.ts'
import type { LineReason } from './line.ts'
import type { Excess } from './trace.ts'
import type { Usage } from './usage.ts'
import type { Found, WorstAt, WorstFigures } from './worst.ts'

/** Closer to a limit than this share is marginal: the model and the spread are no better. */
export const CLOSE = 0.05
/** A rating used beyond this is marginal: repeats and spread are estimates. */
export const MOSTLY_USED = 0.8

/** A peak with the parts as entered, and the worst over their spread with where it lies. */
export type Spread = { readonly asEntered: number; readonly worst: number; readonly at: WorstAt | undefined }

export type LegsLack = 'pair-line' | 'leg-parts'

/** Of a bundle test without its wire: some metres of it would lift the volts above what is withstood, or close to it. */
export type WayReason = {
  readonly is: 'way-unknown'
  readonly verdict: Verdict
  /** hot */
  readonly volts: number
  readonly at: WorstAt
  readonly withstandV: number
  /** what the volts would come to against it */
  readonly would: Verdict
}

export type CircuitReason =
  | WayReason
  /** more inductance was entered than a cable has, and it holds the volts down */
  | { readonly is: 'way-long'; readonly verdict: Verdict; readonly lineH: number }
  | { readonly is: 'load-unjudged'; readonly verdict: Verdict; readonly load: Spread }
  | {
      readonly is: 'load'
      readonly verdict: Verdict
      readonly load: Spread
      readonly withstandV: number
      readonly excess: Excess | undefined
    }
  | {
      readonly is: 'load-hot'
      readonly verdict: Verdict
      /** with the breakdown as it is at the temperature entered */
      readonly hotV: number
      readonly hotRiseV: number
      readonly withstandV: number
    }
  | {
      readonly is: 'between-legs'
      readonly verdict: Verdict
      /** with the breakdown as it is at the temperature entered */
      readonly volts: number
      readonly hotRiseV: number
      readonly limitV: number | undefined
      /** the figure is the one to chassis, none being entered between the legs */
      readonly borrowed: boolean
    }
  /** neither the line nor its highest peak is named: what it holds by itself is missing in the volts */
  | { readonly is: 'rest-unknown'; readonly verdict: Verdict }
  /** a figure between the legs was entered, and what stands there is not worked out */
  | {
      readonly is: 'legs-unjudged'
      readonly verdict: Verdict
      readonly pairWithstandV: number
      /** what is missing for it */
      readonly lacks: LegsLack
    }
  | {
      readonly is: 'insulation'
      readonly verdict: Verdict
      /** with the breakdown as it is at the temperature entered */
      readonly volts: number
      readonly hotRiseV: number
      readonly limitV: number | undefined
    }

export type SuppressorReason =
  | { readonly is: 'rating-missing'; readonly verdict: Verdict }
  | { readonly is: 'no-rating-left'; readonly verdict: Verdict }
  /** longer than the square root of time is known to hold */
  | { readonly is: 'rating-too-long'; readonly verdict: Verdict; readonly halfSec: number }
  | {
      readonly is: 'rating'
      readonly verdict: Verdict
      readonly usage: Usage
      readonly usedFrac: Spread
      readonly ratedW: number
    }
  | { readonly is: 'not-in-the-way'; readonly verdict: Verdict }
  | { readonly is: 'collapse-unknown'; readonly verdict: Verdict }
  | LineReason

export type CapacitorReason = WayReason | CapacitorPeakReason

export type CapacitorPeakReason = {
  readonly is: 'capacitor'
  readonly verdict: Verdict
  /** at 25 °C */
  readonly peak: Spread
  readonly hotRiseV: number
  readonly withstandV: number | undefined
}

export type Judgement<R extends { readonly verdict: Verdict }> = {
  readonly verdict: Verdict
  readonly reasons: readonly R[]
}

/** The worst of the reasons decides. */
export const judged = <R extends { readonly verdict: Verdict }>(reasons: readonly R[]): Judgement<R> => ({
  verdict: reasons.reduce<Verdict>((worst, reason) => worse(worst, reason.verdict), 'ok'),
  reasons,
})

/** A value against what must not be exceeded. */
export const against = (value: number, limit: number): Verdict =>
  value > limit ? 'fails' : value > (1 - CLOSE) * limit ? 'marginal' : 'ok'

/** A yes that a longer way would take back waits for the length of the way. */
function wayReasons(q: {
  readonly found: Verdict
  readonly peak: Found | undefined
  readonly hotRiseV: number
  readonly withstandV: number | undefined
}): readonly WayReason[] {
  const { found, peak, hotRiseV, withstandV } = q
  if (peak === undefined || withstandV === undefined || found === 'fails' || found === 'unknown') return []
  const volts = peak.value + hotRiseV
  const would = against(volts, withstandV)
  return worse(found, would) === found
    ? []
    : [{ is: 'way-unknown', verdict: 'unknown', volts, at: peak.at, withstandV, would }]
}

/** The worst with the cable of a bundle test, where it was not entered, and what a hot breakdown adds to it. */
export type LongWay = { readonly worst: WorstFigures; readonly hotRiseV: number }

export type CircuitQuestion = {
  readonly load: Spread
  readonly connectorV: number
  readonly withstandV: number | undefined
  /** nobody said what the line holds by itself, and no suppressor asks for it */
  readonly isRestUnknown: boolean
  readonly hotRiseV: number
  readonly excess: Excess | undefined
  /** most that can stand between the two legs of a pair, hot; undefined on a single line */
  readonly betweenLegsV: number | undefined
  /** of it, what the breakdowns gain: of both parts where both break down */
  readonly betweenRiseV: number
  readonly pairWithstandV: number | undefined
  /** why nothing is worked out between the legs, where there may be two of them */
  readonly legsLack: LegsLack | undefined
  /** the pulse is common to both legs in front of a transformer */
  readonly isInsulated: boolean
  readonly insulationWithstandV: number | undefined
  readonly longWay: LongWay | undefined
  /** entered ahead of the connector, where that is more than a cable has */
  readonly oddWayH: number | undefined
}

/**
 * The load against what the circuit withstands; `hotRiseV`: what the breakdown gains at the temperature entered. Behind
 * a transformer the common mode stands across its insulation, and only what differs between the legs reaches the circuit.
 */
export function circuitJudgement(q: CircuitQuestion): Judgement<CircuitReason> {
  const rest: readonly CircuitReason[] = q.isRestUnknown ? [{ is: 'rest-unknown', verdict: 'unknown' }] : []
  const own = q.isInsulated ? [insulationReason(q)] : loadReasons(q)
  const way = wayReasons({
    found: judged(own).verdict,
    peak: q.isInsulated ? q.longWay?.worst.connector : q.longWay?.worst.load,
    hotRiseV: q.longWay?.hotRiseV ?? 0,
    withstandV: q.isInsulated ? q.insulationWithstandV : q.withstandV,
  })
  const odd: readonly CircuitReason[] =
    q.oddWayH === undefined ? [] : [{ is: 'way-long', verdict: 'marginal', lineH: q.oddWayH }]
  return judged<CircuitReason>([...own, ...legReasons(q), ...rest, ...way, ...odd])
}

function loadReasons({ load, withstandV, hotRiseV, excess }: CircuitQuestion): CircuitReason[] {
  if (withstandV === undefined) return [{ is: 'load-unjudged', verdict: 'unknown', load }]
  const verdict = against(load.worst, withstandV)
  const hotV = load.worst + hotRiseV
  const hot = against(hotV, withstandV)
  if (hot !== verdict) return [{ is: 'load-hot', verdict: hot, hotV, hotRiseV, withstandV }]
  return [{ is: 'load', verdict, load, withstandV, excess }]
}

function insulationReason({ connectorV, hotRiseV, insulationWithstandV }: CircuitQuestion): CircuitReason {
  const volts = connectorV + hotRiseV
  return {
    is: 'insulation',
    verdict: insulationWithstandV === undefined ? 'unknown' : against(volts, insulationWithstandV),
    volts,
    hotRiseV,
    limitV: insulationWithstandV,
  }
}

function legReasons(q: CircuitQuestion): CircuitReason[] {
  const { betweenLegsV, betweenRiseV, pairWithstandV, withstandV, legsLack } = q
  if (betweenLegsV === undefined)
    return legsLack === undefined || pairWithstandV === undefined
      ? []
      : [{ is: 'legs-unjudged', verdict: 'unknown', pairWithstandV, lacks: legsLack }]
  const limitV = pairWithstandV ?? withstandV
  const borrowed = pairWithstandV === undefined
  const found: Verdict = limitV === undefined ? 'unknown' : against(betweenLegsV, limitV)
  // a figure to chassis can clear the pair, but not condemn it
  const verdict: Verdict = borrowed && found !== 'ok' ? 'unknown' : found
  return [{ is: 'between-legs', verdict, volts: betweenLegsV, hotRiseV: betweenRiseV, limitV, borrowed }]
}

/** The highest volts on a filter capacitor, hot, against its own withstand. */
export function capacitorJudgement(q: {
  readonly peak: Spread
  readonly hotRiseV: number
  readonly withstandV: number | undefined
  readonly longWay: LongWay | undefined
}): Judgement<CapacitorReason> {
  const { peak, hotRiseV, withstandV, longWay } = q
  const verdict: Verdict = withstandV === undefined ? 'unknown' : against(peak.worst + hotRiseV, withstandV)
  const way = wayReasons({
    found: verdict,
    peak: longWay?.worst.capacitor,
    hotRiseV: longWay?.hotRiseV ?? 0,
    withstandV,
  })
  return judged<CapacitorReason>([{ is: 'capacitor', verdict, peak, hotRiseV, withstandV }, ...way])
}

/** Rating used against what is left of it; 80 % is the most that earns a yes. */
export function ratingReason(
  usage: Usage | undefined,
  usedFrac: Spread | undefined,
  ratedW: number | undefined,
): SuppressorReason {
  if (!usage || ratedW === undefined) return { is: 'rating-missing', verdict: 'unknown' }
  if (usage.totalFrac === undefined || !usedFrac) return { is: 'no-rating-left', verdict: 'fails' }
  const { worst } = usedFrac
  const verdict: Verdict = worst > 1 ? 'fails' : worst > MOSTLY_USED ? 'marginal' : 'ok'
  return { is: 'rating', verdict, usage, usedFrac, ratedW }
}
