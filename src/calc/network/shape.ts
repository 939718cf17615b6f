/** What a loss curve looks like: its corners, its slope, its worst gain. All found numerically on the solver's curve. */
import { logGrid, lossDb, sweepLossInto } from './chain.ts'
import type { FilterCircuit, NoiseLoad, NoiseSource } from './circuit.ts'

/** 10·log10(2): the half-power step. */
export const HALF_POWER_DB = 10 * Math.log10(2)
/** Corners are read between these; the reference loss is taken at the lower end. */
export const CORNER_FROM_HZ = 0.1
export const CORNER_TO_HZ = 1e9
/** Resonant gain is searched between these. */
export const GAIN_FROM_HZ = 10
export const GAIN_TO_HZ = 1e10
/** Gain below this is rounding, not resonance. */
const GAIN_FLOOR_DB = 1e-3
const POINTS_PER_DECADE = 160

export type Ends = { readonly source: NoiseSource; readonly load: NoiseLoad }

export type Corners = {
  /** loss first 3.01 dB above its low-frequency value: the signal starts to suffer */
  readonly firstHz: number | undefined
  /** lowest frequency from which it stays above that up to CORNER_TO_HZ */
  readonly lastingHz: number | undefined
}

type Curve = (frequencyHz: number) => number

/** Both −3 dB corners, relative to the loss at CORNER_FROM_HZ. Undefined where the curve never gets there or does not stay. */
export function findCorners(circuit: FilterCircuit, ends: Ends): Corners {
  const { hz, y } = sampled(circuit, ends, CORNER_FROM_HZ, CORNER_TO_HZ)
  const reference = y[0] as number
  const above: Curve = (f) => lossDb(circuit, ends.source, ends.load, f) - reference - HALF_POWER_DB
  const points = withExtremes(hz, y, above, reference + HALF_POWER_DB)
  let firstHz: number | undefined
  let lastingHz: number | undefined
  for (let i = 1; i < points.length; i++) {
    const before = points[i - 1] as Point
    const after = points[i] as Point
    if (before.y < 0 && after.y >= 0) {
      const crossing = bisect(above, before.hz, after.hz)
      firstHz ??= crossing
      lastingHz = crossing
    } else if (before.y >= 0 && after.y < 0) {
      lastingHz = undefined
    }
  }
  return { firstHz, lastingHz }
}

/**
 * One passive element between resistances takes from the signal at every frequency: |1 + Y·R| ≥ 1 and |1 + Z/R| ≥ 1, since
 * Y and Z have no negative part.
 */
const cannotAmplify = ({ topology, choke }: FilterCircuit, ends: Ends): boolean =>
  (topology === 'C' || topology === 'L') && choke === undefined && isResistive(ends)

const isResistive = ({ source, load }: Ends): boolean =>
  source.seriesH === 0 && !source.shuntF && load.parallelF === 0 && load.parallelH === Number.POSITIVE_INFINITY

/**
 * The most that anything passive can lift a level by between two resistances: it can hand over the power that is available,
 * Vs²/(4·Rs), in place of what the load took alone: 10·log10((Rs + Rl)²/(4·Rs·Rl)) dB. Infinite where an end is reactive.
 */
export function mostGainDb(ends: Ends): number {
  if (!isResistive(ends)) return Number.POSITIVE_INFINITY
  const [sourceOhm, loadOhm] = [ends.source.ohm, ends.load.ohm]
  return 10 * Math.log10((sourceOhm + loadOhm) ** 2 / (4 * sourceOhm * loadOhm))
}

/**
 * The deepest resonant gain (negative loss) between GAIN_FROM_HZ and GAIN_TO_HZ, as a positive figure; undefined if none.
 * One that is felt only within less than the step of the search may go unseen: 1.4 %, or 5.9 % by 40 points a decade.
 */
export function worstGain(
  circuit: FilterCircuit,
  ends: Ends,
  perDecade = POINTS_PER_DECADE,
): { gainDb: number; atHz: number } | undefined {
  if (cannotAmplify(circuit, ends)) return undefined
  const { hz, y } = sampled(circuit, ends, GAIN_FROM_HZ, GAIN_TO_HZ, perDecade)
  let at = 0
  for (let i = 1; i < y.length; i++) if ((y[i] as number) < (y[at] as number)) at = i
  const curve: Curve = (f) => lossDb(circuit, ends.source, ends.load, f)
  const low = hz[Math.max(0, at - 1)] as number
  const high = hz[Math.min(hz.length - 1, at + 1)] as number
  const atHz = refine(curve, low, high)
  const gainDb = -Math.min(curve(atHz), y[at] as number)
  return gainDb > GAIN_FLOOR_DB ? { gainDb, atHz } : undefined
}

/**
 * The deepest of it between one of several ends, where it is more than `fromDb`, and which these are. What cannot lift the
 * level by more than was found is not searched.
 */
export function worstGainOver(
  circuit: FilterCircuit,
  all: readonly Ends[],
  fromDb = 0,
  perDecade = POINTS_PER_DECADE,
): { readonly gainDb: number; readonly atHz: number; readonly ends: Ends } | undefined {
  let worst: ReturnType<typeof worstGainOver>
  for (const ends of all.toSorted((a, b) => mostGainDb(b) - mostGainDb(a))) {
    const beatenDb = worst?.gainDb ?? fromDb
    const found = mostGainDb(ends) > beatenDb ? worstGain(circuit, ends, perDecade) : undefined
    if (found !== undefined && found.gainDb > beatenDb) worst = { ...found, ends }
  }
  return worst
}

/** dIL/dlog10(f) at one frequency, by a central difference over 1/500 decade. */
export function localSlopeDbPerDecade(circuit: FilterCircuit, ends: Ends, frequencyHz: number): number {
  const half = 1e-3
  const up = lossDb(circuit, ends.source, ends.load, frequencyHz * 10 ** half)
  const down = lossDb(circuit, ends.source, ends.load, frequencyHz * 10 ** -half)
  return (up - down) / (2 * half)
}

/** Dips (loss falls by at least `byDb` and recovers or stays down) after the first corner, lowest loss of each. */
export function dipsAfter(
  circuit: FilterCircuit,
  ends: Ends,
  fromHz: number,
  byDb: number,
): readonly { hz: number; db: number }[] {
  if (!(fromHz < CORNER_TO_HZ)) return []
  const { hz, y } = sampled(circuit, ends, fromHz, CORNER_TO_HZ)
  const dips: { hz: number; db: number }[] = []
  let peak = y[0] as number
  let low = peak
  let lowHz = hz[0] as number
  for (let i = 1; i < y.length; i++) {
    const value = y[i] as number
    if (value < low) {
      low = value
      lowHz = hz[i] as number
    }
    const recovered = value > low + byDb || i === y.length - 1
    if (peak - low >= byDb && recovered) {
      dips.push({ hz: lowHz, db: low })
      peak = value
      low = value
    } else if (value > peak) {
      peak = value
      low = value
    }
  }
  return dips
}

type Point = { readonly hz: number; readonly y: number }

function sampled(circuit: FilterCircuit, ends: Ends, fromHz: number, toHz: number, perDecade = POINTS_PER_DECADE) {
  const count = Math.max(3, Math.round(Math.log10(toHz / fromHz) * perDecade) + 1)
  const hz = logGrid(fromHz, toHz, count)
  const y = new Float64Array(count)
  sweepLossInto(circuit, ends.source, ends.load, hz, y)
  return { hz, y }
}

/** Grid points plus each refined local extreme, so that a crossing between two samples is not stepped over. */
function withExtremes(hz: Float64Array, y: Float64Array, curve: Curve, level: number): Point[] {
  const points: Point[] = []
  for (let i = 0; i < hz.length; i++) {
    points.push({ hz: hz[i] as number, y: (y[i] as number) - level })
    if (i === 0 || i === hz.length - 1) continue
    const before = y[i - 1] as number
    const here = y[i] as number
    const after = y[i + 1] as number
    const isLow = here < before && here <= after && here > level
    const isHigh = here > before && here >= after && here < level
    if (!isLow && !isHigh) continue
    const at = refine(isLow ? curve : (f) => -curve(f), hz[i - 1] as number, hz[i + 1] as number)
    points.push({ hz: at, y: curve(at) })
  }
  return points.sort((p, q) => p.hz - q.hz)
}

/** Zero of `curve` between two frequencies of opposite sign, to about 1e-13 relative. */
function bisect(curve: Curve, lowHz: number, highHz: number): number {
  let low = Math.log(lowHz)
  let high = Math.log(highHz)
  const lowIsNegative = curve(lowHz) < 0
  for (let k = 0; k < 50; k++) {
    const mid = (low + high) / 2
    if (curve(Math.exp(mid)) < 0 === lowIsNegative) low = mid
    else high = mid
  }
  return Math.exp((low + high) / 2)
}

/** Minimum of `curve` between two frequencies by golden section in log frequency. */
function refine(curve: Curve, lowHz: number, highHz: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2
  let low = Math.log(lowHz)
  let high = Math.log(highHz)
  let p = high - ratio * (high - low)
  let q = low + ratio * (high - low)
  let yp = curve(Math.exp(p))
  let yq = curve(Math.exp(q))
  for (let k = 0; k < 48; k++) {
    if (yp < yq) {
      high = q
      q = p
      yq = yp
      p = high - ratio * (high - low)
      yp = curve(Math.exp(p))
    } else {
      low = p
      p = q
      yp = yq
      q = low + ratio * (high - low)
      yq = curve(Math.exp(q))
    }
  }
  return Math.exp((low + high) / 2)
}
