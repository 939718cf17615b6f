/**
 * The least marked part from which every larger one meets every need, wherever its own tolerance and the other parts
 * put it. The exact roots along some ways through the box give the start; the box decides (certify.ts): a point that
 * misses its need is gone down from, and the root along the way through it is the next start.
 * Valid for needs ≥ 0 dB, frequencies ≥ 0 Hz, shares > 0. Farads, or henries for a single inductor. Source: derived.
 */

import { prove } from './certify.ts'
import { type Demand, demandsOf, type Marked, partsOf } from './demand.ts'
import { descend, descendFromCorners, makeLowest } from './descent.ts'
import { frameAt, frameFrom, MAX_AXES, makeFrame, valueAt } from './frame.ts'
import { enoughFrom, setWay, setWayThrough, shortAlong, shortEnds, valuesOnWay } from './growth.ts'
import { feasibleMarks, placeValues } from './marks.ts'
import { gapsBetween, isWide, type Stretch, without } from './spans.ts'
import { type Margin, marginOf, type Span, type Surroundings } from './surroundings.ts'

/** `isProved` = every larger mark was shown to hold over its whole box, not only looked at on a ladder of marks. */
export type LeastMarked =
  /**
   * `holes`: marked figures between a first success and the least where some part of the box loses the need again;
   * `passing`: the stretches below the least, seen at their ends and middle, that do not lose it
   */
  | {
      readonly is: 'found'
      readonly marked: number
      readonly holes: readonly Stretch[]
      readonly passing: readonly Stretch[]
      readonly at: Margin
      readonly isProved: boolean
    }
  | { readonly is: 'none-needed'; readonly isProved: boolean }
  /** none is large enough: the lead, the bond or the topology limits; `at` is the margin at the largest */
  | { readonly is: 'never'; readonly at: Margin; readonly passing: readonly Stretch[] }

/** Where it is looked for: capacitors 1 fF to 1 F, a single inductor 1 pH to 1 H. */
const FARADS: Span = { least: 1e-15, most: 1 }
const HENRIES: Span = { least: 1e-12, most: 1 }
/** A box that is proved is proved to within this. */
const PROVED_DB = 0.004
const PROVED = 10 ** (-PROVED_DB / 10)
/** Steps of raising; each is a Newton step, so a handful does. */
const MAX_RAISES = 60
/** Boxes the proofs of one answer may take together. */
const EFFORT = 60_000
/** Probes that may cut the stretches below the least before the rest is given up as failing; every so many look for an end. */
const MAX_CUTS = 60
const CUTS_PER_END = 6
/** An end is found to this share of itself. */
const END_WITHIN = 1e-3

const frame = makeFrame()
const lowest = makeLowest()
const at = new Float64Array(MAX_AXES)

/**
 * Least marked capacitance; `marked` = shares of it a part can have (k_low, k_high). Looked for up to 1 F in service, or
 * up to the mark `topF`: larger ones then need not hold.
 */
export function leastMarkedF(around: Surroundings, marked: Marked, topF = Number.POSITIVE_INFINITY): LeastMarked {
  const end = marked.least > 0 ? FARADS.most / marked.least : FARADS.most
  return new Search(around, marked, FARADS.least, Math.min(topF, end)).least()
}

/** Least inductance of a single series inductor; `marked` = shares of it the part can have. */
export function leastMarkedH(around: Surroundings, marked: Marked): LeastMarked {
  return new Search({ ...around, topology: 'L' }, marked, HENRIES.least, HENRIES.most).least()
}

/** The way that decides so far. */
type Decider = { readonly demand: Demand; readonly place: readonly number[] }

class Search {
  readonly #around: Surroundings
  readonly #demands: readonly Demand[]
  readonly #bottom: number
  readonly #top: number
  #least: number
  #decider: Decider | undefined
  readonly #effort = { boxes: EFFORT }
  #isProved = true

  constructor(around: Surroundings, marked: Marked, bottom: number, top: number) {
    this.#around = around
    this.#demands = demandsOf(around, marked)
    this.#bottom = bottom
    this.#top = top
    this.#least = bottom
  }

  least(): LeastMarked {
    if (this.#demands.length === 0) throw new RangeError('needs at least one frequency and one source')
    for (const demand of this.#demands) this.#raiseAlongCorners(demand)
    for (const demand of this.#demands) this.#raiseUntilProved(demand)
    const decider = this.#decider
    if (!decider) return { is: 'none-needed', isProved: this.#isProved }
    if (this.#least >= this.#top)
      return { is: 'never', at: this.#marginOn(decider, this.#top), passing: this.#passing(decider, this.#top) }
    const marked = this.#polished(decider)
    const passing = this.#passing(decider, marked)
    return {
      is: 'found',
      marked,
      holes: gapsBetween([...passing, [marked, this.#top]]),
      passing,
      at: this.#marginOn(decider, marked),
      isProved: this.#isProved,
    }
  }

  /** Every corner of the ranges, and their middle. */
  #raiseAlongCorners(demand: Demand): void {
    const count = demand.ranges.length
    const isSpread = demand.ranges.map(({ scale, fixed }) => scale.most > scale.least || fixed.most > fixed.least)
    for (let k = 0; k < 1 << count; k++) {
      if (isSpread.some((spread, i) => !spread && (k >> i) & 1)) continue
      this.#raise(demand, (i) => (k >> i) & 1)
    }
    if (isSpread.includes(true)) this.#raise(demand, () => 1 / 2)
  }

  #raise(demand: Demand, place: (part: number) => number): boolean {
    if (this.#least >= this.#top) return false
    setWay(demand, place)
    const from = enoughFrom(demand, this.#least, this.#top)
    if (!(from > this.#least)) return false
    this.#least = from
    this.#decider = { demand, place: demand.ranges.map((_, i) => place(i)) }
    return true
  }

  #raiseUntilProved(demand: Demand): void {
    const feasible = feasibleMarks(demand)
    for (let k = 0; k < MAX_RAISES && this.#least < this.#top; k++) {
      frameFrom(demand, this.#least, this.#top, frame)
      const proof = prove(frame, demand.limit * PROVED, at, this.#effort, feasible)
      if (proof === 'keeps') {
        this.#settle(demand)
        return
      }
      // The largest mark that can be this part, and the lowest point of its box from there.
      const mark = this.#markOf(demand)
      if (proof === 'open' || !this.#raiseThroughLowest(demand, mark)) break
    }
    if (this.#least < this.#top) this.#raiseAlongLadder(demand)
  }

  /** Without a proof: the lowest point of the box at marks further and further up. */
  #raiseAlongLadder(demand: Demand): void {
    this.#isProved = false
    for (let step = 1; this.#least * step < this.#top; step *= 1.25) {
      frameAt(demand, this.#least * step, frame)
      descendFromCorners(frame, lowest)
      if (lowest.ratio < demand.limit && this.#raiseAtLowest(demand)) step = 1
    }
    this.#settle(demand)
  }

  /** Down from the deciding point itself, until nothing is left of what the proof leaves open. */
  #settle(demand: Demand): void {
    for (let k = 0; k < MAX_RAISES; k++) {
      const decider = this.#decider
      if (decider?.demand !== demand || this.#least >= this.#top) return
      frameAt(demand, this.#least, frame)
      for (let i = 0; i < frame.axes; i++) lowest.t[i] = decider.place[frame.part[i] as number] as number
      descend(frame, lowest)
      if (lowest.ratio >= demand.limit * (1 - 1e-12) || !this.#raiseAtLowest(demand)) return
    }
  }

  /** The largest marked figure that can be the point in `at` of the frame that reaches upward. */
  #markOf(demand: Demand): number {
    let mark = Number.POSITIVE_INFINITY
    for (let axis = 0; axis < frame.axes; axis++) {
      const { scale, fixed } = demand.ranges[frame.part[axis] as number] as Demand['ranges'][number]
      if (scale.least > 0) mark = Math.min(mark, (valueAt(frame, axis, at[axis] as number) - fixed.least) / scale.least)
    }
    return Math.min(Math.max(mark, this.#least), this.#top)
  }

  #raiseThroughLowest(demand: Demand, mark: number): boolean {
    const values = Float64Array.from(frame.low)
    for (let axis = 0; axis < frame.axes; axis++)
      values[frame.part[axis] as number] = valueAt(frame, axis, at[axis] as number)
    frameAt(demand, mark, frame)
    for (let axis = 0; axis < frame.axes; axis++) {
      const part = frame.part[axis] as number
      const low = frame.low[part] as number
      const share = ((values[part] as number) - low) / ((frame.high[part] as number) - low)
      lowest.t[axis] = Math.min(1, Math.max(0, share))
    }
    descend(frame, lowest)
    return this.#raiseAtLowest(demand)
  }

  #raiseAtLowest(demand: Demand): boolean {
    const place = demand.ranges.map(() => 0)
    for (let axis = 0; axis < frame.axes; axis++) place[frame.part[axis] as number] = lowest.t[axis] as number
    return this.#raise(demand, (i) => place[i] as number)
  }

  #marginOn({ demand, place }: Decider, marked: number): Margin {
    setWay(demand, (i) => place[i] as number)
    const values = new Float64Array(MAX_AXES)
    valuesOnWay(demand, marked, values)
    if (demand.w === 0) placeValues(demand, place, marked, values)
    return marginOf(this.#around, demand.need, demand.source, partsOf(demand, values))
  }

  /** The root once more on the chain matrix itself: the figure given does meet the need there. */
  #polished(decider: Decider): number {
    // From the bottom, so that the figure does not depend on the order in which needs and sources came.
    setWay(decider.demand, (i) => decider.place[i] as number)
    let marked = enoughFrom(decider.demand, this.#bottom, this.#top)
    for (let k = 0; k < 4; k++) {
      const short = this.#marginOn(decider, marked).db + 1e-9
      if (short >= 0) break
      const step = marked * 1e-7
      const rise = (this.#marginOn(decider, marked + step).db + 1e-9 - short) / step
      marked = Math.min(this.#top, marked + Math.max(-short / rise, marked * 1e-15))
    }
    return marked
  }

  /** Stretches of marked figures below the least that pass everywhere, as far as their ends and middle tell. */
  #passing(decider: Decider, least: number): readonly Stretch[] {
    let passing: Stretch[] = [[this.#bottom, least]]
    const cut = (demand: Demand) => {
      for (let i = 0, n = shortAlong(demand, this.#bottom, least); i < n; i++)
        passing = without(passing, shortEnds[2 * i] as number, shortEnds[2 * i + 1] as number)
    }
    setWay(decider.demand, (i) => decider.place[i] as number)
    cut(decider.demand)
    for (const demand of this.#demands) {
      for (let k = 0; k < 1 << demand.ranges.length && passing.length > 0; k++) {
        setWay(demand, (i) => (k >> i) & 1)
        cut(demand)
      }
    }
    passing = passing.filter(isWide)
    const seen: Stretch[] = []
    for (let k = 0; k < MAX_CUTS; k++) {
      const stretch = passing[0]
      if (!stretch) break
      const refuted = this.#refuted(stretch)
      if (!refuted) {
        seen.push(stretch)
        passing = passing.slice(1)
        continue
      }
      // Beside a resonance of the box the ways through its lowest points close in by less and less: look for the end itself.
      if (k % CUTS_PER_END === CUTS_PER_END - 1) passing = [...this.#ended(stretch), ...passing.slice(1)]
      else {
        setWayThrough(refuted, frame, lowest.t)
        cut(refuted)
      }
      passing = passing.filter(isWide)
    }
    return seen
  }

  /** The part of a stretch between the marks nearest its ends that do not lose the need; nothing where its middle does. */
  #ended([from, to]: Stretch): readonly Stretch[] {
    const middle = Math.sqrt(from * to)
    if (this.#refutedAt(middle)) return []
    const nearest = (end: number): number => {
      let [fails, holds] = [end, middle]
      while (Math.abs(Math.log(fails / holds)) > END_WITHIN) {
        const between = Math.sqrt(fails * holds)
        if (this.#refutedAt(between)) fails = between
        else holds = between
      }
      return holds
    }
    return [
      [this.#refutedAt(from * (1 + 1e-9)) ? nearest(from) : from, this.#refutedAt(to * (1 - 1e-9)) ? nearest(to) : to],
    ]
  }

  /** A demand some part of the box misses at the ends or the middle of a stretch; its lowest point is left in `lowest`. */
  #refuted([from, to]: Stretch): Demand | undefined {
    for (const mark of [Math.sqrt(from * to), from * (1 + 1e-9), to * (1 - 1e-9)]) {
      const refuted = this.#refutedAt(mark)
      if (refuted) return refuted
    }
    return undefined
  }

  #refutedAt(mark: number): Demand | undefined {
    for (const demand of this.#demands) {
      frameAt(demand, mark, frame)
      descendFromCorners(frame, lowest)
      if (lowest.ratio < demand.limit * (1 - 1e-9)) return demand
      if (prove(frame, demand.limit * PROVED, at, this.#effort) !== 'short') continue
      lowest.t.set(at)
      descend(frame, lowest)
      if (lowest.ratio < demand.limit * (1 - 1e-9)) return demand
    }
    return undefined
  }
}
