/** Everything one contact can do to the plate at one frequency: its box of tolerances, every source, wherever a suppressor stands. */
import { type Demand, demandsOf } from '../../bounds/demand.ts'
import type { Span, Surroundings } from '../../bounds/surroundings.ts'
import { ALPHA, BETA, SHARE, shareInto } from './share.ts'

/** A contact that returns current through the plate: its surroundings wherever what stands at its ends may be. */
export type Plated = {
  readonly placed: readonly Surroundings[]
  /** shares of its mark that the part can have */
  readonly shares: Span
  /** farads, or henries of a single inductor, as marked */
  readonly marked: number
}

/** Points of a box, SHARE numbers each, with how far the points between them may lie outside those. */
export type Points = {
  readonly count: number
  readonly shares: Float64Array
  readonly alphaSlack: number
  readonly betaSlack: number
}

/** Points along each part that has an extent, by how many there are. */
const STEPS: readonly (readonly number[])[] = [[1], [5], [5, 3], [3, 3, 3]]
const FINE_STEPS: readonly (readonly number[])[] = [[1], [17], [13, 9], [7, 7, 7]]
const CORNERS = 2

const demandsAt = ({ placed, shares }: Plated, hz: number): readonly Demand[] =>
  placed.flatMap((around) => demandsOf({ ...around, needs: [{ hz, db: 0 }] }, shares))

/** The box of one contact at a frequency; `fine` where its own loss is looked at. */
export function pointsOf(plated: Plated, hz: number, fine: boolean): Points {
  const { marked } = plated
  const demands = demandsAt(plated, hz)
  const grids = demands.map((demand) => gridOf(demand, marked, fine))
  const count = grids.reduce((sum, grid) => sum + grid.count, 0)
  const out = new Float64Array(SHARE * count)
  let alphaSlack = 0
  let betaSlack = 0
  let from = 0
  demands.forEach((demand, i) => {
    const grid = grids[i] as Grid
    fill(demand, grid, out, from)
    alphaSlack = Math.max(alphaSlack, slackOf(grid, out, from, ALPHA))
    betaSlack = Math.max(betaSlack, slackOf(grid, out, from, BETA))
    from += grid.count
  })
  return { count, shares: out, alphaSlack, betaSlack }
}

/** Where a point stands: which source and end, and how far along each part, 0 to 1. */
type Place = { readonly demand: number; readonly t: readonly number[] }

/** Each zoom looks at a third of the box before it, on five points along each part. */
const ZOOM = 1 / 3
const ZOOM_STEPS = 5
const MOST_ZOOMS = 9
const MOST_ZOOMED_AXES = 4

/**
 * Smaller and smaller boxes around the worst point of a fine one, `worstOf` saying which of the points it is: sharp
 * resonances lie between the points of any grid. Yields each box for the caller to look at.
 */
export function* closerTo(plated: Plated, hz: number, point: number): Generator<Points, void, number> {
  const { marked } = plated
  const demands = demandsAt(plated, hz)
  let place: Place | undefined
  let before = 0
  for (const [i, demand] of demands.entries()) {
    const grid = gridOf(demand, marked, true)
    if (point < before + grid.count) {
      place = { demand: i, t: grid.axes.map((axis) => alongOf(axis, point - before)) }
      break
    }
    before += grid.count
  }
  const demand = place && demands[place.demand]
  if (place === undefined || demand === undefined || place.t.length === 0 || place.t.length > MOST_ZOOMED_AXES) return
  const grid = gridOf(demand, marked, true)
  let stride = 1
  const axes = grid.axes.map(({ part, steps }) => {
    const axis = { part, steps: ZOOM_STEPS, stride, width: 1 / (steps - 1) }
    stride *= ZOOM_STEPS
    return axis
  })
  let t = place.t
  for (let zoom = 0; zoom < MOST_ZOOMS; zoom++) {
    const from = t.map((at, i) => Math.max(0, at - (axes[i] as { width: number }).width * ZOOM ** zoom))
    const to = t.map((at, i) => Math.min(1, at + (axes[i] as { width: number }).width * ZOOM ** zoom))
    const out = new Float64Array(SHARE * stride)
    fill(demand, { ...grid, axes, count: stride }, out, 0, from, to)
    const worst = yield { count: stride, shares: out, alphaSlack: 0, betaSlack: 0 }
    t = axes.map((axis, i) => (from[i] as number) + alongOf(axis, worst) * ((to[i] as number) - (from[i] as number)))
  }
}

const alongOf = ({ steps, stride }: { readonly steps: number; readonly stride: number }, k: number): number =>
  (Math.floor(k / stride) % steps) / (steps - 1)

type Grid = {
  readonly count: number
  readonly low: readonly number[]
  readonly high: readonly number[]
  /** the part of each axis, points along it, and how far its neighbours are in the list */
  readonly axes: readonly { readonly part: number; readonly steps: number; readonly stride: number }[]
}

function gridOf({ ranges }: Demand, marked: number, fine: boolean): Grid {
  const low = ranges.map(({ scale, fixed }) => marked * scale.least + fixed.least)
  const high = ranges.map(({ scale, fixed }) => marked * scale.most + fixed.most)
  const parts = ranges.flatMap((_, part) => ((high[part] as number) > (low[part] as number) ? [part] : []))
  const steps = (fine ? FINE_STEPS : STEPS)[parts.length]
  let stride = 1
  const axes = parts.map((part, i) => {
    const axis = { part, steps: steps?.[i] ?? CORNERS, stride }
    stride *= axis.steps
    return axis
  })
  return { count: stride, low, high, axes }
}

const values = new Float64Array(16)

/** Every point of the grid, between `least` and `most` of the way along each part. */
function fill(
  demand: Demand,
  { count, low, high, axes }: Grid,
  out: Float64Array,
  from: number,
  least?: readonly number[],
  most?: readonly number[],
): void {
  for (let i = 0; i < low.length; i++) values[i] = low[i] as number
  for (let k = 0; k < count; k++) {
    axes.forEach((axis, i) => {
      const [near, far] = [least?.[i] ?? 0, most?.[i] ?? 1]
      const t = near + alongOf(axis, k) * (far - near)
      values[axis.part] = between(low[axis.part] as number, high[axis.part] as number, t)
    })
    shareInto(demand, values, out, SHARE * (from + k))
  }
}

/** Even steps by ratio where there is one; a part that may be absent goes in even steps. */
const between = (low: number, high: number, t: number): number =>
  low > 0 ? low * (high / low) ** t : low + t * (high - low)

/**
 * How far a smooth curve can bulge beyond its points: an eighth of the second difference for a parabola, taken twice over;
 * where only two points stand, a tenth of their distance.
 */
function slackOf({ count, axes }: Grid, out: Float64Array, from: number, of: number): number {
  let most = 0
  for (const { steps, stride } of axes) {
    for (let k = 0; k < count; k++) {
      const place = Math.floor(k / stride) % steps
      if (place + 1 >= steps) continue
      const at = SHARE * (from + k) + of
      const next = at + SHARE * stride
      const dRe = (out[next] as number) - (out[at] as number)
      const dIm = (out[next + 1] as number) - (out[at + 1] as number)
      if (steps === CORNERS) most = Math.max(most, Math.hypot(dRe, dIm) / 10)
      else if (place > 0) {
        const back = at - SHARE * stride
        const bRe = (out[at] as number) - (out[back] as number)
        const bIm = (out[at + 1] as number) - (out[back + 1] as number)
        most = Math.max(most, Math.hypot(dRe - bRe, dIm - bIm) / 4)
      }
    }
  }
  return most
}
