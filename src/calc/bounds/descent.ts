/**
 * The lowest loss a box holds, part by part. Along one part N and D are affine, so that |N|²/|D|² is a ratio of two
 * quadratics whose extremes are the roots of a third; each step takes the exact lowest point of one line.
 * Source: derived (chain matrices, see cleared.ts).
 */
import { CORNER, type Frame, MAX_AXES } from './frame.ts'

const MAX_SWEEPS = 60
/** relative gain of a whole sweep below which it stops */
const SETTLED = 1e-12

/** Where a descent ended: place on each axis (0…1) and |N|²/|D|² there. */
export type Lowest = { readonly t: Float64Array; ratio: number }

export function makeLowest(): Lowest {
  return { t: new Float64Array(MAX_AXES), ratio: Number.POSITIVE_INFINITY }
}

/** N and D at the two ends of the line along `axis` through t: eight numbers. */
const line = new Float64Array(2 * CORNER)

function lineThrough(frame: Frame, t: Float64Array, axis: number): void {
  line.fill(0)
  const corners = 1 << frame.axes
  for (let k = 0; k < corners; k++) {
    let share = 1
    for (let i = 0; i < frame.axes; i++) if (i !== axis) share *= (k >> i) & 1 ? (t[i] as number) : 1 - (t[i] as number)
    if (share === 0) continue
    const to = (k >> axis) & 1 ? CORNER : 0
    const from = CORNER * k
    for (let j = 0; j < CORNER; j++)
      line[to + j] = (line[to + j] as number) + share * (frame.corners[from + j] as number)
  }
}

let best = 0
let bestT = 0

function tryAt(nRe: number, nIm: number, dRe: number, dIm: number, t: number): void {
  const ratio = (nRe * nRe + nIm * nIm) / (dRe * dRe + dIm * dIm)
  if (ratio < best) {
    best = ratio
    bestT = t
  }
}

/** Lowest |N|²/|D|² on the line; leaves it in `best` and its place in `bestT`. */
function lowestOnLine(): void {
  const [n0Re, n0Im, d0Re, d0Im] = [line[0] as number, line[1] as number, line[2] as number, line[3] as number]
  const nRe = (line[4] as number) - n0Re
  const nIm = (line[5] as number) - n0Im
  const dRe = (line[6] as number) - d0Re
  const dIm = (line[7] as number) - d0Im
  tryAt(n0Re, n0Im, d0Re, d0Im, 0)
  tryAt(n0Re + nRe, n0Im + nIm, d0Re + dRe, d0Im + dIm, 1)
  const a0 = n0Re * n0Re + n0Im * n0Im
  const a1 = 2 * (n0Re * nRe + n0Im * nIm)
  const a2 = nRe * nRe + nIm * nIm
  const b0 = d0Re * d0Re + d0Im * d0Im
  const b1 = 2 * (d0Re * dRe + d0Im * dIm)
  const b2 = dRe * dRe + dIm * dIm
  // (a/b)' = 0
  const q2 = a2 * b1 - a1 * b2
  const q1 = a2 * b0 - a0 * b2
  const q0 = a1 * b0 - a0 * b1
  const inside = q1 * q1 - q2 * q0
  if (!(inside >= 0)) return
  const q = -(q1 + (q1 < 0 ? -1 : 1) * Math.sqrt(inside))
  const one = q / q2
  const other = q0 / q
  if (one > 0 && one < 1) tryAt(n0Re + one * nRe, n0Im + one * nIm, d0Re + one * dRe, d0Im + one * dIm, one)
  if (other > 0 && other < 1)
    tryAt(n0Re + other * nRe, n0Im + other * nIm, d0Re + other * dRe, d0Im + other * dIm, other)
}

const before = new Float64Array(MAX_AXES)
const leap = new Float64Array(MAX_AXES)

/** |N|²/|D|² at a point of the box. */
export function ratioAt(frame: Frame, t: Float64Array): number {
  if (frame.axes === 0) return ratioAtCorner(frame, 0)
  lineThrough(frame, t, 0)
  const at = t[0] as number
  let n2 = 0
  let d2 = 0
  for (let j = 0; j < CORNER; j++) {
    const value = (line[j] as number) * (1 - at) + (line[CORNER + j] as number) * at
    if (j < 2) n2 += value * value
    else d2 += value * value
  }
  return n2 / d2
}

/** On along the way the last sweep went, twice as far each time, while it pays: a narrow valley is followed, not crossed. */
function leapOn(frame: Frame, lowest: Lowest): void {
  const { t } = lowest
  for (let far = 1; far < 1e6; far *= 2) {
    for (let i = 0; i < frame.axes; i++)
      leap[i] = Math.min(1, Math.max(0, (t[i] as number) + far * ((t[i] as number) - (before[i] as number))))
    const ratio = ratioAt(frame, leap)
    if (!(ratio < lowest.ratio)) return
    lowest.ratio = ratio
    for (let i = 0; i < frame.axes; i++) {
      before[i] = t[i] as number
      t[i] = leap[i] as number
    }
  }
}

/**
 * Goes down from `lowest.t` until no part alone gives less. `first`: the part that moves first; along a curved valley it
 * decides where the others come down to it.
 */
export function descend(frame: Frame, lowest: Lowest, first = 0): void {
  const { t } = lowest
  lowest.ratio = frame.axes === 0 ? ratioAtCorner(frame, 0) : Number.POSITIVE_INFINITY
  for (let sweep = 0; sweep < MAX_SWEEPS && frame.axes > 0; sweep++) {
    const last = lowest.ratio
    before.set(t)
    for (let k = 0; k < frame.axes; k++) {
      const axis = (first + k) % frame.axes
      lineThrough(frame, t, axis)
      best = lowest.ratio
      bestT = t[axis] as number
      lowestOnLine()
      t[axis] = bestT
      lowest.ratio = best
    }
    if (frame.axes === 1 || last - lowest.ratio <= SETTLED * lowest.ratio) return
    if (sweep > 0) leapOn(frame, lowest)
  }
}

/** |N|²/|D|² at one corner. */
export function ratioAtCorner(frame: Frame, corner: number): number {
  const at = CORNER * corner
  const { corners } = frame
  return (
    ((corners[at] as number) ** 2 + (corners[at + 1] as number) ** 2) /
    ((corners[at + 2] as number) ** 2 + (corners[at + 3] as number) ** 2)
  )
}

/** Goes down from the lowest corner. */
export function descendFromCorners(frame: Frame, lowest: Lowest): void {
  let lowestCorner = 0
  let ratio = Number.POSITIVE_INFINITY
  for (let k = 0; k < 1 << frame.axes; k++) {
    const here = ratioAtCorner(frame, k)
    if (here < ratio) {
      ratio = here
      lowestCorner = k
    }
  }
  for (let i = 0; i < frame.axes; i++) lowest.t[i] = (lowestCorner >> i) & 1
  descend(frame, lowest)
}
