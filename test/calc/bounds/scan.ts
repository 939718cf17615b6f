/**
 * The least looked for by scanning: 32 points a decade, local extremes refined, crossings bisected on the chain matrix.
 * A second opinion of the exact solution; it can step over a resonance narrower than its grid.
 */
import { marginAt, type Surroundings } from '../../../src/calc/bounds/surroundings.ts'

export type Scanned = { readonly is: 'found' | 'none-needed' | 'never'; readonly farads: number }

const SMALLEST_LOG10 = -15
const ROUNDING_DB = 1e-9
const POINTS_PER_DECADE = 32
const CROSSING_LOG10 = 4e-10

type Margin = (x: number) => number
type Span = { readonly from: number; readonly to: number }

export function scanLeast(around: Surroundings): Scanned {
  const passes = scan((logF) => marginAt(around, 10 ** logF).db + ROUNDING_DB, SMALLEST_LOG10, 0)
  const last = passes.at(-1)
  if (!last || last.to < 0) return { is: 'never', farads: 1 }
  if (last.from <= SMALLEST_LOG10) return { is: 'none-needed', farads: 0 }
  return { is: 'found', farads: 10 ** last.from }
}

/** Spans of the log axis where `margin` is not negative, ends located by bisection. */
function scan(margin: Margin, from: number, to: number): Span[] {
  const count = Math.ceil((to - from) * POINTS_PER_DECADE) + 1
  const x = Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1))
  const y = x.map(margin)
  const points = x.flatMap((at, i) => {
    const here = { x: at, y: y[i] as number }
    const extreme = extremeBetween(margin, x, y, i)
    return extreme ? [here, extreme] : [here]
  })
  points.sort((p, q) => p.x - q.x)
  const spans: Span[] = []
  let open: number | undefined = (points[0] as { y: number }).y >= 0 ? from : undefined
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as { x: number; y: number }
    const b = points[i] as { x: number; y: number }
    if (a.y < 0 && b.y >= 0) open = crossing(margin, a.x, b.x)
    if (a.y >= 0 && b.y < 0 && open !== undefined) {
      spans.push({ from: open, to: crossing(margin, b.x, a.x) })
      open = undefined
    }
  }
  if (open !== undefined) spans.push({ from: open, to })
  return spans
}

/** A dip below zero between passing samples, or a peak above zero between failing ones, that the grid stepped over. */
function extremeBetween(margin: Margin, x: readonly number[], y: readonly number[], i: number) {
  if (i === 0 || i === x.length - 1) return undefined
  const [before, here, after] = [y[i - 1] as number, y[i] as number, y[i + 1] as number]
  const isDip = here < before && here <= after && here >= 0
  const isPeak = here > before && here >= after && here < 0
  if (!isDip && !isPeak) return undefined
  const sign = isDip ? 1 : -1
  let low = x[i - 1] as number
  let high = x[i + 1] as number
  for (let k = 0; k < 40; k++) {
    const p = low + (high - low) * 0.382
    const q = low + (high - low) * 0.618
    if (sign * margin(p) < sign * margin(q)) high = q
    else low = p
  }
  const at = (low + high) / 2
  return { x: at, y: margin(at) }
}

/** The point between a failing and a passing end; returns the passing side. */
function crossing(margin: Margin, failing: number, passing: number): number {
  let bad = failing
  let good = passing
  while (Math.abs(good - bad) > CROSSING_LOG10) {
    const mid = (good + bad) / 2
    if (mid === good || mid === bad) break
    if (margin(mid) >= 0) good = mid
    else bad = mid
  }
  return good
}
