/** Shapes of surge waveforms as functions of time, with the moments a solver and a reader need. */
import type { ShapeSpec } from '../../reference/waveforms.ts'

/** Frequency and decay of a damped sine; ignored by every other form. `q` ≥ 0.5. */
export type Ring = { readonly hz: number; readonly q: number }

export type Shape = {
  /** value at a time ≥ 0 s, peak 1 */
  readonly at: (sec: number) => number
  /** corners the solver must not step across */
  readonly corners: readonly number[]
  /** after this the shape stays below 1/1000 of its peak */
  readonly endSec: number
  /** time scale of the rise, for the first step */
  readonly riseSec: number
}

const SMALL = 1e-3

/**
 * Shape of a row, peak 1 to within 0.05 %. Times in s. `ring` is needed for a damped sine only.
 * Damped sine: N·sin(2π·f·t)·e^(−π·f·t/Q), N = 1/(sin θ·e^(−θ/2Q)), θ = atan 2Q.
 */
export function shapeOf(spec: ShapeSpec, ring: Ring = { hz: 1e6, q: 15 }): Shape {
  switch (spec.form) {
    case 'double-exponential':
      return doubleExponential(spec)
    case 'front-tail':
      return frontTail(spec)
    case 'cubic':
      return cubic(spec)
    case 'gamma':
      return gamma(spec)
    case 'damped-sine':
      return dampedSine(ring)
    case 'steep-sum':
      return steepSum(spec)
    case 'lines':
      return lines(spec)
  }
}

type Of<F extends ShapeSpec['form']> = Extract<ShapeSpec, { form: F }>

function doubleExponential({ k, aPerSec, bPerSec }: Of<'double-exponential'>): Shape {
  return {
    at: (t) => k * (Math.exp(-aPerSec * t) - Math.exp(-bPerSec * t)),
    corners: [],
    endSec: Math.log(k / SMALL) / aPerSec,
    riseSec: 1 / bPerSec,
  }
}

function frontTail({ k, frontSec, tailSec }: Of<'front-tail'>): Shape {
  return {
    at: (t) => -k * Math.expm1(-t / frontSec) * Math.exp(-t / tailSec),
    corners: [],
    endSec: tailSec * Math.log(k / SMALL),
    riseSec: frontSec,
  }
}

function cubic({ k, unitSec, tailSec }: Of<'cubic'>): Shape {
  const at = (t: number) => k * (t / unitSec) ** 3 * Math.exp(-t / tailSec)
  return { at, corners: [], endSec: endOf(at, 3 * tailSec), riseSec: tailSec }
}

function gamma({ peakSec, power }: Of<'gamma'>): Shape {
  const at = (t: number) => ((t / peakSec) * Math.exp(1 - t / peakSec)) ** power
  return { at, corners: [], endSec: endOf(at, peakSec), riseSec: peakSec / Math.max(1, power) }
}

function dampedSine({ hz, q }: Ring): Shape {
  const omega = 2 * Math.PI * hz
  const decay = omega / (2 * q)
  const angle = Math.atan(2 * q)
  const norm = 1 / (Math.sin(angle) * Math.exp(-angle / (2 * q)))
  return {
    at: (t) => norm * Math.sin(omega * t) * Math.exp(-decay * t),
    corners: [],
    endSec: Math.log(norm / SMALL) / decay,
    riseSec: 1 / (4 * hz),
  }
}

function steepSum({ power, terms }: Of<'steep-sum'>): Shape {
  const at = (t: number) => {
    let sum = 0
    for (const { weight, riseSec, tailSec } of terms) {
      const x = (t / riseSec) ** power
      sum += ((weight * x) / (1 + x)) * Math.exp(-t / tailSec)
    }
    return sum
  }
  const longest = Math.max(...terms.map((term) => term.tailSec))
  return { at, corners: [], endSec: endOf(at, longest), riseSec: Math.min(...terms.map((term) => term.riseSec)) }
}

function lines({ points }: Of<'lines'>): Shape {
  const at = (t: number) => {
    for (let i = 1; i < points.length; i++) {
      const [t1, v1] = points[i] ?? [0, 0]
      const [t0, v0] = points[i - 1] ?? [0, 0]
      if (t <= t1) return t <= t0 ? v0 : v0 + ((v1 - v0) * (t - t0)) / (t1 - t0)
    }
    return 0
  }
  const corners = points.map(([sec]) => sec).filter((sec) => sec > 0)
  return { at, corners, endSec: corners.at(-1) ?? 0, riseSec: corners[0] ?? 0 }
}

/** Doubles from a time on the tail until the shape is small, then halves the span. */
function endOf(at: (sec: number) => number, fromSec: number): number {
  let high = fromSec
  while (at(high) > SMALL) high *= 2
  return crossing(at, SMALL, high / 2, high)
}

/** Where a shape that falls through `level` between two times crosses it. */
function crossing(at: (sec: number) => number, level: number, fromSec: number, toSec: number): number {
  let [low, high] = [fromSec, toSec]
  const falling = at(low) > at(high)
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (at(middle) > level === falling) low = middle
    else high = middle
  }
  return (low + high) / 2
}

export type ShapeTimes = { readonly peak: number; readonly peakSec: number; readonly halfSec: number }

/** Peak, time to peak and time from zero to half value on the tail, found on the shape itself. Times in s. */
export function shapeTimes(shape: Shape): ShapeTimes {
  const peakSec = peakTime(shape)
  const peak = shape.at(peakSec)
  return { peak, peakSec, halfSec: fallsThrough(shape, peakSec, peak / 2) }
}

const SCAN = 4000

function peakTime({ at, endSec, riseSec }: Shape): number {
  // spaced by ratio, so that a rise a thousand times shorter than the tail is still seen
  const first = Math.min(riseSec, endSec) / 100
  const ratio = (endSec / first) ** (1 / SCAN)
  let best = first
  let highest = at(best)
  for (let t = first * ratio; t < endSec; t *= ratio) {
    const value = at(t)
    if (value > highest) [best, highest] = [t, value]
  }
  let [low, high] = [best / ratio, best * ratio]
  for (let i = 0; i < 80; i++) {
    const a = low + (high - low) / 3
    const b = high - (high - low) / 3
    if (at(a) < at(b)) low = a
    else high = b
  }
  return (low + high) / 2
}

/** Time on the tail at which the shape falls through a value below its peak, in s. */
export const tailTime = (shape: Shape, value: number): number => fallsThrough(shape, peakTime(shape), value)

const fallsThrough = (shape: Shape, peakSec: number, value: number): number =>
  crossing(shape.at, value, peakSec, firstBelow(shape, peakSec, value))

/** Time on the rise at which the shape reaches a value below its peak, in s. */
export function frontTime(shape: Shape, value: number): number {
  return crossing(shape.at, value, 0, peakTime(shape))
}

function firstBelow(shape: Shape, peakSec: number, value: number): number {
  let t = peakSec
  const step = (shape.endSec - t) / SCAN
  while (t < shape.endSec && shape.at(t) > value) t += step
  return t
}
