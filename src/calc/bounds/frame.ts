/**
 * A box of parts seen from its corners. N and D are affine in every part, so a point inside is the blend of the corners
 * and nothing else has to be computed; see cleared.ts for N and D.
 */
import { clearedInto, MAX_DEGREE, PAIR_LENGTH } from '../network/cleared.ts'
import type { Demand } from './demand.ts'

/**
 * A T of two beads, each resistance and reactance, a capacitor with its damper of two parts, a choke, a capacitor from
 * line to line, a capacitance at either node.
 */
export const MAX_AXES = 11
const MAX_CORNERS = 1 << MAX_AXES
/** Numbers of one corner: N, then D. */
export const CORNER = 4
const D_AT = 2 * (MAX_DEGREE + 1)

/** One box at a time: the solver is one thread and asks for one answer after another. */
export type Frame = {
  /** how many parts have an extent */
  axes: number
  /** the part of each axis */
  readonly part: Int8Array
  /** farads or henries of every part, axis or not */
  readonly low: Float64Array
  readonly high: Float64Array
  /** weight of the far end by axis: below 1 where an axis reaches over decades */
  readonly weight: Float64Array
  /** N and D of each corner; bit i of its number = far end of axis i. Room for all of them from the first box on. */
  corners: Float64Array
}

/** A page that computes nothing asks for no room. */
const NO_CORNERS = new Float64Array(0)

export function makeFrame(): Frame {
  return {
    axes: 0,
    part: new Int8Array(MAX_AXES),
    low: new Float64Array(MAX_AXES),
    high: new Float64Array(MAX_AXES),
    weight: new Float64Array(MAX_AXES),
    corners: NO_CORNERS,
  }
}

/** Farads or henries of one part at `t` (0 near end … 1 far end). */
export function valueAt(frame: Frame, axis: number, t: number): number {
  const part = frame.part[axis] as number
  const low = frame.low[part] as number
  const high = frame.high[part] as number
  const far = t * (frame.weight[axis] as number)
  return (low * (1 - t) + high * far) / (1 - t + far)
}

const base = new Float64Array(MAX_AXES)
const still = new Float64Array(MAX_AXES)
const pair = new Float64Array(PAIR_LENGTH)

/** The box of every part when the marked figure is `marked`. */
export function frameAt(demand: Demand, marked: number, frame: Frame): void {
  const { ranges } = demand
  for (let i = 0; i < ranges.length; i++) {
    const { scale, fixed } = ranges[i] as Demand['ranges'][number]
    frame.low[i] = marked * scale.least + fixed.least
    frame.high[i] = marked * scale.most + fixed.most
  }
  fill(demand, frame, false)
}

/** The box of everything a part marked anywhere from `from` to `to` can be. */
export function frameFrom(demand: Demand, from: number, to: number, frame: Frame): void {
  const { ranges } = demand
  for (let i = 0; i < ranges.length; i++) {
    const { scale, fixed } = ranges[i] as Demand['ranges'][number]
    frame.low[i] = from * scale.least + fixed.least
    frame.high[i] = to * scale.most + fixed.most
  }
  fill(demand, frame, true)
}

function fill(demand: Demand, frame: Frame, projective: boolean): void {
  const count = demand.ranges.length
  frame.axes = 0
  if (frame.corners.length === 0) frame.corners = new Float64Array(CORNER * MAX_CORNERS)
  for (let i = 0; i < count; i++) {
    const low = frame.low[i] as number
    const high = frame.high[i] as number
    base[i] = demand.w * low
    if (!(high > low)) continue
    frame.part[frame.axes] = i
    frame.weight[frame.axes] = projective && low > 0 ? low / high : 1
    frame.axes++
  }
  const corners = 1 << frame.axes
  for (let k = 0; k < corners; k++) {
    let weight = 1
    for (let axis = 0; axis < frame.axes; axis++) {
      const part = frame.part[axis] as number
      const isFar = (k >> axis) & 1
      base[part] = demand.w * ((isFar ? frame.high[part] : frame.low[part]) as number)
      if (isFar) weight *= frame.weight[axis] as number
    }
    clearedInto(demand.wiring, demand.fixed, base, still, pair)
    const at = CORNER * k
    frame.corners[at] = weight * (pair[0] as number)
    frame.corners[at + 1] = weight * (pair[1] as number)
    frame.corners[at + 2] = weight * (pair[D_AT] as number)
    frame.corners[at + 3] = weight * (pair[D_AT + 1] as number)
  }
}
