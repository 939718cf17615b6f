/** What the solver saw over time, and the figures read from it. Times in s, volts, amperes. */

export const CHANNELS = ['sec', 'connectorV', 'loadV', 'clampV', 'terminalV', 'clampA', 'middleV'] as const
export type Channel = (typeof CHANNELS)[number]

export type Trace = { readonly count: number; readonly isWhole: boolean } & Readonly<Record<Channel, Float64Array>>

const FIRST_ROOM = 512
const WIDTH = CHANNELS.length

/**
 * Sample behind sample in one array, which grows by doubling; `drop` takes back the newest samples when a step is refused.
 * A sample is handed over and laid down in the order of the channels; an array for each would be work to clear away.
 */
export class Recorder {
  private samples = new Float64Array(FIRST_ROOM * WIDTH)
  count = 0

  push(
    sec: number,
    connectorV: number,
    loadV: number,
    clampV: number,
    terminalV: number,
    clampA: number,
    middleV: number,
  ): void {
    const from = this.count * WIDTH
    if (from === this.samples.length) {
      const grown = new Float64Array(2 * from)
      grown.set(this.samples)
      this.samples = grown
    }
    const { samples } = this
    samples[from] = sec
    samples[from + 1] = connectorV
    samples[from + 2] = loadV
    samples[from + 3] = clampV
    samples[from + 4] = terminalV
    samples[from + 5] = clampA
    samples[from + 6] = middleV
    this.count += 1
  }

  at(column: number, index: number): number {
    return this.samples[index * WIDTH + column] ?? 0
  }

  drop(to: number): void {
    this.count = to
  }

  /** The samples so far, channel by channel. */
  finish(isWhole: boolean): Trace {
    const { count, samples } = this
    const channel = (name: Channel): Float64Array => {
      const values = new Float64Array(count)
      const column = CHANNELS.indexOf(name)
      for (let i = 0; i < count; i++) values[i] = samples[i * WIDTH + column] ?? 0
      return values
    }
    return {
      count,
      isWhole,
      sec: channel('sec'),
      connectorV: channel('connectorV'),
      loadV: channel('loadV'),
      clampV: channel('clampV'),
      terminalV: channel('terminalV'),
      clampA: channel('clampA'),
      middleV: channel('middleV'),
    }
  }
}

export type Peak = { readonly value: number; readonly sec: number }

/** Largest magnitude of a channel and its time, by a parabola through the three samples around it. */
export function peakOf(sec: Float64Array, y: Float64Array): Peak {
  let at = 0
  for (let i = 1; i < y.length; i++) if (Math.abs(y[i] ?? 0) > Math.abs(y[at] ?? 0)) at = i
  const [t0 = 0, t1 = 0, t2 = 0] = [sec[at - 1], sec[at], sec[at + 1]]
  const [y0 = 0, y1 = 0, y2 = 0] = [y[at - 1], y[at], y[at + 1]]
  const flat: Peak = { value: Math.abs(y1), sec: t1 }
  if (at === 0 || at === y.length - 1 || t1 <= t0 || t2 <= t1) return flat
  const left = (y1 - y0) / (t1 - t0)
  const right = (y2 - y1) / (t2 - t1)
  const bend = (right - left) / (t2 - t0)
  if (bend * y1 >= 0) return flat
  const peakSec = (t0 + t1) / 2 - left / (2 * bend)
  if (peakSec < t0 || peakSec > t2) return flat
  const value = Math.abs(y0 + left * (peakSec - t0) + bend * (peakSec - t0) * (peakSec - t1))
  // a corner is no parabola: its own sample is the peak
  const rise = value - Math.abs(y1)
  return rise >= 0 && rise <= 0.01 * Math.abs(y1) ? { value, sec: peakSec } : flat
}

/** Neighbouring steps more unlike than this belong to different sides of a corner. */
const UNLIKE = 1e-3

/**
 * ∫ y dt over unequal steps: on each the mean of the two parabolas through its neighbours; across a corner of the
 * curve, which the solver marks by very short steps, the parabola of the same side alone.
 */
export function integral(sec: Float64Array, y: Float64Array): number {
  let sum = 0
  let before: number | undefined
  for (let i = 0; i + 1 < y.length; i++) {
    const step = (sec[i + 1] ?? 0) - (sec[i] ?? 0)
    const after = i + 2 < y.length ? bendAt(sec, y, i + 1) : undefined
    const bend = before === undefined ? (after ?? 0) : after === undefined ? before : (before + after) / 2
    sum += (step * ((y[i] ?? 0) + (y[i + 1] ?? 0))) / 2 - (step ** 3 * bend) / 6
    before = after
  }
  return sum
}

/** Second divided difference at a sample; undefined at a corner. */
function bendAt(sec: Float64Array, y: Float64Array, i: number): number | undefined {
  const t0 = sec[i - 1] ?? 0
  const t1 = sec[i] ?? 0
  const t2 = sec[i + 1] ?? 0
  if (Math.min(t1 - t0, t2 - t1) <= UNLIKE * Math.max(t1 - t0, t2 - t1)) return undefined
  const y1 = y[i] ?? 0
  return (((y[i + 1] ?? 0) - y1) / (t2 - t1) - (y1 - (y[i - 1] ?? 0)) / (t1 - t0)) / (t2 - t0)
}

export type Excess = {
  /** volt-seconds of |y| above the level */
  readonly voltSec: number
  /** last moment above it; 0 = never */
  readonly untilSec: number
  /** time above it in all */
  readonly forSec: number
  /** still above when the run ended */
  readonly isOpen: boolean
}

/** How long and how far |y| stands above a level, straight between samples. */
export function excessOver(sec: Float64Array, y: Float64Array, level: number): Excess {
  let [voltSec, untilSec, forSec] = [0, 0, 0]
  for (let i = 0; i + 1 < y.length; i++) {
    const t0 = sec[i] ?? 0
    const t1 = sec[i + 1] ?? 0
    const a = Math.abs(y[i] ?? 0) - level
    const b = Math.abs(y[i + 1] ?? 0) - level
    if (a <= 0 && b <= 0) continue
    const step = t1 - t0
    if (a > 0 && b > 0) {
      voltSec += (step * (a + b)) / 2
      forSec += step
      untilSec = t1
      continue
    }
    const part = (step * Math.max(a, b)) / Math.abs(b - a)
    voltSec += (part * Math.max(a, b)) / 2
    forSec += part
    untilSec = b > 0 ? t1 : t0 + part
  }
  const last = Math.abs(y[y.length - 1] ?? 0)
  return { voltSec, untilSec, forSec, isOpen: last > level }
}

/** Power of the suppressor junction over time, in W. */
export function powerOf(trace: Trace): Float64Array {
  return trace.clampV.map((v, i) => v * (trace.clampA[i] ?? 0))
}
