/** How far the currents of all contacts together can reach, whatever point of its box each of them stands at. */
import type { Complex } from '../complex.ts'
import { type Cell, halvesOf } from './cells.ts'
import { ALPHA, BETA, SHARE } from './share.ts'

/** Directions in which a reach is kept, even around the circle. */
export const DIRECTIONS = 24
const STEP = (2 * Math.PI) / DIRECTIONS
const COS = Float64Array.from({ length: DIRECTIONS }, (_, k) => Math.cos(k * STEP))
const SIN = Float64Array.from({ length: DIRECTIONS }, (_, k) => Math.sin(k * STEP))
const COS_STEP = Math.cos(STEP)
const SIN_STEP = Math.sin(STEP)

/** Largest real part of a set after turning by each direction back. */
export type Reach = Float64Array

export const emptyReach = (): Reach => new Float64Array(DIRECTIONS)

/** Adds (or with −1 takes off) the reach of one contact: that of a sum of sets is the sum of their reaches. */
export function addReach(sum: Reach, one: Reach, times: number = 1): void {
  for (let k = 0; k < DIRECTIONS; k++) sum[k] = (sum[k] as number) + times * (one[k] as number)
}

/** How far beyond the points looked at a reach may lie, as a share of the farthest of them: 0.03 dB. */
const TOLERANCE = 0.003
/** Cells of one contact after which what is left is taken as it stands. */
const MOST_CELLS = 4000

/** Which sum of the two currents of a contact is looked at: of·α + by·β. */
export type Mixture = { readonly of: Complex; readonly by: Complex }

/** of·α + by·β at the corners of the cell that is looked at; as many as any cell had. */
let xs = new Float64Array(1 << 10)
let ys = new Float64Array(1 << 10)

/** The reach of of·α + by·β over every point of the boxes, from above. */
export function reachOf(boxes: readonly Cell[], mixture: Mixture): Reach {
  const reach = new Float64Array(DIRECTIONS).fill(Number.NEGATIVE_INFINITY)
  const beyond = new Float64Array(DIRECTIONS).fill(Number.NEGATIVE_INFINITY)
  let [farthest, slack] = [0, 0]
  const add = (i: number): void => {
    const x = xs[i] as number
    const y = ys[i] as number
    farthest = Math.max(farthest, Math.hypot(x, y))
    for (let k = 0; k < DIRECTIONS; k++) {
      const far = x * (COS[k] as number) + y * (SIN[k] as number)
      if (far > (reach[k] as number)) reach[k] = far
    }
  }
  const waiting: Cell[] = [...boxes]
  for (const { box, corners } of boxes) {
    mixInto(box.shares, corners, mixture)
    for (let i = 0; i < corners.length; i++) add(i)
  }
  for (let at = 0; at < waiting.length; at++) {
    const { box, corners, turn } = waiting[at] as Cell
    const count = corners.length
    if (count === 1) continue
    mixInto(box.shares, corners, mixture)
    const [x, y, radius] = discOf(count)
    const bulge = turn < Math.PI / 2 ? radius * Math.tan(turn) : radius === 0 ? 0 : Number.POSITIVE_INFINITY
    if (bulge <= slack) continue
    const tolerance = TOLERANCE * farthest
    if (bulge <= tolerance) {
      slack = bulge
      continue
    }
    const isLast = waiting.length >= MOST_CELLS
    if (!reachesBeyond(count, Math.atan2(y, x), bulge, isLast ? Number.POSITIVE_INFINITY : tolerance, reach, beyond))
      continue
    const [lower, upper] = halvesOf(waiting[at] as Cell)
    waiting.push(lower, upper)
    mixInto(box.shares, upper.corners, mixture)
    for (let i = 0; i < count; i++) if (upper.corners[i] !== corners[i]) add(i)
  }
  for (let k = 0; k < DIRECTIONS; k++)
    reach[k] = Math.max((reach[k] as number) + slack, beyond[k] as number) + ROUNDING * farthest
  return reach
}

function mixInto(shares: Float64Array, corners: readonly number[], { of: [aRe, aIm], by: [bRe, bIm] }: Mixture): void {
  if (corners.length > xs.length) {
    xs = new Float64Array(corners.length)
    ys = new Float64Array(corners.length)
  }
  for (let i = 0; i < corners.length; i++) {
    const at = SHARE * (corners[i] as number)
    const alphaRe = shares[at + ALPHA] as number
    const alphaIm = shares[at + ALPHA + 1] as number
    const betaRe = shares[at + BETA] as number
    const betaIm = shares[at + BETA + 1] as number
    xs[i] = aRe * alphaRe - aIm * alphaIm + bRe * betaRe - bIm * betaIm
    ys[i] = aRe * alphaIm + aIm * alphaRe + bRe * betaIm + bIm * betaRe
  }
}

/** A disc that holds the corners: centre and radius. */
function discOf(count: number): readonly [x: number, y: number, radius: number] {
  let [x, y, square] = [0, 0, 0]
  for (let i = 0; i < count; i++) {
    x += (xs[i] as number) / count
    y += (ys[i] as number) / count
  }
  for (let i = 0; i < count; i++) {
    const dx = (xs[i] as number) - x
    const dy = (ys[i] as number) - y
    square = Math.max(square, dx * dx + dy * dy)
  }
  return [x, y, Math.sqrt(square)]
}

/**
 * Whether the corners with their bulge reach farther than `tolerance` beyond what is known, looked for first where they
 * lie; if not, what they reach is noted.
 */
function reachesBeyond(
  count: number,
  angle: number,
  bulge: number,
  tolerance: number,
  reach: Reach,
  beyond: Reach,
): boolean {
  const towards = Math.round(angle / STEP) + DIRECTIONS
  for (let i = 0; i < DIRECTIONS; i++) {
    const k = (towards + (i % 2 === 0 ? i / 2 : -(i + 1) / 2) + DIRECTIONS) % DIRECTIONS
    const far = bulge + farTo(count, k)
    if (far > (reach[k] as number) + tolerance) return true
    if (far > (beyond[k] as number)) beyond[k] = far
  }
  return false
}

function farTo(count: number, k: number): number {
  const cos = COS[k] as number
  const sin = SIN[k] as number
  let far = Number.NEGATIVE_INFINITY
  for (let i = 0; i < count; i++) {
    const one = (xs[i] as number) * cos + (ys[i] as number) * sin
    if (one > far) far = one
  }
  return far
}

/** Sums in another order differ by this share. */
const ROUNDING = 1e-12

/** A turn of the directions by any angle: between two directions no set reaches beyond where their edges meet. */
export type Turn = { low: number; one: number; other: number }

export const makeTurn = (): Turn => ({ low: 0, one: 0, other: 0 })

export function turnBy(angle: number, turn: Turn): void {
  const turns = angle / STEP
  const low = Math.floor(turns)
  const part = (turns - low) * STEP
  turn.low = ((low % DIRECTIONS) + DIRECTIONS) % DIRECTIONS
  turn.one = Math.sin(STEP - part) / SIN_STEP
  turn.other = Math.sin(part) / SIN_STEP
}

/** Reach in direction k turned, from above. */
export function turnedReach(reach: Reach, { low, one, other }: Turn, k: number): number {
  let at = low + k
  if (at >= DIRECTIONS) at -= DIRECTIONS
  const next = at + 1 === DIRECTIONS ? 0 : at + 1
  return (reach[at] as number) * one + (reach[next] as number) * other
}

/** What a point reaches in direction k. */
export const reachOfPoint = (re: number, im: number, k: number): number =>
  re * (COS[k] as number) + im * (SIN[k] as number)

/** Where the edges of direction k and the next meet: no point of the set lies outside those corners. */
export const cornerRe = (reach: Reach, k: number): number =>
  ((reach[k] as number) * (SIN[(k + 1) % DIRECTIONS] as number) -
    (reach[(k + 1) % DIRECTIONS] as number) * (SIN[k] as number)) /
  SIN_STEP
export const cornerIm = (reach: Reach, k: number): number =>
  ((reach[(k + 1) % DIRECTIONS] as number) * (COS[k] as number) -
    (reach[k] as number) * (COS[(k + 1) % DIRECTIONS] as number)) /
  SIN_STEP

/** Largest distance from 0 within the edges. */
export function farthestOf(reach: Reach): number {
  let most = 0
  for (let k = 0; k < DIRECTIONS; k++) {
    const one = reach[k] as number
    const other = reach[k + 1 === DIRECTIONS ? 0 : k + 1] as number
    most = Math.max(most, one * one + other * other - 2 * one * other * COS_STEP)
  }
  return Math.sqrt(most) / SIN_STEP
}

/** Least distance from 0 within the edges; 0 where they hold it. */
export function nearestOf(reach: Reach): number {
  let near = 0
  for (let k = 0; k < DIRECTIONS; k++) {
    const one = reach[k] as number
    const other = reach[k + 1 === DIRECTIONS ? 0 : k + 1] as number
    near = Math.max(near, -one)
    // the way to a corner lies between two directions
    if (one * COS_STEP > other && other * COS_STEP > one && one < 0)
      near = Math.max(near, Math.sqrt(one * one + other * other - 2 * one * other * COS_STEP) / SIN_STEP)
  }
  return near
}
