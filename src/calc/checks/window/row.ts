/** One topology of the window: its need as a bound, the intersection with every other, and what it does to noise and signal. */
import { worstInBox } from '../../bounds/box.ts'
import { type Intersection, intersect, type Reason } from '../../bounds/intersect.ts'
import { type LeastMarked, leastMarkedF, leastMarkedH } from '../../bounds/least-marked.ts'
import type { Stretch } from '../../bounds/spans.ts'
import type { Margin, Surroundings } from '../../bounds/surroundings.ts'
import { hasCapacitor, hasInductor } from '../../network/circuit.ts'
import type { Bound, Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { conversionBounds } from './conversion.ts'
import { isBalanceUncounted, isUncounted, placings, ruleLacks, sharesOf, type WindowSetup } from './setup.ts'
import { sideVerdict } from './signal-side.ts'
import { isShown } from './tried.ts'

export type RowNeed =
  | { readonly is: 'unknown' }
  | { readonly is: 'none-needed' }
  | { readonly is: 'never'; readonly at: Margin }
  /**
   * `marked`: the mark from which every larger one would do; `passing`: every stretch that does, as far as the ceiling
   * lets it matter; `at`: what decides there
   */
  | { readonly is: 'found'; readonly marked: number; readonly passing: readonly Stretch[]; readonly at: Margin }
  /** the choke meets it with no capacitor at all */
  | { readonly is: 'choke-alone'; readonly at: Margin }
  /** the series inductor alone: met where `at` is not short, and the least inductance that would */
  | { readonly is: 'inductor-only'; readonly at: Margin; readonly leastH: number | undefined }

/** What holds for every topology alike: noise inside the signal band, a rule that lacks a fact, what could not be counted; an inductor that is not known. */
export type LineReason = 'in-band' | 'rule-lacks' | 'one-wire' | 'cross-on-single' | 'element' | 'balance' | 'not-shown'

export type WindowRow = Omit<Intersection, 'reasons'> & {
  readonly reasons: readonly (Reason | LineReason)[]
  readonly topology: Topology
  readonly need: RowNeed
  /** what is required of the balance, as a bound; empty where nothing is */
  readonly balance: readonly Bound[]
  /** worst-case margin with the proposal (or the least when there is none) */
  readonly service: Margin | undefined
}

/** A need met to within this is met: the solver rounds near 1e-13 dB. */
const ROUNDING_DB = 1e-9
/** The box of a part is proved to within this. */
const PROVED_DB = 0.005
const NEED = 'need-least'

export function windowRow(topology: Topology, setup: WindowSetup): WindowRow {
  const alone = topology === 'C' ? chokeAlone(setup) : undefined
  if (alone && alone.verdict !== 'fails') return alone
  // Beside a matched line a capacitor may give back what the leakage takes from the signal.
  const row = rowOf(topology, setup)
  return alone && row.verdict === 'fails' ? alone : row
}

function rowOf(topology: Topology, setup: WindowSetup): WindowRow {
  const placed = placedFor(topology, setup)
  const ceilingF = intersect(setup.bounds, roomFor(setup, topology), setup.spread, topology).upper?.markedF
  const need = placed.length > 0 ? needOf(topology, placed, setup, ceilingF) : ({ is: 'unknown' } as const)
  const marks = new Map<number, Margin | undefined>()
  const held = (markedF: number): Margin | undefined => {
    if (!marks.has(markedF)) marks.set(markedF, heldAt(placed, setup, markedF))
    return marks.get(markedF)
  }
  const verdicts = new Map<number, Verdict>()
  const admits = (markedF: number): Verdict => {
    const known = verdicts.get(markedF)
    if (known !== undefined) return known
    const verdict = sideVerdict(setup, topology, markedF, () => (markedF === 0 ? 'ok' : holds(held(markedF))))
    verdicts.set(markedF, verdict)
    return verdict
  }
  // a value that a trial shows comes before one that is only computed
  const preferred = (markedF: number): Verdict =>
    isShown(setup.shown, topology, markedF, sharesOf(setup)) ? admits(markedF) : worse(admits(markedF), 'marginal')
  const needs = needBounds(topology, need)
  const balance = conversionBounds(topology, setup)
  const bounds = [...setup.bounds, ...needs, ...balance]
  const found = intersect(bounds, roomFor(setup, topology), setup.spread, topology, preferred)
  const least = need.is === 'found' && found.reasons.includes('shut') ? { id: NEED, markedF: need.marked } : found.least
  const partF = hasCapacitor(topology) ? (found.proposal?.valueF ?? finite(least?.markedF)) : undefined
  return {
    ...found,
    ...withLine(notShown(found, topology, setup, admits), topology, setup),
    least,
    holes: needs.flatMap(({ holes = [] }) => holes),
    balance,
    topology,
    need,
    service: need.is === 'inductor-only' ? need.at : partF === undefined ? undefined : held(partF),
  }
}

/** Where the part is only computed, that is the reason, unless the signal has one of its own. */
function notShown(
  found: Intersection,
  topology: Topology,
  setup: WindowSetup,
  admits: (markedF: number) => Verdict,
): { readonly verdict: Verdict; readonly reasons: readonly (Reason | LineReason)[] } {
  const marked = found.proposal?.valueF
  if (marked === undefined || isShown(setup.shown, topology, marked, sharesOf(setup))) return found
  const others = admits(marked) === 'ok' ? found.reasons.filter((reason) => reason !== 'signal') : found.reasons
  return { verdict: found.verdict, reasons: ['not-shown', ...others] }
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
  return { ...found, ...withLine(found, 'C', setup), topology: 'C', need, balance: [], service: at }
}

function withLine(
  { verdict, reasons }: { readonly verdict: Verdict; readonly reasons: readonly (Reason | LineReason)[] },
  topology: Topology,
  setup: WindowSetup,
) {
  const isInBand = setup.inBandHz !== undefined
  const lacksElement = hasInductor(topology) && setup.elements.lacks.length > 0
  const lacks = ruleLacks(setup)
  const added: readonly (Reason | LineReason)[] = [
    ...(setup.isTraceOpen ? (['no-need'] as const) : []),
    ...(isInBand ? (['in-band'] as const) : []),
    ...(lacks ? (['rule-lacks'] as const) : []),
    ...(lacksElement ? (['element'] as const) : []),
    ...(setup.isOneWire ? (['one-wire'] as const) : []),
    ...(setup.hasCrossOnSingle ? (['cross-on-single'] as const) : []),
    ...(isBalanceUncounted(setup) ? (['balance'] as const) : []),
  ]
  const counted = lacks || isUncounted(setup) ? worse(verdict, 'unknown') : verdict
  return {
    verdict: isInBand ? ('fails' as const) : lacksElement ? ('unknown' as const) : counted,
    reasons: [...added, ...reasons],
  }
}

/**
 * The part of a row that was found, judged under other facts: its own mark (or none, where none was needed) against the
 * need over the whole box, against every bound, and against the signal. A row without a part is worked out anew.
 */
export function fixedRow(found: WindowRow, setup: WindowSetup): { readonly verdict: Verdict } {
  const { topology } = found
  const isWithout = found.need.is === 'none-needed' || found.need.is === 'choke-alone'
  const partF = found.proposal?.valueF ?? (isWithout ? 0 : undefined)
  if (partF === undefined || !hasCapacitor(topology)) return windowRow(topology, setup)
  const margin = heldAt(placedFor(topology, setup), setup, partF)
  const { most, upper, permitted, reasons } = intersect(setup.bounds, roomFor(setup, topology), setup.spread, topology)
  const isOver = (limit: typeof upper) => limit !== undefined && partF > limit.markedF * (1 + 1e-9)
  const bounded: Verdict = reasons.includes('no-room') || isOver(most) || isOver(upper) ? 'fails' : 'ok'
  const verdicts = [
    margin === undefined ? ('unknown' as const) : holds(margin),
    reasons.includes('no-ceiling') ? ('unknown' as const) : ('ok' as const),
    isOver(permitted) || permitted?.markedF === 0 ? ('marginal' as const) : ('ok' as const),
    sideVerdict(setup, topology, partF),
  ]
  return withLine({ verdict: verdicts.reduce<Verdict>(worse, bounded), reasons: [] }, topology, setup)
}

/** A row without a capacitor has none to damp. */
const roomFor = (setup: WindowSetup, topology: Topology): WindowSetup['taken'] =>
  hasCapacitor(topology) ? setup.room : setup.taken

const placedFor = (topology: Topology, setup: WindowSetup): readonly Surroundings[] =>
  setup.around ? placings(setup.around, setup).map((around) => ({ ...around, topology })) : []

/** Worst margin of a mark over its box, wherever what stands at the ends may be; undefined while the need is unknown. */
const heldAt = (placed: readonly Surroundings[], setup: WindowSetup, markedF: number): Margin | undefined =>
  worstOf(placed.map((around) => worstInBox(around, sharesOf(setup), markedF)))

/** What is left over the need by a capacitor of this mark, over its whole box; undefined while the need is unknown. */
export const marginAtMark = (topology: Topology, setup: WindowSetup, markedF: number): Margin | undefined =>
  heldAt(placedFor(topology, setup), setup, markedF)

/** Whether a mark meets every need over its box: a look before a whole row is worked out. */
export const meetsAt = (topology: Topology, setup: WindowSetup, markedF: number): boolean =>
  holds(heldAt(placedFor(topology, setup), setup, markedF)) === 'ok'

/** Least loss in dB that the part of a row has over its box at a frequency; undefined where the row has no part. */
export function leastLossAt(row: WindowRow, setup: WindowSetup, hz: number): number | undefined {
  const partF = row.need.is === 'choke-alone' ? 0 : row.proposal?.valueF
  const around = setup.around && { ...setup.around, needs: [{ hz, db: 0 }] }
  const placed = placedFor(row.topology, { ...setup, around })
  if (row.need.is === 'inductor-only') {
    const { least, most } = setup.inductanceH
    return worstOf(placed.map((one) => worstInBox(one, { least: 1, most: most / least }, least)))?.lossDb
  }
  return partF === undefined ? undefined : heldAt(placed, setup, partF)?.lossDb
}

const holds = (margin: Margin | undefined): Verdict => (margin !== undefined && margin.db < -PROVED_DB ? 'fails' : 'ok')

const finite = (value: number | undefined): number | undefined => (Number.isFinite(value) ? value : undefined)

const worstOf = (margins: readonly Margin[]): Margin | undefined =>
  margins.reduce<Margin | undefined>((worst, one) => (worst && worst.db <= one.db ? worst : one), undefined)

/**
 * The need wherever what stands at the ends may be. Looked for up to what may be fitted at all: a resonance above that is
 * no concern of this line. Where nothing below does, the figure that would is looked for without end.
 */
function needOf(
  topology: Topology,
  placed: readonly Surroundings[],
  setup: WindowSetup,
  ceilingF: number | undefined,
): RowNeed {
  if (!hasCapacitor(topology)) return inductorNeed(placed, setup)
  const shares = sharesOf(setup)
  const top = ceilingF !== undefined && ceilingF > 0 ? ceilingF : Number.POSITIVE_INFINITY
  const inside = placed.map((around) => leastMarkedF(around, shares, top))
  if (inside.every(({ is }) => is === 'none-needed')) return { is: 'none-needed' }
  const passing = inside.map((least) => passingOf(least, top)).reduce(common)
  const last = furthest(inside)
  if (passing.length > 0 && last.is !== 'none-needed')
    return { is: 'found', marked: passing.at(-1)?.[0] ?? 0, passing, at: last.at }
  const beyond = Number.isFinite(top) ? furthest(placed.map((around) => leastMarkedF(around, shares))) : last
  if (beyond.is === 'none-needed') return { is: 'none-needed' }
  if (beyond.is === 'never') return { is: 'never', at: beyond.at }
  return { is: 'found', marked: beyond.marked, passing: [[beyond.marked, Number.POSITIVE_INFINITY]], at: beyond.at }
}

const endOf = (least: LeastMarked): number =>
  least.is === 'none-needed' ? 0 : least.is === 'never' ? Number.POSITIVE_INFINITY : least.marked

const furthest = (all: readonly LeastMarked[]): LeastMarked => all.reduce((a, b) => (endOf(b) > endOf(a) ? b : a))

/** Every stretch of marks that meets the need, up to `top`. */
function passingOf(least: LeastMarked, top: number): readonly Stretch[] {
  switch (least.is) {
    case 'none-needed':
      return [[0, top]]
    case 'found':
      return [...least.passing, [least.marked, top]]
    case 'never':
      return least.passing
  }
}

/** What two lists of stretches have in common. */
function common(one: readonly Stretch[], other: readonly Stretch[]): readonly Stretch[] {
  return one.flatMap(([a, b]) =>
    other.flatMap(([c, d]): readonly Stretch[] =>
      Math.max(a, c) < Math.min(b, d) ? [[Math.max(a, c), Math.min(b, d)]] : [],
    ),
  )
}

function inductorNeed(placed: readonly Surroundings[], { inductanceH }: WindowSetup): RowNeed {
  // The inductance entered is its least; the part can be anything up to the most. A bead has no mark to look for.
  const { least, most } = inductanceH
  const isBead = placed.some(({ bead }) => bead !== undefined)
  const shares = { least: 1, most: most / least }
  const at = worstOf(placed.map((around) => worstInBox(around, shares, least)))
  if (!at) return { is: 'unknown' }
  if (isBead) return { is: 'inductor-only', at, leastH: undefined }
  const each = placed.map((around) => leastMarkedH(around, shares))
  const leastH = each.reduce<number | undefined>(
    (worst, one) =>
      one.is === 'never' || worst === undefined ? undefined : Math.max(worst, one.is === 'found' ? one.marked : 0),
    0,
  )
  return { is: 'inductor-only', at, leastH }
}

/** The need as a bound on one marked capacitor: nothing for a need that is met without, no end for one that never is. */
export function needBounds(topology: Topology, need: RowNeed): readonly Bound[] {
  if (need.is === 'unknown') return []
  const bound = {
    id: NEED,
    by: { is: 'check', check: 'window' },
    side: 'least',
    nature: 'need',
    per: 'capacitor',
    topology,
  } as const
  switch (need.is) {
    case 'found': {
      const [first, ...rest] = need.passing
      const holes = [first, ...rest].map(
        (stretch, i): Stretch => [stretch?.[1] ?? 0, rest[i]?.[0] ?? Number.POSITIVE_INFINITY],
      )
      return [{ ...bound, farads: first?.[0] ?? 0, holes: holes.filter(([from]) => Number.isFinite(from)) }]
    }
    case 'none-needed':
    case 'choke-alone':
      return [{ ...bound, farads: 0 }]
    case 'inductor-only':
      return [{ ...bound, farads: need.at.db >= -ROUNDING_DB ? 0 : Number.POSITIVE_INFINITY }]
    case 'never':
      return [{ ...bound, farads: Number.POSITIVE_INFINITY }]
  }
}
