/**
 * Where along a growing part the loss is short of the need: exact ends of every interval.
 *
 *   f(x) = |N(x)|² − 10^(need/10)·|D(x)|²  fails where negative; a real polynomial of twice the degree of N and D:
 *   2 for C, LC, CL, T and a single inductor, 4 for a Pi of equal capacitors.
 *
 * The roots of the derivative cut the axis into stretches where f only rises or only falls, so that none is missed; on
 * each, f is taken from N and D themselves, which keeps full precision beside a sharp resonance. Source: derived.
 */
import { MAX_DEGREE } from '../network/cleared.ts'

const D_AT = 2 * (MAX_DEGREE + 1)
/** real coefficients of f, lowest power first */
const coefficient = new Float64Array(2 * MAX_DEGREE + 1)
const cuts = new Float64Array(8)

/** f(x) from the polynomial pair; its slope is left in `slopeOfF`. */
let slopeOfF = 0
export function excess(pair: Float64Array, limit: number, x: number): number {
  const nRe = (pair[0] as number) + x * ((pair[2] as number) + x * (pair[4] as number))
  const nIm = (pair[1] as number) + x * ((pair[3] as number) + x * (pair[5] as number))
  const dRe = (pair[D_AT] as number) + x * ((pair[D_AT + 2] as number) + x * (pair[D_AT + 4] as number))
  const dIm = (pair[D_AT + 1] as number) + x * ((pair[D_AT + 3] as number) + x * (pair[D_AT + 5] as number))
  const nsRe = (pair[2] as number) + 2 * x * (pair[4] as number)
  const nsIm = (pair[3] as number) + 2 * x * (pair[5] as number)
  const dsRe = (pair[D_AT + 2] as number) + 2 * x * (pair[D_AT + 4] as number)
  const dsIm = (pair[D_AT + 3] as number) + 2 * x * (pair[D_AT + 5] as number)
  slopeOfF = 2 * (nRe * nsRe + nIm * nsIm - limit * (dRe * dsRe + dIm * dsIm))
  return nRe * nRe + nIm * nIm - limit * (dRe * dRe + dIm * dIm)
}

/** Beside a common zero of N and D (an ideal source across a lossless resonance) both are rounding: their squares, relative. */
const NOISE = 1e-27

/** True where f is negative by more than the rounding of N and D. */
function isShortAt(pair: Float64Array, limit: number, x: number): boolean {
  const value = excess(pair, limit, x)
  if (value >= 0) return false
  let size = 0
  let power = 1
  for (let k = 0; k <= MAX_DEGREE; k++) {
    const n = Math.abs(pair[2 * k] as number) + Math.abs(pair[2 * k + 1] as number)
    const d = Math.abs(pair[D_AT + 2 * k] as number) + Math.abs(pair[D_AT + 2 * k + 1] as number)
    size += power * (n + Math.sqrt(limit) * d)
    power *= x
  }
  return -value > NOISE * size * size
}

function expand(pair: Float64Array, limit: number, degree: number): void {
  coefficient.fill(0)
  for (let i = 0; i <= degree; i++)
    for (let k = 0; k <= degree; k++) {
      const n =
        (pair[2 * i] as number) * (pair[2 * k] as number) + (pair[2 * i + 1] as number) * (pair[2 * k + 1] as number)
      const d =
        (pair[D_AT + 2 * i] as number) * (pair[D_AT + 2 * k] as number) +
        (pair[D_AT + 2 * i + 1] as number) * (pair[D_AT + 2 * k + 1] as number)
      coefficient[i + k] = (coefficient[i + k] as number) + n - limit * d
    }
}

/**
 * Intervals inside [from, to] (both > 0) where f < 0, written to `out` as pairs; returns how many. An end that is not a
 * root is `from` or `to` itself. `degree` is that of N.
 */
export function shortIntervals(
  pair: Float64Array,
  degree: number,
  limit: number,
  from: number,
  to: number,
  out: Float64Array,
): number {
  expand(pair, limit, degree)
  const cutCount = cutsBetween(degree, from, to)
  let count = 0
  let x = from
  let isShort = isShortAt(pair, limit, from)
  if (isShort) out[0] = from
  for (let i = 0; i <= cutCount; i++) {
    const end = i === cutCount ? to : (cuts[i] as number)
    const endIsShort = isShortAt(pair, limit, end)
    if (endIsShort !== isShort) {
      const root = crossing(pair, limit, x, end, isShort)
      if (endIsShort) out[2 * count] = root
      else {
        out[2 * count + 1] = root
        count++
      }
      isShort = endIsShort
    }
    x = end
  }
  if (isShort) {
    out[2 * count + 1] = to
    count++
  }
  return count
}

/**
 * True when f ≥ 0 from x on without looking for roots: every Taylor coefficient at x is positive. False says nothing.
 */
export function surelyEnough(pair: Float64Array, degree: number, limit: number, x: number): boolean {
  if (excess(pair, limit, x) < 0) return false
  expand(pair, limit, degree)
  const top = 2 * degree
  // Repeated synthetic division leaves the Taylor coefficients.
  for (let k = 0; k < top; k++)
    for (let i = top - 1; i >= k; i--) coefficient[i] = (coefficient[i] as number) + x * (coefficient[i + 1] as number)
  for (let k = 1; k <= top; k++) if ((coefficient[k] as number) < 0) return false
  return true
}

/** Real roots of f' between the ends, ascending, into `cuts`. */
function cutsBetween(degree: number, from: number, to: number): number {
  const c1 = coefficient[1] as number
  const c2 = 2 * (coefficient[2] as number)
  let count = 0
  if (degree < 1) return 0
  if (degree === 1) {
    const at = -c1 / c2
    if (at > from && at < to) cuts[count++] = at
    return count
  }
  const c3 = 3 * (coefficient[3] as number)
  const c4 = 4 * (coefficient[4] as number)
  // f'' cuts f' into stretches that hold at most one root each.
  const turn = turningPoints(3 * c4, 2 * c3, c2)
  let low = from
  let lowValue = cubic(c1, c2, c3, c4, low)
  for (let i = 0; i <= 2; i++) {
    const high =
      i === 0 ? Math.min(Math.max(turn.low, from), to) : i === 1 ? Math.min(Math.max(turn.high, from), to) : to
    if (!(high > low)) continue
    const highValue = cubic(c1, c2, c3, c4, high)
    if (lowValue < 0 !== highValue < 0) cuts[count++] = cubicRoot(c1, c2, c3, c4, low, high, lowValue < 0)
    low = high
    lowValue = highValue
  }
  return count
}

const turns = { low: 0, high: 0 }
function turningPoints(a: number, b: number, c: number): { low: number; high: number } {
  turns.low = Number.NEGATIVE_INFINITY
  turns.high = Number.NEGATIVE_INFINITY
  const inside = b * b - 4 * a * c
  if (inside < 0 || (a === 0 && b === 0)) return turns
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(inside)) / 2
  const one = a === 0 ? Number.NEGATIVE_INFINITY : q / a
  const other = q === 0 ? one : c / q
  turns.low = Math.min(one, other)
  turns.high = Math.max(one, other)
  return turns
}

function cubic(c1: number, c2: number, c3: number, c4: number, x: number): number {
  return c1 + x * (c2 + x * (c3 + x * c4))
}

function cubicRoot(c1: number, c2: number, c3: number, c4: number, from: number, to: number, rises: boolean): number {
  let low = from
  let high = to
  let x = Math.sqrt(low * high)
  for (let k = 0; k < 200; k++) {
    const value = cubic(c1, c2, c3, c4, x)
    if (value < 0 === rises) low = x
    else high = x
    if (high - low <= 1e-15 * high) break
    const next = x - value / (c2 + x * (2 * c3 + x * 3 * c4))
    const moved = next > low && next < high ? next : middle(low, high)
    if (Math.abs(moved - x) <= 1e-14 * x) return moved
    x = moved
  }
  return x
}

/** Between ends decades apart halve the ratio, else the difference. */
function middle(low: number, high: number): number {
  return high > 2 * low ? Math.sqrt(low * high) : (low + high) / 2
}

/** The root of f between two ends of unlike sign where f is monotone. Returns the side that meets the need. */
function crossing(pair: Float64Array, limit: number, from: number, to: number, lowIsShort: boolean): number {
  let low = from
  let high = to
  let x = middle(low, high)
  for (let k = 0; k < 200; k++) {
    const value = excess(pair, limit, x)
    if (value < 0 === lowIsShort) low = x
    else high = x
    if (high - low <= 2e-15 * high) break
    const next = x - value / slopeOfF
    let moved = next > low && next < high ? next : middle(low, high)
    // A step too small to matter: go just past the root, so that the other end closes in as well.
    if (Math.abs(moved - x) < 1e-14 * x) moved = value < 0 === lowIsShort ? x * (1 + 4e-14) : x * (1 - 4e-14)
    if (!(moved > low && moved < high)) break
    x = moved
  }
  return lowIsShort ? high : low
}
