/** What the need asks of one topology: the marks that meet it, over what stands around, as a bound of the window. */
import { worstInBox } from '../../bounds/box.ts'
import { type LeastMarked, leastMarkedF, leastMarkedH } from '../../bounds/least-marked.ts'
import type { Stretch } from '../../bounds/spans.ts'
import type { Margin, Surroundings } from '../../bounds/surroundings.ts'
import { hasCapacitor } from '../../network/circuit.ts'
import { TRIAL_NOTED } from '../../trial/note.ts'
import type { Bound, Topology } from '../../types.ts'
import { READ } from '../trial/bounds.ts'
import { sharesOf, type WindowSetup } from './setup.ts'

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

/** A need met to within this is met: the solver rounds near 1e-13 dB. */
export const ROUNDING_DB = 1e-9
/** the need as computed from the noise ends */
export const NEED = 'need-least'

/** The lowest of them. */
export const worstOf = (margins: readonly Margin[]): Margin | undefined =>
  margins.reduce<Margin | undefined>((worst, one) => (worst && worst.db <= one.db ? worst : one), undefined)

/**
 * The need wherever what stands at the ends may be. Looked for up to what may be fitted at all: a resonance above that is
 * no concern of this line. Where nothing below does, the figure that would is looked for without end.
 */
export function needOf(
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

/** A need that stands for itself: computed from the noise ends, or from the readings of a trial. */
export type AskedBy = { readonly id: string; readonly by: Bound['by'] }

export const COMPUTED: AskedBy = { id: NEED, by: { is: 'check', check: 'window' } }
export const BY_READINGS: AskedBy = { id: READ, by: { is: 'trial', trial: TRIAL_NOTED } }

/** The need that asks for more; one that is not known asks for nothing. */
export function further(one: RowNeed, other: RowNeed): RowNeed {
  const end = (need: RowNeed): number => {
    if (need.is === 'unknown') return -1
    if (need.is === 'never') return Number.POSITIVE_INFINITY
    return need.is === 'found' ? need.marked : 0
  }
  return end(other) > end(one) ? other : one
}

/** The need as a bound on one marked capacitor: nothing for a need that is met without, no end for one that never is. */
export function needBounds(topology: Topology, need: RowNeed, asked: AskedBy = COMPUTED): readonly Bound[] {
  if (need.is === 'unknown') return []
  const bound = {
    ...asked,
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

/** Where a need is met for good. */
export const lastOf = ({ farads, holes = [] }: Bound): number => holes.at(-1)?.[1] ?? farads
