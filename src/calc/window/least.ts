/** The smallest capacitor from which every larger one also meets the need, with real parts and every corner of the inductor. */
import { lossDb } from '../network/chain.ts'
import { type FilterCircuit, NO_SERIES, NO_SHUNT, type NoiseLoad, type NoiseSource } from '../network/circuit.ts'
import type { Topology } from '../types.ts'

export type Need = { readonly hz: number; readonly db: number }

/** Everything that stands around the capacitor, in service values. */
export type Surroundings = {
  readonly topology: Topology
  readonly needs: readonly Need[]
  readonly sources: readonly NoiseSource[]
  readonly load: NoiseLoad
  readonly esrOhm: number
  readonly eslH: number
  readonly bondOhm: number
  readonly bondH: number
  /** least and most inductance */
  readonly inductancesH: readonly number[]
  /** fixed extra shunt capacitance at the load-side capacitor (2·Cx per leg in differential mode) */
  readonly extraF: number
}

/** What decides the margin at one capacitance. */
export type Margin = {
  readonly db: number
  readonly lossDb: number
  readonly need: Need
  readonly source: NoiseSource
  readonly inductanceH: number
}

export type Least =
  /** `holes`: capacitances between a first success and the least where the need is lost again */
  | {
      readonly is: 'found'
      readonly actualF: number
      readonly holes: readonly (readonly [number, number])[]
      readonly at: Margin
    }
  | { readonly is: 'none-needed' }
  /** no capacitor is large enough: the lead, the bond or the topology limits; `at` is the margin at the largest */
  | { readonly is: 'never'; readonly at: Margin }

const SMALLEST_F = 1e-15
const LARGEST_F = 1
/** a need met to within this is met: the solver rounds near 1e-13 dB */
const ROUNDING_DB = 1e-9
const POINTS_PER_DECADE = 32
/** log10 width to which a crossing is located: 1e-9 relative */
const CROSSING_LOG10 = 4e-10

/** The filter with capacitors of `capacitanceF` (service value) and the given inductance. */
export function circuitAt(around: Surroundings, capacitanceF: number, inductanceH: number): FilterCircuit {
  const part = { ...NO_SHUNT, esrOhm: around.esrOhm, eslH: around.eslH }
  const coil = { ...NO_SERIES, inductanceH }
  const isPi = around.topology === 'PI'
  return {
    topology: around.topology,
    shunt1: { ...part, capacitanceF: capacitanceF + (isPi ? 0 : around.extraF) },
    shunt2: { ...part, capacitanceF: capacitanceF + around.extraF },
    series1: coil,
    series2: coil,
    bondOhm: around.bondOhm,
    bondH: around.bondH,
  }
}

/** Lowest margin (loss − need) over all frequencies, source impedances and inductor corners. */
export function marginAt(around: Surroundings, capacitanceF: number): Margin {
  let worst: Margin | undefined
  for (const inductanceH of around.inductancesH) {
    const circuit = circuitAt(around, capacitanceF, inductanceH)
    for (const source of around.sources) {
      for (const need of around.needs) {
        const loss = lossDb(circuit, source, around.load, need.hz)
        if (!worst || loss - need.db < worst.db) worst = { db: loss - need.db, lossDb: loss, need, source, inductanceH }
      }
    }
  }
  if (!worst) throw new RangeError('needs at least one frequency, one source and one inductor corner')
  return worst
}

/**
 * Scans capacitance from 1 fF to 1 F (32 points a decade, local extremes refined) and keeps the highest crossing.
 * Valid for needs ≥ 0 dB. Farads are service values: divide by leastShare for the marked part.
 */
export function leastCapacitance(around: Surroundings): Least {
  const margin = (logF: number) => marginAt(around, 10 ** logF).db + ROUNDING_DB
  const passes = scan(margin, Math.log10(SMALLEST_F), Math.log10(LARGEST_F))
  const last = passes.at(-1)
  if (!last || last.to < Math.log10(LARGEST_F)) return { is: 'never', at: marginAt(around, LARGEST_F) }
  if (last.from <= Math.log10(SMALLEST_F)) return { is: 'none-needed' }
  const holes: (readonly [number, number])[] = []
  for (let i = 0; i + 1 < passes.length; i++) {
    const before = passes[i]
    const after = passes[i + 1]
    if (before && after) holes.push([10 ** before.to, 10 ** after.from])
  }
  const actualF = 10 ** last.from
  return { is: 'found', actualF, holes, at: marginAt(around, actualF) }
}

/** Smallest inductance that meets the need with a series inductor alone; undefined when none up to 1 H does. Henries. */
export function leastInductanceH(around: Surroundings): number | undefined {
  const margin = (logH: number) => marginAt({ ...around, inductancesH: [10 ** logH] }, 0).db + ROUNDING_DB
  const last = scan(margin, -12, 0).at(-1)
  return last && last.to >= 0 ? 10 ** last.from : undefined
}

type Span = { readonly from: number; readonly to: number }

/** Spans of the log axis where `margin` is not negative, ends located by bisection. */
function scan(margin: (x: number) => number, from: number, to: number): Span[] {
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
function extremeBetween(margin: (x: number) => number, x: readonly number[], y: readonly number[], i: number) {
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

/** The point between a failing and a passing end; returns the passing side, so that the figure given does meet the need. */
function crossing(margin: (x: number) => number, failing: number, passing: number): number {
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
