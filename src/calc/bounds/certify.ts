/**
 * Proof that a whole box of parts keeps a loss, or a point of it that does not.
 *
 * For any direction u, |N| ≥ Re(N·ū)/|u|. Re(N·ū)/|u| − √T·|D| is concave along every part (N is affine, |D| convex), so
 * that its least value over a box is at a corner. Where every corner is ≥ 0 the whole box keeps |N|² ≥ T·|D|². Otherwise
 * the box is halved along the part that turns N most. The gap left shrinks with the square of the box.
 * Source: derived; checked against dense searches with another solver.
 */
import { CORNER, type Frame, MAX_AXES, valueAt } from './frame.ts'

const MAX_CORNERS = 1 << MAX_AXES
/** Deep enough for a box halved to a millionth along every part. */
const MAX_DEPTH = 160

/** One box on the stack: its corners, then where it begins and ends on each axis. As long as the largest box so far needs. */
let stackAxes = -1
let tAt = 0
let stack: readonly Float64Array[] = []
/** Most boxes have no more axes than this. */
const USUAL_AXES = 5

function stackFor(axes: number): readonly Float64Array[] {
  return Array.from({ length: MAX_DEPTH }, () => new Float64Array((CORNER << axes) + 2 * axes))
}

function growTo(axes: number): void {
  if (axes <= stackAxes) return
  stackAxes = Math.max(axes, USUAL_AXES)
  tAt = CORNER << stackAxes
  stack = stackFor(stackAxes)
}

const norm = new Float64Array(MAX_CORNERS)
const turn = new Float64Array(MAX_AXES)

/** Which points count: in a box that reaches from one marked figure to another, two capacitors of one mark stay within its spread. */
export type Feasible = (low: Float64Array, high: Float64Array) => boolean

/** Both N and D below this share of what they are at the corners are rounding: their squares. */
const NOISE = 1e-26
/** A part known this closely: nothing narrower than this is a box of parts. */
const NARROW = 1e-11
const NARROW_FROM_DEPTH = 30

const lowValues = new Float64Array(MAX_AXES)
const highValues = new Float64Array(MAX_AXES)

/** A box of more corners than these counts as so many more. */
const ORDINARY_CORNERS = 128

/** Effort: boxes still allowed before a proof gives up. Shared by the proofs of one answer. */
export type Effort = { boxes: number }

export type Proof = 'keeps' | 'short' | 'open'

/**
 * 'keeps' when |N|² ≥ limit·|D|² everywhere; 'short' with a point that misses it left in `at` (places 0…1 by axis).
 * 'open' when neither was shown within the effort allowed: the caller must not call that kept.
 */
export function prove(frame: Frame, limit: number, at: Float64Array, effort: Effort, feasible?: Feasible): Proof {
  const { axes } = frame
  const corners = 1 << axes
  growTo(axes)
  const root = stack[0] as Float64Array
  for (let i = 0; i < CORNER * corners; i++) root[i] = frame.corners[i] as number
  for (let i = 0; i < axes; i++) {
    root[tAt + 2 * i] = 0
    root[tAt + 2 * i + 1] = 1
  }
  const amplitude = Math.sqrt(limit)
  let noise = 0
  for (let i = 0; i < CORNER * corners; i++) noise = Math.max(noise, NOISE * (root[i] as number) ** 2)
  let depth = 1
  while (depth > 0) {
    const box = stack[depth - 1] as Float64Array
    effort.boxes -= corners > ORDINARY_CORNERS ? corners / ORDINARY_CORNERS : 1
    if (effort.boxes < 0 || depth >= MAX_DEPTH - 1) return 'open'
    const short = shortCorner(box, corners, limit, noise)
    if (short >= 0 && (!feasible || isFeasibleCorner(frame, box, short, feasible))) {
      for (let i = 0; i < axes; i++) at[i] = box[tAt + 2 * i + ((short >> i) & 1)] as number
      return 'short'
    }
    if (short < 0 && cornersKeep(box, corners, amplitude)) {
      depth--
      continue
    }
    if (feasible && !isFeasibleBox(frame, box, feasible)) {
      depth--
      continue
    }
    if (axes === 0) return 'keeps'
    const axis = splitAxis(box, axes, corners, short >= 0 ? frame : undefined)
    if (depth > NARROW_FROM_DEPTH && isNarrow(frame, box, axis)) {
      depth--
      continue
    }
    split(box, stack[depth] as Float64Array, axes, axis)
    depth++
  }
  return 'keeps'
}

let worstCorner = 0

/** A corner that misses the need, or −1; leaves norms of N and the corner of least ratio behind. */
function shortCorner(box: Float64Array, corners: number, limit: number, noise: number): number {
  let least = Number.POSITIVE_INFINITY
  let short = -1
  for (let k = 0; k < corners; k++) {
    const at = CORNER * k
    const nRe = box[at] as number
    const nIm = box[at + 1] as number
    const dRe = box[at + 2] as number
    const dIm = box[at + 3] as number
    const n2 = nRe * nRe + nIm * nIm
    const d2 = limit * (dRe * dRe + dIm * dIm)
    norm[k] = Math.sqrt(n2)
    const ratio = d2 === 0 || n2 + d2 < noise ? Number.POSITIVE_INFINITY : n2 / d2
    if (k === 0 || ratio < least) {
      least = ratio
      worstCorner = k
    }
    if (ratio < 1 && short < 0) short = k
  }
  return least < 1 ? (short === worstCorner ? short : worstCorner) : -1
}

function cornersKeep(box: Float64Array, corners: number, amplitude: number): boolean {
  const u = CORNER * worstCorner
  const uNorm = norm[worstCorner] as number
  if (uNorm === 0) return false
  const uRe = (box[u] as number) / uNorm
  const uIm = (box[u + 1] as number) / uNorm
  for (let k = 0; k < corners; k++) {
    const at = CORNER * k
    const dRe = box[at + 2] as number
    const dIm = box[at + 3] as number
    const along = (box[at] as number) * uRe + (box[at + 1] as number) * uIm
    // Beside the corner itself rounding alone would refuse.
    if (along < amplitude * Math.sqrt(dRe * dRe + dIm * dIm) * (1 - 1e-13)) return false
  }
  return true
}

/** The part along which N turns most: one minus the cosine between the ends of its edges, summed. */
function splitAxis(box: Float64Array, axes: number, corners: number, wide: Frame | undefined): number {
  if (wide) return widestAxis(wide, box, axes)
  turn.fill(0)
  for (let k = 0; k < corners; k++)
    for (let i = 0; i < axes; i++) {
      if ((k >> i) & 1) continue
      const a = CORNER * k
      const b = CORNER * (k | (1 << i))
      const lengths = (norm[k] as number) * (norm[k | (1 << i)] as number)
      const dot = (box[a] as number) * (box[b] as number) + (box[a + 1] as number) * (box[b + 1] as number)
      turn[i] = (turn[i] as number) + 1 - (lengths > 0 ? dot / lengths : 0)
    }
  let most = 0
  for (let i = 1; i < axes; i++) if ((turn[i] as number) > (turn[most] as number)) most = i
  return most
}

/** A corner that no marked part can be is in the way: split where the ends lie furthest apart. */
function widestAxis(frame: Frame, box: Float64Array, axes: number): number {
  let most = 0
  let mostRatio = 0
  for (let i = 0; i < axes; i++) {
    const low = valueAt(frame, i, box[tAt + 2 * i] as number)
    const high = valueAt(frame, i, box[tAt + 2 * i + 1] as number)
    const ratio = high / low
    if (ratio > mostRatio) {
      mostRatio = ratio
      most = i
    }
  }
  return most
}

function isNarrow(frame: Frame, box: Float64Array, axis: number): boolean {
  const low = valueAt(frame, axis, box[tAt + 2 * axis] as number)
  const high = valueAt(frame, axis, box[tAt + 2 * axis + 1] as number)
  return high - low <= NARROW * high
}

/** Halves `box` along `axis`: it keeps the near half, `other` gets the far half. */
function split(box: Float64Array, other: Float64Array, axes: number, axis: number): void {
  const corners = 1 << axes
  const bit = 1 << axis
  for (let k = 0; k < corners; k++) {
    if (k & bit) continue
    const a = CORNER * k
    const b = CORNER * (k | bit)
    for (let j = 0; j < CORNER; j++) {
      const far = box[b + j] as number
      const half = ((box[a + j] as number) + far) / 2
      other[a + j] = half
      other[b + j] = far
      box[b + j] = half
    }
  }
  for (let i = 0; i < 2 * axes; i++) other[tAt + i] = box[tAt + i] as number
  const middle = ((box[tAt + 2 * axis] as number) + (box[tAt + 2 * axis + 1] as number)) / 2
  box[tAt + 2 * axis + 1] = middle
  other[tAt + 2 * axis] = middle
}

function isFeasibleCorner(frame: Frame, box: Float64Array, corner: number, feasible: Feasible): boolean {
  lowValues.set(frame.low)
  for (let i = 0; i < frame.axes; i++)
    lowValues[frame.part[i] as number] = valueAt(frame, i, box[tAt + 2 * i + ((corner >> i) & 1)] as number)
  return feasible(lowValues, lowValues)
}

function isFeasibleBox(frame: Frame, box: Float64Array, feasible: Feasible): boolean {
  lowValues.set(frame.low)
  highValues.set(frame.high)
  for (let i = 0; i < frame.axes; i++) {
    const part = frame.part[i] as number
    lowValues[part] = valueAt(frame, i, box[tAt + 2 * i] as number)
    highValues[part] = valueAt(frame, i, box[tAt + 2 * i + 1] as number)
  }
  return feasible(lowValues, highValues)
}
