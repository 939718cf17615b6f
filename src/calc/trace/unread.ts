/** What of the span of a limit a trace did not read: its ends, and stretches without a row between them. */
import type { Progress } from '../types.ts'
import type { TraceLimit } from './limit.ts'

/** Rows further apart than this share of the frequency, and than two bandwidths, leave something unread. Practice. */
const APART_FRAC = 0.05
const APART_BANDWIDTHS = 2
const SLICE_ROWS = 4096
/** The ends of a sweep are typed: this share counts as there. */
const END_FRAC = 0.005

export type Stretch = { readonly fromHz: number; readonly toHz: number }

/** From the first to the last corner of a limit. */
export function spanOf({ segments }: Pick<TraceLimit, 'segments'>): Stretch {
  const corners = segments.flat().map(({ hz }) => hz)
  return { fromHz: Math.min(...corners), toHz: Math.max(...corners) }
}

/** What the trace reads where that is less than the span of the limit; undefined where it reaches over all of it. `hz` rising. */
export function shortOf(hz: Float64Array, limit: Pick<TraceLimit, 'segments'>): Stretch | undefined {
  const { fromHz, toHz } = spanOf(limit)
  const [first = Number.POSITIVE_INFINITY, last = 0] = [hz[0], hz.at(-1)]
  return first > fromHz * (1 + END_FRAC) || last < toHz * (1 - END_FRAC) ? { fromHz: first, toHz: last } : undefined
}

/** The first stretch inside the span of the limit in which no row stands; undefined where there is none. `hz` rising. */
export function* gapIn(
  hz: Float64Array,
  limit: Pick<TraceLimit, 'segments'>,
  bandwidthHz: number,
): Generator<Progress, Stretch | undefined> {
  const { fromHz, toHz } = spanOf(limit)
  for (let i = 0; i + 1 < hz.length; i++) {
    if (i % SLICE_ROWS === SLICE_ROWS - 1) yield { doneFrac: i / hz.length }
    const [f, next] = [hz[i] as number, hz[i + 1] as number]
    if (f > toHz) break
    const isInside = next > fromHz && f < toHz
    if (isInside && next - f > Math.max(APART_FRAC * f, APART_BANDWIDTHS * bandwidthHz))
      return { fromHz: f, toHz: next }
  }
  return undefined
}
