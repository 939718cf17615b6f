/**
 * From the 10/1000 µs rating of a suppressor to another pulse. Heat spreading into a thick slab: the temperature rise
 * goes as ∫ p(τ)/√(t − τ) dτ, and the part stands any pulse whose rise stays below that of its rated pulse. Powers in
 * W, times in s. Valid from about 0.1 µs to 10 ms; shorter pulses are overstated (safe side). Source: Wunsch and Bell
 * for the regime, the integral derived.
 */
import { RATING_PULSE, type Repeats } from '../../reference/waveforms.ts'
import { type Shape, type ShapeTimes, shapeOf } from './shape.ts'

/** Longest time to half value in s that a pulse rating is carried over to: published curves are commonly drawn to there. Practice. */
export const RATED_UP_TO_SEC = 10e-3

/** Square pulse that heats as the 10/1000 µs pulse of the same peak does, in s. */
export const RATING_SQUARE_SEC = 424.4385e-6

/** ∫ of a square pulse at its end: 2·√w. */
const RATING_RISE = 2 * Math.sqrt(RATING_SQUARE_SEC)

/** Most cells a power curve is cut into; the sum over all pairs stays a few milliseconds. */
const CELLS = 450

type Cells = { readonly edges: Float64Array; readonly meanW: Float64Array }

/** Cuts a curve into cells of equal sample count that keep its energy; zero power at the end is left away. */
function cellsOf(sec: Float64Array, watts: Float64Array): Cells {
  let last = watts.length - 1
  while (last > 1 && (watts[last - 1] ?? 0) <= 0) last -= 1
  const each = Math.max(1, Math.ceil(last / CELLS))
  const count = Math.ceil(last / each)
  const edges = new Float64Array(count + 1)
  const meanW = new Float64Array(count)
  edges[0] = sec[0] ?? 0
  for (let cell = 0; cell < count; cell++) {
    let energy = 0
    const to = Math.min(last, (cell + 1) * each)
    for (let i = cell * each; i < to; i++)
      energy += (((sec[i + 1] ?? 0) - (sec[i] ?? 0)) * ((watts[i] ?? 0) + (watts[i + 1] ?? 0))) / 2
    edges[cell + 1] = sec[to] ?? 0
    const width = (edges[cell + 1] ?? 0) - (edges[cell] ?? 0)
    meanW[cell] = width > 0 ? energy / width : 0
  }
  return { edges, meanW }
}

/** Largest ∫ p(τ)/√(t − τ) dτ over time, in W·√s. Each cell of constant power adds 2P·(√(t − a) − √(t − b)). */
export function heatPeak(sec: Float64Array, watts: Float64Array): number {
  if (watts.length < 2) return 0
  const { edges, meanW } = cellsOf(sec, watts)
  let most = 0
  for (let j = 1; j < edges.length; j++) {
    const now = edges[j] ?? 0
    let rise = 0
    let before = Math.sqrt(now - (edges[0] ?? 0))
    for (let i = 0; i < j; i++) {
      const after = Math.sqrt(now - (edges[i + 1] ?? 0))
      rise += (meanW[i] ?? 0) * (before - after)
      before = after
    }
    most = Math.max(most, 2 * rise)
  }
  return most
}

/** How many times the 10/1000 µs power a pulse of this shape may peak at: the diffusion factor. 1 for 10/1000 itself. */
export function diffusionFactor(shape: Shape): number {
  const sec = new Float64Array(4 * CELLS + 1)
  const watts = new Float64Array(sec.length)
  for (let i = 0; i < sec.length; i++) {
    // closer together at the front, where the heat peaks
    sec[i] = shape.endSec * (i / (sec.length - 1)) ** 2
    watts[i] = Math.abs(shape.at(sec[i] ?? 0))
  }
  return RATING_RISE / heatPeak(sec, watts)
}

/** The same for a square pulse: √(424.4 µs/width). */
export const squareFactor = (widthSec: number): number => Math.sqrt(RATING_SQUARE_SEC / widthSec)

/** The square-root rule of data sheets: √(1000 µs/T2), T2 the time to half value. */
export const squareRootFactor = (halfSec: number): number => Math.sqrt(1e-3 / halfSec)

/** The smaller of both factors; a ring has no time to half value, so the diffusion factor stands alone. */
export function shapeFactor(shape: Shape, times: ShapeTimes | undefined): number {
  const diffusion = diffusionFactor(shape)
  return times === undefined ? diffusion : Math.min(diffusion, squareRootFactor(times.halfSec))
}

/** The rated pulse itself, for tests and drawings. */
export const ratingShape = (): Shape => shapeOf(RATING_PULSE)

/**
 * Share of the rating left at a temperature: straight from 1 at 25 °C to 0 at `zeroC`; 1 below 25 °C. `zeroC` > 25.
 * 60 % at 150 °C is `zeroC` = 337.5.
 */
export const deratedShare = ({ ambientC, zeroC }: { ambientC: number; zeroC: number }): number =>
  Math.min(1, Math.max(0, (zeroC - ambientC) / (zeroC - 25)))

/** Peak heat of one pulse in W·√s, and its energy. */
export type PulseHeat = { readonly heat: number; readonly energyJ: number }

/** Sum of 1/√(age) over every pulse before the last, the closest trains first: what is left of each at the end, 1/√s. */
export function spreadOfTrain(gaps: Repeats['gaps']): { readonly first: number; readonly later: number } {
  let ages: number[] = [0]
  for (const { count, spacingSec } of gaps) {
    const train = ages
    ages = []
    for (let k = 0; k < count; k++) for (const age of train) ages.push(age + k * spacingSec)
  }
  let [sum, oldest, at] = [0, 0, -1]
  ages.forEach((age, i) => {
    if (age > 0) sum += 1 / Math.sqrt(age)
    if (age > oldest) [oldest, at] = [age, i]
  })
  const first = at < 0 ? 0 : 1 / Math.sqrt(oldest)
  return { first, later: sum - first }
}

/**
 * Heat of a train of pulses against a single one, ≥ 1. Between pulses the heat spreads as E/√t; nothing is removed at
 * the leads. An estimate. `first`: the strongest pulse, `later`: each one after it.
 */
export function repeatFactor(first: PulseHeat, later: PulseHeat, { gaps }: Repeats): number {
  if (!(first.heat > 0)) return 1
  const left = spreadOfTrain(gaps)
  const last = later.heat + first.energyJ * left.first + later.energyJ * left.later
  return Math.max(1, last / first.heat)
}

export type Used = {
  /** by the power the suppressor really sees */
  readonly byPowerFrac: number
  /** by its peak power and the factor of the nominal shape */
  readonly byShapeFrac: number
  readonly heat: number
}

/**
 * Share of the 25 °C single-shot rating one pulse uses, both ways; 1 = all of it. The factor acts on power, not on
 * current. `factor`: of the waveform's nominal shape.
 */
export function usedByPulse(given: {
  readonly sec: Float64Array
  readonly watts: Float64Array
  readonly peakW: number
  readonly ratedW: number
  readonly factor: number
}): Used {
  const heat = heatPeak(given.sec, given.watts)
  return {
    heat,
    byPowerFrac: heat / (given.ratedW * RATING_RISE),
    byShapeFrac: given.peakW / (given.ratedW * given.factor),
  }
}
