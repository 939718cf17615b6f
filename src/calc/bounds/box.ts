/**
 * Worst margin over the whole box of a marked part: every capacitor on its own from k_low to k_high, every inductor on
 * its own from least to most, node capacitances over their span and absent, every need and every source.
 * Goes down part by part from the corners, then proves that nothing in the box is lower by more than 0.002 dB; what the
 * proof refutes is gone down from. Past 40 dB of gain it stops: the loss is then that or lower.
 * Valid for marked figures > 0 and frequencies ≥ 0. Source: derived.
 */
import { type Effort, prove } from './certify.ts'
import { type Demand, demandsOf, type Marked, partsOf } from './demand.ts'
import { descend, descendFromCorners, type Lowest, makeLowest } from './descent.ts'
import { frameAt, MAX_AXES, makeFrame, valueAt } from './frame.ts'
import { hasSelfCapacitance, withAnySelfCapacitance, withSelfCapacitance } from './self-capacitance.ts'
import { type Margin, marginOf, type Surroundings } from './surroundings.ts'

const PROVED = 10 ** (-0.002 / 10)
const MAX_REFUTED = 200
/** |N|²/|D|² of 40 dB of gain: a resonance without loss lies in the box, and how deep exactly decides nothing. */
const DEEP = 1e-4
/** Boxes the proofs of one answer may take. Only a resonance that runs through a box of four or five parts takes more. */
const EFFORT = 40_000

const frame = makeFrame()
const lowest = makeLowest()
const at = new Float64Array(MAX_AXES)

type Worst = { readonly demand: Demand; readonly over: number; readonly values: Float64Array }

/** Worst margin when the part is marked `marked` (farads, or henries for a single inductor). */
export function worstInBox(around: Surroundings, markedShare: Marked, marked: number): Margin {
  const effort = { boxes: EFFORT }
  const demands = demandsOf(around, markedShare)
  let worst: Worst | undefined
  const keep = (demand: Demand) => {
    const over = lowest.ratio / demand.limit
    if (!worst || over < worst.over) worst = { demand, over, values: valuesAt(demand, lowest) }
  }
  for (const demand of demands) {
    frameAt(demand, marked, frame)
    descendFromCorners(frame, lowest)
    keep(demand)
  }
  // Only what lies below the worst of all has to be shown not to be there.
  for (const demand of demands) {
    if (!worst) break
    frameAt(demand, marked, frame)
    descendFromCorners(frame, lowest)
    deepen(lowest, worst.over * demand.limit, effort)
    keep(demand)
  }
  if (!worst) throw new RangeError('needs at least one frequency and one source')
  const { demand, values } = worst
  return marginOf(around, demand.need, demand.source, partsOf(demand, values))
}

/** `open`: a search found no point that is short, and the proof gave up: not shown, and no yes. */
export type Kept = 'keeps' | 'short' | 'open'

/** A loss short of its need by no more than this is not short: a box is proved to within it, dB. */
export const PROVED_DB = 0.005

/**
 * Whether no point of the box is short of its need: the proof by itself, which need not know where the worst point is. Where
 * it gives up, the worst point that a search finds may still refute it.
 */
export function keepsInBox(around: Surroundings, markedShare: Marked, marked: number, shortDb = PROVED_DB): Kept {
  const kept = keepsAll(demandsOf(around, markedShare), marked, shortDb)
  return kept === 'open' && worstInBox(around, markedShare, marked).db < -shortDb ? 'short' : kept
}

/**
 * The same with any inductance of lead and bond up to what was entered, each by itself: what is entered is the most they are.
 * Open where the proof gives up, or there are more parts than it takes.
 */
function keepsUpToLeads(around: Surroundings, markedShare: Marked, marked: number): Kept {
  if (around.eslH === 0 && around.bondH === 0) return keepsInBox(around, markedShare, marked)
  const demands = demandsOf(around, markedShare, 'up-to')
  return demands.every(({ ranges }) => ranges.length <= MAX_AXES) ? keepsAll(demands, marked, PROVED_DB) : 'open'
}

/** With none of it, and with all. */
const ENDS = [0, 1]

/**
 * And with any self-capacitance of the coils: proved below the resonance of a coil. Past it both ends are proved, each with
 * its whole box. A coil alone between resistances is least at one of them, since its impedance grows to the resonance and
 * falls from there; beside other parts or reactive ends what lies between is looked at by neither.
 */
function keepsUpTo(around: Surroundings, markedShare: Marked, marked: number): Kept {
  if (!hasSelfCapacitance(around)) return keepsUpToLeads(around, markedShare, marked)
  return gravest(around.needs, (need) => {
    const any = withAnySelfCapacitance(around, need, markedShare, marked)
    if (any !== undefined) return keepsUpToLeads(any.around, any.markedShare, marked)
    const one = { ...around, needs: [need] }
    return gravest(ENDS, (share) => keepsUpToLeads(withSelfCapacitance(one, share), markedShare, marked))
  })
}

/**
 * What a part earns: `kept`, proved with any inductance of lead and bond, and any self-capacitance, up to what was entered;
 * `carried`, by what was entered alone; `unproved`, nothing found against it as entered and no proof either; or `short`.
 */
export type Held = 'kept' | 'carried' | 'unproved' | 'short'

/** The gravest of it over all that may stand around the part; nothing around it asks for nothing. */
export const heldInBox = (placed: readonly Surroundings[], markedShare: Marked, marked: number): Held =>
  heldUnder(keepsUpTo, placed, markedShare, marked)

/** The same with self-capacitance as entered: a quicker look, for one of many marks that are tried. */
export const heldAtGlance = (placed: readonly Surroundings[], markedShare: Marked, marked: number): Held =>
  heldUnder(keepsUpToLeads, placed, markedShare, marked)

/**
 * Whether some point of the box, as it was entered, is short anywhere around the part: for who asks no more. The part of
 * `heldInBox` that says 'short', which costs a fraction of the whole.
 */
export const isShortInBox = (placed: readonly Surroundings[], markedShare: Marked, marked: number): boolean =>
  asEnteredIn(placed, markedShare, marked) === 'short'

const asEnteredIn = (placed: readonly Surroundings[], markedShare: Marked, marked: number): Kept =>
  gravest(placed, (around) => keepsInBox(around, markedShare, marked))

function heldUnder(
  judge: typeof keepsUpTo,
  placed: readonly Surroundings[],
  markedShare: Marked,
  marked: number,
): Held {
  const upTo = gravest(placed, (around) => judge(around, markedShare, marked))
  if (upTo === 'keeps') return 'kept'
  const asEntered = asEnteredIn(placed, markedShare, marked)
  if (asEntered === 'short') return 'short'
  return asEntered === 'open' || upTo === 'open' ? 'unproved' : 'carried'
}

/** Stops at the first that is short: nothing is graver. */
function gravest<T>(cases: readonly T[], judge: (one: T) => Kept): Kept {
  let all: Kept = 'keeps'
  for (const each of cases) {
    const one = judge(each)
    if (one === 'short') return one
    if (one === 'open') all = one
  }
  return all
}

function keepsAll(demands: readonly Demand[], marked: number, shortDb: number): Kept {
  const effort = { boxes: EFFORT }
  for (const demand of demands) {
    frameAt(demand, marked, frame)
    const proof = prove(frame, demand.limit * 10 ** (-shortDb / 10), at, effort)
    if (proof !== 'keeps') return proof
  }
  return 'keeps'
}

/** Goes on until the proof finds nothing lower than the lower of `lowest.ratio` and `soFar`. */
function deepen(lowest: Lowest, soFar: number, effort: Effort): void {
  const start = makeLowest()
  for (let k = 0; k < MAX_REFUTED && lowest.ratio > DEEP; k++) {
    const limit = Math.min(lowest.ratio, soFar) * PROVED
    const proof = prove(frame, limit, at, effort)
    if (proof === 'open') descendFromEverywhere(lowest, start)
    if (proof !== 'short') return
    start.t.set(at)
    descend(frame, start)
    if (start.ratio >= lowest.ratio) return
    lowest.ratio = start.ratio
    lowest.t.set(start.t)
  }
}

/** Above so many parts the middles of edges and faces are left out: there are too many. */
const MIDDLES_UP_TO_AXES = 5
/** From so many parts on a valley may be curved so that it matters which of them moves first. */
const TURNS_FROM_AXES = 4

/**
 * Without a proof: down from every corner, every part moving first in turn, and from the middle of every edge and face; the
 * lowest end is kept.
 */
function descendFromEverywhere(lowest: Lowest, start: Lowest): void {
  const { axes } = frame
  const tryFrom = (first: number) => {
    descend(frame, start, first)
    if (start.ratio >= lowest.ratio) return
    lowest.ratio = start.ratio
    lowest.t.set(start.t)
  }
  for (let corner = 0; corner < 1 << axes; corner++)
    for (let first = 0; first < (axes >= TURNS_FROM_AXES ? axes : 1); first++) {
      for (let axis = 0; axis < axes; axis++) start.t[axis] = (corner >> axis) & 1
      tryFrom(first)
    }
  for (let k = 0; axes <= MIDDLES_UP_TO_AXES && k < 3 ** axes; k++) {
    for (let axis = 0, rest = k; axis < axes; axis++) {
      start.t[axis] = (rest % 3) / 2
      rest = Math.floor(rest / 3)
    }
    tryFrom(0)
  }
}

function valuesAt(demand: Demand, { t }: Lowest): Float64Array {
  const values = Float64Array.from(frame.low)
  for (let axis = 0; axis < frame.axes; axis++)
    values[frame.part[axis] as number] = valueAt(frame, axis, t[axis] as number)
  return values.subarray(0, demand.ranges.length)
}
