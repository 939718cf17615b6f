/** A long trace as few points as there are pixels: the least and the most of what falls into each. */
import type { Spectrum } from './types.ts'

const BLOCK = 256

/** Least and most of every 256 rows, so that a drawing reads a fraction of them. */
export type Blocks = { readonly least: Float64Array; readonly most: Float64Array }

export function blocksOf(db: Float64Array): Blocks {
  const count = Math.ceil(db.length / BLOCK)
  const least = new Float64Array(count).fill(Number.POSITIVE_INFINITY)
  const most = new Float64Array(count).fill(Number.NEGATIVE_INFINITY)
  for (let i = 0; i < db.length; i++) {
    const block = (i / BLOCK) | 0
    const value = db[i] as number
    if (value < (least[block] as number)) least[block] = value
    if (value > (most[block] as number)) most[block] = value
  }
  return { least, most }
}

/** The first row at or above a frequency. */
export function rowAt(hz: Float64Array, at: number): number {
  let [low, high] = [0, hz.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((hz[middle] as number) < at) low = middle + 1
    else high = middle
  }
  return low
}

/** What is drawn: x, and the least and most there. */
export type Drawn = {
  readonly hz: Float64Array
  readonly least: Float64Array
  readonly most: Float64Array
  readonly count: number
}

/**
 * The trace between two frequencies in `pixels` steps of log frequency. Where fewer rows than pixels fall in between, every
 * row is its own. One row on either side is kept, so that a line runs to the edge.
 */
export function drawnBetween(
  { hz, db }: Pick<Spectrum, 'hz' | 'db'>,
  blocks: Blocks,
  span: { readonly fromHz: number; readonly toHz: number; readonly pixels: number },
): Drawn {
  const first = Math.max(0, rowAt(hz, span.fromHz) - 1)
  const last = Math.min(hz.length, rowAt(hz, span.toHz * (1 + 1e-12)) + 1)
  if (last - first <= 2 * span.pixels) {
    const own = db.subarray(first, last)
    return { hz: hz.subarray(first, last), least: own, most: own, count: last - first }
  }
  const [x, least, most] = [0, 1, 2].map(() => new Float64Array(span.pixels + 2)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const step = Math.log(span.toHz / span.fromHz) / span.pixels
  let count = 0
  let from = first
  for (let p = 0; p <= span.pixels && from < last; p++) {
    const edge = span.fromHz * Math.exp(step * (p + 1))
    const to = p === span.pixels ? last : Math.min(last, Math.max(from, rowAt(hz, edge)))
    if (to <= from) continue
    x[count] = hz[(from + to) >> 1] as number
    extremes(db, blocks, from, to)
    least[count] = lowest
    most[count] = highest
    count += 1
    from = to
  }
  return { hz: x, least, most, count }
}

let lowest = 0
let highest = 0

/** Least and most of rows from…to−1, by whole blocks where they lie inside. */
function extremes(db: Float64Array, { least, most }: Blocks, from: number, to: number): void {
  lowest = Number.POSITIVE_INFINITY
  highest = Number.NEGATIVE_INFINITY
  let i = from
  while (i < to) {
    const isWhole = i % BLOCK === 0 && i + BLOCK <= to
    const block = i / BLOCK
    const low = isWhole ? (least[block] as number) : (db[i] as number)
    const high = isWhole ? (most[block] as number) : (db[i] as number)
    if (low < lowest) lowest = low
    if (high > highest) highest = high
    i += isWhole ? BLOCK : 1
  }
}
