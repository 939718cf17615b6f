/**
 * The worst of a surge over its box of tolerances. Corners first, then places where a steady sine builds up most, then a
 * search on from the worst in ever smaller steps; the peak may lie inside the box. Each place is run over time.
 */
import type { Progress } from '../types.ts'
import { sineGain } from './ac.ts'
import { type Axis, type AxisKey, alongAxis, cornersOf, type Place, setupAt, shareOf } from './box.ts'
import { variantsOf } from './part.ts'
import { within } from './progress.ts'
import { type RunFigures, type RunQuestion, runOnce } from './runs.ts'
import { circuitOf, type SurgeSetup } from './setup.ts'
import { contendersOf, type Metric, metricOf, type Way } from './ways.ts'

/** Where the worst was found: values as the surge met them. */
export type WorstAt = { readonly place: Place; readonly isCorner: boolean }

export type Found = { readonly value: number; readonly at: WorstAt; readonly way: Way }

export type WorstFigures = {
  readonly load: Found
  readonly capacitor: Found | undefined
  readonly usedFrac: Found | undefined
  readonly connector: Found
  /** every run was followed to its end */
  readonly isWhole: boolean
}

const METRICS: readonly Metric[] = ['load', 'capacitor', 'usedFrac', 'connector']

/** Coarse: a search needs no fourth digit; what it finds is run again as finely as the answer. */
const COARSE = { bend: 2e-2 } as const
/** A ring builds up and is over long before its tail is. */
const RING_CYCLES = 20
/** Places of a steady sine tried for each run of it. */
const SINE_TRIES = 240
const SINE_PER_SLICE = 60
/** Corners run at most; of more the sine picks. */
const MOST_CORNERS = 16
const MOST_RING_CORNERS = 8
/** Below this share of its limit a value is far from deciding: corners are enough. */
const NEAR = 0.6
/** Steps of the search from the worst place, as shares of an axis. */
const STEPS: readonly number[] = [0.25, 0.1, 0.04]

export type WorstQuestion = {
  readonly setup: SurgeSetup
  readonly axes: readonly Axis[]
  readonly ways: readonly Way[]
  readonly rating: RunQuestion['rating']
  /** what each must stay below, where that is known: a search on from the corners pays only near it */
  readonly limits: Readonly<Partial<Record<Metric, number>>>
  /** the runs with the parts as entered, by way */
  readonly asEntered: readonly RunFigures[]
}

/** The worst load peak, capacitor peak, connector peak and rating used over the box. */
export function* worstOf(q: WorstQuestion): Generator<Progress, WorstFigures> {
  const search = new Search(q)
  if (q.axes.length === 0) return search.worst()
  const metrics = METRICS.filter((metric) => metric !== 'connector' && search.has(metric))
  const isNear = (metric: Metric): boolean => {
    const [limit, { value }] = [q.limits[metric], search.found(metric)]
    return limit !== undefined && value > NEAR * limit && value <= limit
  }
  const places = yield* within(startsOf(q, search), 0, 0.1)
  const contenders = contendersOf(q, metrics)
  for (const [i, place] of places.entries())
    yield* within(
      search.tryWays(place, contenders),
      0.1 + (0.4 * i) / places.length,
      0.1 + (0.4 * (i + 1)) / places.length,
    )
  for (const [i, metric] of metrics.entries()) {
    const [from, to] = [0.5 + (0.4 * i) / metrics.length, 0.5 + (0.4 * (i + 1)) / metrics.length]
    if (isNear(metric)) yield* within(climb(q, search, metric), from, to)
  }
  yield* within(search.confirm(metrics), 0.9, 1)
  return search.worst()
}

/** Holds the worst of each metric, and runs places. */
class Search {
  private readonly q: WorstQuestion
  private readonly best = new Map<Metric, Found>()
  private isWhole = true

  constructor(q: WorstQuestion) {
    this.q = q
    for (const [i, run] of q.asEntered.entries()) this.note(run, {}, q.ways[i] ?? { changed: {}, variant: 0 })
  }

  has = (metric: Metric): boolean => this.best.has(metric)
  found(metric: Metric): Found {
    const found = this.best.get(metric)
    if (!found) throw new RangeError(`nothing was run for ${metric}`)
    return found
  }

  private note(run: RunFigures, place: Place, way: Way): void {
    this.isWhole &&= run.trace.isWhole
    for (const metric of METRICS) {
      const value = metricOf(run, metric)
      const held = this.best.get(metric)
      if (value === undefined || (held && held.value >= value)) continue
      this.best.set(metric, { value, at: { place, isCorner: isCorner(this.q.axes, place) }, way })
    }
  }

  /** Runs a place each of these ways, for the metrics asked of each. */
  *tryWays(place: Place, ways: ReadonlyMap<Way, readonly Metric[]>): Generator<Progress, void> {
    let i = 0
    for (const [way, asked] of ways) {
      yield* within(this.run(place, way, asked, false), i / ways.size, (i + 1) / ways.size)
      i++
    }
  }

  /** Runs a place the way in which a metric is worst so far, and gives it. */
  *tryWorst(place: Place, metric: Metric): Generator<Progress, number> {
    const run = yield* this.run(place, this.found(metric).way, [metric], false)
    return metricOf(run, metric) ?? 0
  }

  private *run(place: Place, way: Way, asked: readonly Metric[], fine: boolean): Generator<Progress, RunFigures> {
    const setup = setupAt(this.q.setup, place)
    const { shape, ring } = setup.pulse
    const suppressor = variantsOf(setup.met)[way.variant] ?? variantsOf(setup.met)[0]
    const run = yield* runOnce({
      circuit: circuitOf(setup, suppressor, way.changed),
      shape: fine || !ring ? shape : { ...shape, endSec: Math.min(shape.endSec, RING_CYCLES / ring.hz) },
      // heat costs more than the run itself
      rating: asked.includes('usedFrac') ? this.q.rating : undefined,
      ...(fine ? {} : { options: COARSE }),
    })
    this.note(run, place, way)
    return run
  }

  /** The worst place of each metric again, as finely as the answer. */
  *confirm(metrics: readonly Metric[]): Generator<Progress, void> {
    for (const [i, metric] of metrics.entries()) {
      const { at, way } = this.found(metric)
      if (Object.keys(at.place).length === 0) continue
      yield* within(this.run(at.place, way, [metric], true), i / metrics.length, (i + 1) / metrics.length)
    }
  }

  worst(): WorstFigures {
    return {
      load: this.found('load'),
      connector: this.found('connector'),
      capacitor: this.best.get('capacitor'),
      usedFrac: this.best.get('usedFrac'),
      isWhole: this.isWhole,
    }
  }
}

const isCorner = (axes: readonly Axis[], place: Place): boolean =>
  axes.every(({ key, low, high }) => place[key] === low || place[key] === high)

/** Corners, all or those the sine finds worst, the middle, and the places where a steady sine builds up most. */
function* startsOf(q: WorstQuestion, search: Search): Generator<Progress, readonly Place[]> {
  const corners = cornersOf(q.axes)
  const middle = placeOf(
    q.axes,
    q.axes.map(() => 0.5),
  )
  if (!q.setup.pulse.ring) return [...rankCorners(q, search, corners), middle]
  const peaks: Place[] = []
  for (const conducts of [false, true])
    peaks.push(...(yield* within(sinePeaks(q, search, conducts), conducts ? 0.5 : 0, conducts ? 1 : 0.5)))
  return [...rankCorners(q, search, corners), middle, ...peaks]
}

function rankCorners(q: WorstQuestion, search: Search, corners: readonly Place[]): readonly Place[] {
  const most = q.setup.pulse.ring ? MOST_RING_CORNERS : MOST_CORNERS
  if (corners.length <= most) return corners
  const gain = (place: Place) => Math.max(sineAt(q, search, place, false), sineAt(q, search, place, true))
  return [...corners]
    .map((place) => ({ place, gain: gain(place) }))
    .sort((a, b) => b.gain - a.gain)
    .slice(0, most)
    .map(({ place }) => place)
}

/** Volts per volt entered of a steady sine at a place, at its ring frequency or at the rise of the pulse. */
function sineAt(q: WorstQuestion, search: Search, place: Place, conducts: boolean): number {
  const setup = setupAt(q.setup, place)
  const way = search.found('load').way
  const suppressor = variantsOf(setup.met)[way.variant]
  const circuit = circuitOf(setup, suppressor, way.changed)
  const hz = setup.pulse.ring?.hz ?? 1 / (2 * Math.PI * setup.pulse.shape.riseSec)
  return sineGain(circuit, hz, conducts) * (setup.pulse.openCircuitV / q.setup.pulse.openCircuitV)
}

/** Best of spread tries, then each climbed along its axes; at most two for each state of the part. */
function* sinePeaks(q: WorstQuestion, search: Search, conducts: boolean): Generator<Progress, readonly Place[]> {
  const tried: { shares: number[]; gain: number }[] = []
  const gainOf = (shares: readonly number[]) => sineAt(q, search, placeOf(q.axes, shares), conducts)
  for (let i = 1; i <= SINE_TRIES; i++) {
    const shares = q.axes.map((_, axis) => spreadShare(i, axis))
    tried.push({ shares, gain: gainOf(shares) })
    if (i % SINE_PER_SLICE === 0) yield { doneFrac: (0.6 * i) / SINE_TRIES }
  }
  tried.sort((a, b) => b.gain - a.gain)
  const kept: Place[] = []
  for (const [i, start] of tried.slice(0, 2).entries()) {
    let { shares, gain } = start
    for (const step of [0.1, 0.03, 0.01, 0.003, 0.001]) {
      for (let axis = 0; axis < shares.length; axis++)
        for (const by of [-step, step]) {
          for (let moves = 0; moves < 6; moves++) {
            const next = shares.map((share, k) => (k === axis ? Math.min(1, Math.max(0, share + by)) : share))
            const found = gainOf(next)
            if (found <= gain * (1 + 1e-9)) break
            ;[shares, gain] = [next, found]
          }
        }
      yield { doneFrac: 0.6 + 0.2 * (i + 1) }
    }
    kept.push(placeOf(q.axes, shares))
  }
  return kept
}

const PRIMES: readonly number[] = [2, 3, 5, 7, 11, 13]

/** Evenly spread shares without chance: the radical inverse of i in a base of its own for each axis. */
function spreadShare(i: number, axis: number): number {
  const base = PRIMES[axis] ?? 17
  let [share, unit, rest] = [0, 1 / base, i]
  while (rest > 0) {
    share += unit * (rest % base)
    rest = Math.floor(rest / base)
    unit /= base
  }
  return share
}

const placeOf = (axes: readonly Axis[], shares: readonly number[]): Place =>
  Object.fromEntries(axes.map((axis, i) => [axis.key, alongAxis(axis, shares[i] ?? 0)])) as Place

/** From the worst place so far along each axis, in ever smaller steps, as long as it gets worse. */
function* climb(q: WorstQuestion, search: Search, metric: Metric): Generator<Progress, void> {
  for (const [s, step] of STEPS.entries()) {
    for (const [a, axis] of q.axes.entries()) {
      for (const by of [-step, step]) {
        for (let moves = 0; moves < 3; moves++) {
          const from = search.found(metric)
          const place = movedBy(q.axes, from.at.place, axis.key, by)
          if (!place) break
          const value = yield* search.tryWorst(place, metric)
          if (value < from.value) break
        }
      }
      yield { doneFrac: (s + (a + 1) / q.axes.length) / STEPS.length }
    }
  }
}

/** A place moved along one axis; undefined where it is at that end already. */
function movedBy(axes: readonly Axis[], place: Place, key: AxisKey, by: number): Place | undefined {
  const moving = axes.find((axis) => axis.key === key)
  if (!moving) return undefined
  const whole = Object.fromEntries(axes.map((axis) => [axis.key, place[axis.key] ?? axis.entered])) as Place
  const share = shareOf(moving, whole[key] ?? moving.entered)
  const next = Math.min(1, Math.max(0, share + by))
  if (Math.abs(next - share) < 1e-6) return undefined
  return { ...whole, [key]: alongAxis(moving, next) }
}
