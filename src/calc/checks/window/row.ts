/** One topology of the window: its need as a bound, the intersection with every other, and what it does to noise and signal. */
import { type Held, worstInBox } from '../../bounds/box.ts'
import { type Intersection, intersect, type Reason } from '../../bounds/intersect.ts'
import type { Margin, Surroundings } from '../../bounds/surroundings.ts'
import { hasCapacitor, hasInductor } from '../../network/circuit.ts'
import { USUAL_ADAPTER_FRAC } from '../../trial/solve.ts'
import type { Bound, Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { NOT_CLEARED, readUpToBound } from '../trial/bounds.ts'
import { placings } from './around.ts'
import { conversionBounds } from './conversion.ts'
import { earned } from './earned.ts'
import { glanceBy, HELD_VERDICT, type HeldReason, heldBy, heldReasons, heldWithout } from './held.ts'
import {
  BY_READINGS,
  further,
  lastOf,
  NEED,
  needBounds,
  needOf,
  ROUNDING_DB,
  type RowNeed,
  worstOf,
} from './row-need.ts'
import { isBalanceUncounted, isUncounted, ruleLacks, sharesOf, type WindowSetup } from './setup.ts'
import { sideVerdict } from './signal-side.ts'
import { isShown } from './tried.ts'
import { isEndsRefuted, mostOfTriedF, triedArounds } from './tried-circuits.ts'

/** What holds for every topology alike: noise inside the signal band, a rule that lacks a fact, what could not be counted; an inductor that is not known. */
export type LineReason =
  | 'in-band'
  | 'rule-lacks'
  | 'one-wire'
  | 'cross-on-single'
  | 'element'
  | 'balance'
  | 'not-shown'
  | HeldReason
  | 'untried'
  | 'refuted'

export type WindowRow = Omit<Intersection, 'reasons'> & {
  readonly reasons: readonly (Reason | LineReason)[]
  readonly topology: Topology
  /** the need that asks for most */
  readonly need: RowNeed
  /** every need as a bound of its own: as computed, and as the readings of a trial have it */
  readonly asked: readonly Bound[]
  /** what is required of the balance, as a bound; empty where nothing is */
  readonly balance: readonly Bound[]
  /** worst-case margin with the proposal (or the least when there is none) */
  readonly service: Margin | undefined
}

type RowJudged = Pick<WindowRow, 'verdict' | 'reasons'>

export function windowRow(topology: Topology, setup: WindowSetup): WindowRow {
  const alone = topology === 'C' ? chokeAlone(setup) : undefined
  if (alone && alone.verdict !== 'fails') return alone
  // Beside a matched line a capacitor may give back what the leakage takes from the signal.
  const row = rowOf(topology, setup)
  return alone && row.verdict === 'fails' ? alone : row
}

function rowOf(topology: Topology, setup: WindowSetup): WindowRow {
  const [computed, tried] = [computedFor(topology, setup), triedFor(topology, setup)]
  const placed = [...computed, ...tried]
  const ceilingF = intersect(setup.bounds, roomFor(setup, topology), setup.spread, topology).upper?.markedF
  const over = (those: readonly Surroundings[]): RowNeed =>
    those.length > 0 ? needOf(topology, those, setup, ceilingF) : { is: 'unknown' }
  const [computedNeed, triedNeed] = [over(computed), over(tried)]
  const need = further(computedNeed, triedNeed)
  const helds = new Map<number, Held>()
  const held = (markedF: number): Held => {
    const is = helds.get(markedF) ?? glanceBy(placed, setup, markedF)
    helds.set(markedF, is)
    return is
  }
  const verdicts = new Map<number, Verdict>()
  const admits = (markedF: number): Verdict => {
    const known = verdicts.get(markedF)
    if (known !== undefined) return known
    const verdict = sideVerdict(setup, topology, markedF, () =>
      markedF > 0 && held(markedF) === 'short' ? 'fails' : 'ok',
    )
    verdicts.set(markedF, verdict)
    return verdict
  }
  // a value that a trial shows comes before one that is only computed, and one that is proved without a resonance before others
  const preferred = (markedF: number): Verdict =>
    isShown(setup.shown, topology, markedF, sharesOf(setup)) && heldReasons(held(markedF)).length === 0
      ? admits(markedF)
      : worse(admits(markedF), 'marginal')
  const needs = [
    ...needBounds(topology, computedNeed),
    ...needBounds(topology, triedNeed, BY_READINGS),
    ...upToBounds(tried, setup),
  ]
  const balance = conversionBounds(topology, setup)
  const bounds = [...setup.bounds, ...needs, ...balance]
  const found = intersect(bounds, roomFor(setup, topology), setup.spread, topology, preferred)
  const least =
    need.is === 'found' && found.reasons.includes('shut')
      ? { id: need === triedNeed ? BY_READINGS.id : NEED, markedF: need.marked }
      : found.least
  const partF = hasCapacitor(topology) ? (found.proposal?.valueF ?? finite(least?.markedF)) : undefined
  const marked = found.proposal?.valueF
  const byItself = marked === undefined ? heldWithout(need, placed, setup) : heldBy(placed, setup, marked)
  return {
    ...found,
    ...withLine(
      earned(found, { topology, setup, admits, held: byItself, isUncomputed: placed.length === 0 }),
      topology,
      setup,
    ),
    least,
    holes: needs.flatMap(({ holes = [] }) => holes),
    balance,
    topology,
    need,
    asked: needs,
    service: need.is === 'inductor-only' ? need.at : partF === undefined ? undefined : heldAt(placed, setup, partF),
  }
}

/** The row of a choke that meets the need with no capacitor at all; undefined where it does not, or there is none. */
function chokeAlone(setup: WindowSetup): WindowRow | undefined {
  if (setup.choke === undefined) return undefined
  const at = heldAt(placedFor('C', setup), setup, 0)
  if (at === undefined || at.db < -ROUNDING_DB) return undefined
  const need: RowNeed = { is: 'choke-alone', at }
  // Like an inductor alone it takes no room: only a line that is over its ceiling by itself is in its way.
  const found = intersect([...setup.bounds, ...needBounds('L', need)], setup.taken, setup.spread, 'L', () =>
    sideVerdict(setup, 'C', 0),
  )
  const held = heldBy(placedFor('C', setup), setup, 0)
  const judged = {
    verdict: worse(found.verdict, HELD_VERDICT[held]),
    reasons: [...found.reasons, ...heldReasons(held)],
  }
  return {
    ...found,
    ...withLine(judged, 'C', setup),
    topology: 'C',
    need,
    asked: needBounds('C', need),
    balance: [],
    service: at,
  }
}

function withLine({ verdict, reasons }: RowJudged, topology: Topology, setup: WindowSetup): RowJudged {
  const isInBand = setup.inBandHz !== undefined
  // a part that the trial itself shows needs no computation
  const isOwn = topology === 'C' && setup.shown !== undefined && !reasons.includes('not-shown')
  const isRefuted = !isOwn && (refutedLeastF(setup) !== undefined || (topology !== 'C' && refutesEnds(setup)))
  const lacksElement = hasInductor(topology) && setup.elements.lacks.length > 0
  const lacks = ruleLacks(setup)
  const added: readonly (Reason | LineReason)[] = [
    ...(setup.isTraceOpen ? (['no-need'] as const) : []),
    ...(setup.untriedRows === undefined ? [] : (['untried'] as const)),
    ...(isRefuted ? (['refuted'] as const) : []),
    ...(isInBand ? (['in-band'] as const) : []),
    ...(lacks ? (['rule-lacks'] as const) : []),
    ...(lacksElement ? (['element'] as const) : []),
    ...(setup.isOneWire ? (['one-wire'] as const) : []),
    ...(setup.hasCrossOnSingle ? (['cross-on-single'] as const) : []),
    ...(isBalanceUncounted(setup) ? (['balance'] as const) : []),
  ]
  const counted = lacks || isRefuted || isUncounted(setup) ? worse(verdict, 'unknown') : verdict
  return {
    verdict: isInBand ? 'fails' : lacksElement ? 'unknown' : counted,
    reasons: [...added, ...reasons],
  }
}

/**
 * The part of a row that was found, judged under other facts: its own mark (or none, where none was needed) against the
 * need over the whole box, against every bound, and against the signal. A row without a part is worked out anew.
 * `judge`: what its mark earns; a doubt asks for less than all of it.
 */
export function fixedRow(found: WindowRow, setup: WindowSetup, judge = heldBy): RowJudged {
  const { topology } = found
  const isWithout = found.need.is === 'none-needed' || found.need.is === 'choke-alone'
  const partF = found.proposal?.valueF ?? (isWithout ? 0 : undefined)
  if (partF === undefined || !hasCapacitor(topology)) return windowRow(topology, setup)
  const placed = placedFor(topology, setup)
  const held = judge(placed, setup, partF)
  const bounds = [...setup.bounds, ...upToBounds(triedFor(topology, setup), setup)]
  const { most, upper, permitted, reasons } = intersect(bounds, roomFor(setup, topology), setup.spread, topology)
  const isOver = (limit: typeof upper) => limit !== undefined && partF > limit.markedF * (1 + 1e-9)
  const bounded: Verdict = reasons.includes('no-room') || isOver(most) || isOver(upper) ? 'fails' : 'ok'
  const verdicts = [
    placed.length === 0 ? ('unknown' as const) : HELD_VERDICT[held],
    reasons.includes('no-ceiling') ? ('unknown' as const) : ('ok' as const),
    isOver(permitted) || permitted?.markedF === 0 ? ('marginal' as const) : ('ok' as const),
    sideVerdict(setup, topology, partF),
  ]
  const judged = {
    verdict: verdicts.reduce<Verdict>(worse, bounded),
    reasons: heldReasons(held),
  }
  return withLine(judged, topology, setup)
}

/** Which need asks for most: the computed one, or what the readings of a trial leave. */
export const needIdOf = ({ asked, need }: WindowRow): string =>
  need.is === 'found' && asked.some((one) => one.id === BY_READINGS.id && lastOf(one) === need.marked)
    ? BY_READINGS.id
    : NEED

/** What did not clear is handed over as the most it may have been; as the least it has to be larger. */
const ADAPTERS_OFF = (1 + USUAL_ADAPTER_FRAC) / (1 - USUAL_ADAPTER_FRAC)
const refutedLeasts = new WeakMap<WindowSetup, { readonly farads: number | undefined }>()

/**
 * The least of a capacitor alone as computed, in service, where a trial refutes it: a larger one on each leg did not clear
 * the noise. Then path, mode or impedance are other than supposed, and no computed yes stands on them. Farads.
 */
export function refutedLeastF(setup: WindowSetup): number | undefined {
  const known = refutedLeasts.get(setup)
  if (known) return known.farads
  const tried = setup.bounds.find(({ id }) => id === NOT_CLEARED)?.farads
  const farads = tried === undefined || setup.choke !== undefined ? undefined : computedLeastF(setup)
  const refuted = farads !== undefined && (tried as number) > farads * ADAPTERS_OFF ? farads : undefined
  refutedLeasts.set(setup, { farads: refuted })
  return refuted
}

/** Whether what was read side by side refutes the noise ends that were entered; a capacitor alone counts both. */
export const refutesEnds = (setup: WindowSetup): boolean => isEndsRefuted(setup.tried, computedFor('C', setup))

function computedLeastF(setup: WindowSetup): number | undefined {
  const computed = computedFor('C', setup)
  if (computed.length === 0) return undefined
  const need = needOf('C', computed, setup, undefined)
  return need.is === 'none-needed' ? 0 : need.is === 'found' ? need.marked * sharesOf(setup).least : undefined
}

/** A row without a capacitor has none to damp. */
const roomFor = (setup: WindowSetup, topology: Topology): WindowSetup['taken'] =>
  hasCapacitor(topology) ? setup.room : setup.taken

const computedFor = (topology: Topology, setup: WindowSetup): readonly Surroundings[] =>
  setup.around ? placings(setup.around, setup).map((around) => ({ ...around, topology })) : []

/** What a trial read stands for the line with all that is on it; only what was not there then stands at its ends. */
const triedFor = (topology: Topology, setup: WindowSetup): readonly Surroundings[] =>
  topology === 'C'
    ? triedArounds(setup.tried, setup.around, setup.needs).flatMap((around) =>
        placings(around, { ...setup, lumpedF: 0 }).map((one) => ({ ...one, topology })),
      )
    : []

const placedFor = (topology: Topology, setup: WindowSetup): readonly Surroundings[] => [
  ...computedFor(topology, setup),
  ...triedFor(topology, setup),
]

function upToBounds(tried: readonly Surroundings[], setup: WindowSetup): readonly Bound[] {
  const mostF = tried.length === 0 || setup.tried === undefined ? Number.POSITIVE_INFINITY : mostOfTriedF(setup.tried)
  return Number.isFinite(mostF) ? [readUpToBound(mostF / sharesOf(setup).most)] : []
}

/** Worst margin of a mark over its box, wherever what stands at the ends may be; undefined while the need is unknown. */
const heldAt = (placed: readonly Surroundings[], setup: WindowSetup, markedF: number): Margin | undefined =>
  worstOf(placed.map((around) => worstInBox(around, sharesOf(setup), markedF)))

/** What is left over the need by a capacitor of this mark, over its whole box; undefined while the need is unknown. */
export const marginAtMark = (topology: Topology, setup: WindowSetup, markedF: number): Margin | undefined =>
  heldAt(placedFor(topology, setup), setup, markedF)

/** Whether a mark meets every need over its box: a look before a whole row is worked out. */
export const meetsAt = (topology: Topology, setup: WindowSetup, markedF: number): boolean =>
  glanceBy(placedFor(topology, setup), setup, markedF) !== 'short'

/** Least loss in dB that the part of a row has over its box at a frequency; undefined where the row has no part. */
export function leastLossAt(row: WindowRow, setup: WindowSetup, hz: number): number | undefined {
  const partF = row.need.is === 'choke-alone' ? 0 : row.proposal?.valueF
  const needs = [{ hz, db: 0 }]
  const around = setup.around && { ...setup.around, needs }
  const placed = placedFor(row.topology, { ...setup, around, needs, tried: triedAt(setup, hz) })
  if (row.need.is === 'inductor-only') {
    const { least, most } = setup.inductanceH
    return worstOf(placed.map((one) => worstInBox(one, { least: 1, most: most / least }, least)))?.lossDb
  }
  return partF === undefined ? undefined : heldAt(placed, setup, partF)?.lossDb
}

const triedAt = ({ tried }: WindowSetup, hz: number): WindowSetup['tried'] =>
  tried?.hz === hz ? { ...tried, isAll: true } : undefined

const finite = (value: number | undefined): number | undefined => (Number.isFinite(value) ? value : undefined)
