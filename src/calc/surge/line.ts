/** A suppressor against the line it sits on: does it stand what the line itself does, of either sign, for ever and for long? */
import { type BusSurge, busSurgesOf } from '../../reference/bus-surges.ts'
import type { LineKind } from '../../reference/line-kinds.ts'
import { COLD_SOAK_C, CROWBAR_ON, FORWARD_STARTS, SUPPRESSOR_TYPES } from '../../reference/suppressors.ts'
import type { Verdict } from '../terms.ts'
import { LONG_SURGE_SEC, type LongSurge, longPulseW, longSurge } from './bus.ts'
import type { FittedPart } from './part.ts'
import { breakdownAt } from './suppressor.ts'

export type LineQuestion = {
  readonly part: FittedPart
  readonly kind: LineKind | undefined
  readonly busMaxV: number | undefined
  readonly busMinV: number | undefined
  readonly supplyCategory: string | undefined
  readonly busSourceOhm: number
  readonly ratedPulseW: number | undefined
  readonly holdingA: number | undefined
}

/** What the line puts across the part. `highV` ≥ 0 ≥ `lowV`; undefined = nobody said. */
export type LinePeaks = { readonly highV: number | undefined; readonly lowV: number | undefined }

/** The volts between which the part blocks cold. */
export type Blocking = { readonly lowV: number; readonly highV: number }

type Through = {
  readonly through: LongSurge
  readonly busOhm: number
  readonly forSec: number
  readonly mayW: number | undefined
}

export type LineReason =
  | { readonly is: 'line-unknown'; readonly verdict: Verdict; readonly keys: readonly string[] }
  | { readonly is: 'low-unknown'; readonly verdict: Verdict }
  | {
      readonly is: 'conducts-steady'
      readonly verdict: Verdict
      readonly peakV: number
      readonly blocking: Blocking
      readonly forward: boolean
    }
  | ({
      readonly is: 'conducts-bus'
      readonly verdict: Verdict
      readonly peakV: number
      readonly coldV: number
      readonly cold: boolean
      readonly surge: BusSurge | undefined
    } & Through)
  | {
      readonly is: 'category-missing'
      readonly verdict: Verdict
      readonly surges: readonly { readonly row: BusSurge; readonly energyJ: number }[]
    }
  | { readonly is: 'category-empty'; readonly verdict: Verdict }
  | { readonly is: 'below-own'; readonly verdict: Verdict; readonly typedV: number; readonly ownV: number }
  | { readonly is: 'below-kind'; readonly verdict: Verdict; readonly typedV: number; readonly kindV: number }
  | { readonly is: 'leaks'; readonly verdict: Verdict; readonly peakV: number; readonly standoffV: number }
  | { readonly is: 'stands'; readonly verdict: Verdict; readonly peaks: LinePeaks; readonly blocking: Blocking }
  | { readonly is: 'holding-missing'; readonly verdict: Verdict }
  | {
      readonly is: 'crowbar-held'
      readonly verdict: Verdict
      readonly amps: number
      readonly holdingA: number
      readonly powered: boolean
    }
  | { readonly is: 'wears'; readonly verdict: Verdict; readonly powered: boolean }

type TypedPeak = Pick<LineQuestion, 'kind' | 'busMaxV'> & { readonly part: Pick<FittedPart, 'place'> }

const ownOf = ({ part, kind }: Omit<TypedPeak, 'busMaxV'>): readonly [number, number] | undefined =>
  part.place === 'pair' ? kind?.ownPeaks?.pair : kind?.ownPeaks?.leg

/** The steady peak of a supply where a lower one was typed: volts rms, or those of another bus. undefined elsewhere. */
function ownAboveTypedV(q: TypedPeak): number | undefined {
  const own = q.kind?.supply === undefined ? undefined : ownOf(q)
  return own !== undefined && q.busMaxV !== undefined && q.busMaxV < own[1] ? own[1] : undefined
}

/** The highest peak that was typed; undefined where a supply reaches more than that by itself. */
export const typedPeakV = (q: TypedPeak): number | undefined =>
  ownAboveTypedV(q) === undefined ? q.busMaxV : undefined

/**
 * Steady peaks across the part's two ends: as entered, else those of the kind. A typed peak without a sign is meant for
 * both where the kind swings both ways. A supply is never taken for less than it is.
 */
export function linePeaksOf(
  q: Pick<LineQuestion, 'kind' | 'busMaxV' | 'busMinV'> & {
    readonly part: Pick<FittedPart, 'place' | 'bidirectional'>
  },
): LinePeaks {
  const { part, kind, busMinV } = q
  const busMaxV = typedPeakV(q)
  const own = ownOf(q)
  const symmetric = own !== undefined && own[0] === -own[1]
  const ownLowV = symmetric && busMaxV !== undefined ? -busMaxV : own?.[0]
  // a bidirectional part is the same for both signs
  const mirroredV = part.bidirectional && busMaxV !== undefined ? -busMaxV : undefined
  const lowV = busMinV ?? ownLowV ?? mirroredV
  const supplyLowV = kind?.supply === undefined ? undefined : own?.[0]
  return {
    highV: busMaxV ?? own?.[1],
    lowV: lowV !== undefined && supplyLowV !== undefined ? Math.min(lowV, supplyLowV) : lowV,
  }
}

/** Cold, the breakdown is lowest; hot, the forward drop is. */
export function blockingOf(part: FittedPart): Blocking {
  const highV = breakdownAt({ breakdownV: part.leastV, tempC: COLD_SOAK_C })
  return { highV, lowV: part.bidirectional ? -highV : -FORWARD_STARTS.value }
}

/** Every reason for and against. Unknown where neither a line nor its highest peak is named. */
export function lineReasons(asked: LineQuestion): readonly LineReason[] {
  const ownV = ownAboveTypedV(asked)
  const q: LineQuestion = { ...asked, busMaxV: typedPeakV(asked) }
  const peaks = linePeaksOf(q)
  if (peaks.highV === undefined) return [{ is: 'line-unknown', verdict: 'unknown', keys: ['lineKind', 'busMaxV'] }]
  const blocking = blockingOf(q.part)
  const against = [
    ...contradicted(asked, ownV, [...steadyReasons(q, peaks, blocking), ...surgeReasons(q, blocking)]),
    ...(asked.busMaxV === undefined ? [] : conducts(q, asked.busMaxV, LONG_SURGE_SEC, undefined)),
    ...belowKind(asked, peaks, blocking),
    ...leakReasons(q, peaks, blocking),
    ...(peaks.lowV === undefined ? ([{ is: 'low-unknown', verdict: 'unknown' }] as const) : []),
    ...typeReasons(q, peaks),
  ]
  const worst = against.some(({ verdict }) => verdict !== 'ok')
  return worst ? against : [...against, { is: 'stands', verdict: 'ok', peaks, blocking }]
}

/**
 * Where a supply reaches `ownV` by itself and less was typed, one of the two is wrong: nobody knows which, so that what the
 * part would do at the supply's own peak, or in surges that were not said to be counted, is neither a yes nor a no.
 */
function contradicted(
  { busMaxV }: LineQuestion,
  ownV: number | undefined,
  found: readonly LineReason[],
): readonly LineReason[] {
  if (ownV === undefined || busMaxV === undefined) return found
  const isOpen = (reason: LineReason) =>
    reason.is === 'category-missing' || (reason.is === 'conducts-steady' && !reason.forward)
  const verdict = found.some(isOpen) ? 'unknown' : 'ok'
  return [...found.filter((reason) => !isOpen(reason)), { is: 'below-own', verdict, typedV: busMaxV, ownV }]
}

/**
 * Less was typed than the document of the kind lets a driver put on the line, and there the part would conduct: it stands
 * while every box on the line stays within what was typed. A figure of practice gives way to what was typed.
 */
function belowKind(asked: LineQuestion, { highV, lowV }: LinePeaks, blocking: Blocking): readonly LineReason[] {
  const own = asked.kind?.supply === undefined ? ownOf(asked) : undefined
  if (own === undefined || asked.kind?.ownPeaks?.source.standing === 'practice') return []
  const [ownLowV, ownHighV] = own
  const below = (typedV: number, kindV: number): LineReason => ({
    is: 'below-kind',
    verdict: 'marginal',
    typedV,
    kindV,
  })
  if (highV !== undefined && highV < ownHighV && ownHighV >= blocking.highV) return [below(highV, ownHighV)]
  if (lowV !== undefined && lowV > ownLowV && ownLowV <= blocking.lowV) return [below(lowV, ownLowV)]
  return []
}

/**
 * The line's own steady peaks, of either sign; a typed highest peak is judged as a long surge instead. Conducting only
 * cold it warms itself out of it: close, not refused.
 */
function steadyReasons(
  { busMaxV, busMinV, part }: LineQuestion,
  { highV, lowV }: LinePeaks,
  blocking: Blocking,
): LineReason[] {
  // mirrored in a part that is the same for both signs, a typed peak has been judged already
  const isMirrored = busMaxV !== undefined && busMinV === undefined && part.bidirectional
  const steady = (peakV: number, forward: boolean): LineReason => ({
    is: 'conducts-steady',
    verdict: !forward && Math.abs(peakV) < part.leastV ? 'marginal' : 'fails',
    peakV,
    blocking,
    forward,
  })
  return [
    ...(busMaxV === undefined && highV !== undefined && highV >= blocking.highV ? [steady(highV, false)] : []),
    ...(lowV !== undefined && lowV <= blocking.lowV && !isMirrored ? [steady(lowV, !part.bidirectional)] : []),
  ]
}

/** Conducts at 25 °C: refused with its joules. Conducts only cold: found. */
function conducts(q: LineQuestion, peakV: number, forSec: number, surge: BusSurge | undefined): LineReason[] {
  const coldV = blockingOf(q.part).highV
  const at = (breakdownV: number) =>
    longSurge({ busV: peakV, busOhm: q.busSourceOhm, breakdownV, dynamicOhm: q.part.dynamicOhm, forSec })
  const warm = at(q.part.leastV)
  const through = warm ?? at(coldV)
  if (!through) return []
  const mayW = q.ratedPulseW === undefined ? undefined : longPulseW({ ratedPulseW: q.ratedPulseW, forSec })
  return [
    {
      is: 'conducts-bus',
      verdict: warm ? 'fails' : 'marginal',
      cold: warm === undefined,
      peakV,
      coldV,
      surge,
      through,
      busOhm: q.busSourceOhm,
      forSec,
      mayW,
    },
  ]
}

/** Long surges of the supply: those of its category; without one all that could come are named, and asked about. */
function surgeReasons(q: LineQuestion, blocking: Blocking): LineReason[] {
  const supply = q.kind?.ownPeaks?.surgesOf
  if (supply === undefined) return []
  const both = q.kind?.ownPeaks?.leg[0] !== 0
  const tooHigh = (row: BusSurge) => row.peakV > blocking.highV || (both && -row.peakV < blocking.lowV)
  if (q.supplyCategory !== undefined) {
    const rows = busSurgesOf(supply, q.supplyCategory)
    if (rows.length === 0 && q.busMaxV === undefined) return [{ is: 'category-empty', verdict: 'unknown' }]
    return rows.flatMap((row) => conducts(q, row.peakV, row.forSec, row))
  }
  // a highest peak that was entered includes them
  if (q.busMaxV !== undefined) return []
  const rows = busSurgesOf(supply).filter(tooHigh)
  if (rows.length === 0) return []
  return [
    {
      is: 'category-missing',
      verdict: 'unknown',
      surges: rows.map((row) => ({
        row,
        energyJ:
          longSurge({
            busV: row.peakV,
            busOhm: q.busSourceOhm,
            breakdownV: blocking.highV,
            dynamicOhm: q.part.dynamicOhm,
            forSec: row.forSec,
          })?.energyJ ?? 0,
      })),
    },
  ]
}

/** Above the stand-off but blocked: it leaks. A bidirectional part leaks below chassis as it does above. */
function leakReasons({ part }: LineQuestion, { highV, lowV }: LinePeaks, blocking: Blocking): LineReason[] {
  const { standoffV, bidirectional } = part
  if (standoffV === undefined || highV === undefined) return []
  const peakV = bidirectional ? Math.max(highV, -(lowV ?? 0)) : highV
  return peakV > standoffV && peakV < blocking.highV ? [{ is: 'leaks', verdict: 'marginal', peakV, standoffV }] : []
}

/** A crowbar lets go only when the current falls below its holding current; a varistor wears and fails short. */
function typeReasons({ part, kind, holdingA, busSourceOhm }: LineQuestion, { highV }: LinePeaks): LineReason[] {
  const traits = SUPPRESSOR_TYPES[part.type]
  const powered = kind?.ownPeaks?.isPowered === true || kind === undefined
  const wear: LineReason[] = traits.wears ? [{ is: 'wears', verdict: 'ok', powered }] : []
  if (!traits.latches || highV === undefined) return wear
  const ohm = powered ? busSourceOhm : (kind?.signalOhm?.leastOhm ?? kind?.signalOhm?.ohm ?? busSourceOhm)
  const amps = Math.max(0, highV - CROWBAR_ON.value) / ohm
  if (amps === 0) return wear
  if (holdingA === undefined) return [{ is: 'holding-missing', verdict: 'unknown' }]
  return amps < holdingA
    ? wear
    : [{ is: 'crowbar-held', verdict: powered ? 'fails' : 'marginal', amps, holdingA, powered }]
}
