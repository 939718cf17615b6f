/** One way through the box: every part keeps its place in its range while the marked figure grows. */
import { clearedInto, PAIR_LENGTH } from '../network/cleared.ts'
import type { Demand } from './demand.ts'
import { type Frame, MAX_AXES, valueAt } from './frame.ts'
import type { PartRange } from './layout.ts'
import { excess, shortIntervals, surelyEnough } from './ray.ts'

const base = new Float64Array(MAX_AXES)
const slope = new Float64Array(MAX_AXES)
const pair = new Float64Array(PAIR_LENGTH)
const found = new Float64Array(16)

/** Ends of the intervals the last `shortAlong` found, as marked figures. */
export const shortEnds = new Float64Array(16)

/** Sets the way: `place` 0…1 of each part in its range. */
export function setWay(demand: Demand, place: (part: number) => number): void {
  for (let i = 0; i < demand.ranges.length; i++) {
    const { scale, fixed } = demand.ranges[i] as PartRange
    const at = place(i)
    slope[i] = scale.least + at * (scale.most - scale.least)
    base[i] = demand.w * (fixed.least + at * (fixed.most - fixed.least))
  }
}

/** Sets the way through a point of the frame of `marked`. */
export function setWayThrough(demand: Demand, frame: Frame, t: Float64Array): void {
  setWay(demand, (part) => {
    for (let axis = 0; axis < frame.axes; axis++) {
      if (frame.part[axis] !== part) continue
      const low = frame.low[part] as number
      return (valueAt(frame, axis, t[axis] as number) - low) / ((frame.high[part] as number) - low)
    }
    return 0
  })
}

/** Marked figure from which the way set meets the need for good: `from` when it does from there, `to` when it never does. */
export function enoughFrom(demand: Demand, from: number, to: number): number {
  const { w, limit } = demand
  const degree = clearedInto(demand.wiring, demand.fixed, base, slope, pair)
  if (w === 0 || degree === 0) return excess(pair, limit, 0) < 0 ? to : from
  if (surelyEnough(pair, degree, limit, w * from)) return from
  const count = shortIntervals(pair, degree, limit, w * from, w * to, found)
  if (count === 0) return from
  const last = found[2 * count - 1] as number
  return last >= w * to ? to : Math.max(from, last / w)
}

/** Fills `shortEnds` with the marked figures between which the way set misses the need; returns how many intervals. */
export function shortAlong(demand: Demand, from: number, to: number): number {
  const { w, limit } = demand
  const degree = clearedInto(demand.wiring, demand.fixed, base, slope, pair)
  if (w === 0 || degree === 0) {
    if (excess(pair, limit, 0) >= 0) return 0
    shortEnds[0] = from
    shortEnds[1] = to
    return 1
  }
  const count = shortIntervals(pair, degree, limit, w * from, w * to, found)
  for (let i = 0; i < count; i++) {
    const [low, high] = [found[2 * i] as number, found[2 * i + 1] as number]
    shortEnds[2 * i] = low <= w * from ? from : low / w
    shortEnds[2 * i + 1] = high >= w * to ? to : high / w
  }
  return count
}

/** Farads or henries of every part on the way set at `marked`, into `values`. */
export function valuesOnWay(demand: Demand, marked: number, values: Float64Array): void {
  for (let i = 0; i < demand.ranges.length; i++)
    values[i] = marked * (slope[i] as number) + (demand.w === 0 ? 0 : (base[i] as number) / demand.w)
}
