/** The parts of the model that come closest to a measured filter, by least squares, with what is left over. */
import { type FilterCircuit, NO_SERIES, NO_SHUNT, TOPOLOGIES } from '../network/circuit.ts'
import type { Progress, Topology } from '../types.ts'
import { errorsOf, type Fit, leastSquares, type Residuals } from './least-squares.ts'
import { networkOf } from './model.ts'
import { chainAt, entriesOf, impedanceAt } from './two-port.ts'
import type { Network } from './types.ts'

/** Parts as the facts of a line name them; absent: this topology has none. */
export type FittedParts = {
  readonly topology: Topology
  readonly capacitanceF?: number
  readonly capacitance2F?: number
  readonly esrOhm?: number
  readonly eslH?: number
  readonly inductanceH?: number
  readonly inductance2H?: number
  readonly dcrOhm?: number
  readonly inductorParallelF?: number
  readonly inductorParallelOhm?: number
}

export type Fitted = {
  readonly parts: FittedParts
  /** root mean square of the relative difference over all figures that were fitted */
  readonly residualFrac: number
  /** how far the loss in the reference of the file is off at its worst, and where; absent for an impedance */
  readonly worstDb?: number
  readonly worstAtHz?: number
  /** parts on which the measurement says next to nothing: another value, or none, would fit as well */
  readonly untold: readonly PartName[]
}

/** Frequencies a fit looks at, evenly spread over the file. */
const MOST_POINTS = 61
const OHM = 50

export type PartName = Exclude<keyof FittedParts, 'topology'>
type Name = PartName
const CAPACITOR: readonly Name[] = ['capacitanceF', 'esrOhm', 'eslH']
const COIL: readonly Name[] = ['inductanceH', 'dcrOhm', 'inductorParallelF', 'inductorParallelOhm']
const NAMES: Readonly<Record<Topology, readonly Name[]>> = {
  C: CAPACITOR,
  L: COIL,
  LC: [...CAPACITOR, ...COIL],
  CL: [...CAPACITOR, ...COIL],
  PI: [...CAPACITOR, 'capacitance2F', ...COIL],
  T: [...CAPACITOR, ...COIL, 'inductance2H'],
}
/** Where a search starts beside what it looks for. */
const USUAL: Readonly<Record<Name, number>> = {
  capacitanceF: 1e-8,
  capacitance2F: 1e-8,
  esrOhm: 0.05,
  eslH: 1e-9,
  inductanceH: 1e-6,
  inductance2H: 1e-6,
  dcrOhm: 0.05,
  inductorParallelF: 3e-12,
  inductorParallelOhm: 5e3,
}

/** The circuit of some parts; ideal where they say nothing. */
export function circuitOfParts(parts: FittedParts): FilterCircuit {
  const shunt = { ...NO_SHUNT, esrOhm: parts.esrOhm ?? 0, eslH: parts.eslH ?? 0 }
  const coil = {
    ...NO_SERIES,
    dcrOhm: parts.dcrOhm ?? 0,
    parallelF: parts.inductorParallelF ?? 0,
    parallelOhm: parts.inductorParallelOhm ?? Number.POSITIVE_INFINITY,
  }
  const { capacitanceF = 0, inductanceH = 0 } = parts
  return {
    topology: parts.topology,
    shunt1: { ...shunt, capacitanceF },
    shunt2: { ...shunt, capacitanceF: parts.capacitance2F ?? capacitanceF },
    series1: { ...coil, inductanceH },
    series2: { ...coil, inductanceH: parts.inductance2H ?? inductanceH },
    bondOhm: 0,
    bondH: 0,
  }
}

const partsFrom = (topology: Topology, names: readonly Name[], values: readonly number[]): FittedParts => ({
  topology,
  ...Object.fromEntries(names.map((name, i) => [name, values[i]])),
})

/** Fits every topology asked for (all of them unless told otherwise) to a measured two-port; the closest first. */
export function* fitFilter(
  network: Network,
  topologies: readonly Topology[] = TOPOLOGIES,
): Generator<Progress, readonly Fitted[]> {
  const measured = sampled(network)
  const found: Fitted[] = []
  for (const [i, topology] of topologies.entries()) {
    const names = NAMES[topology]
    const residuals = twoPortResiduals(measured, topology, names)
    const best = yield* bestFrom(residuals, startsOf(names), i / topologies.length, 1 / topologies.length)
    found.push({ ...fittedOf(measured, topology, names, best), untold: untoldOf(residuals, names, best) })
  }
  // a part more has to earn its place: it may only be chosen where it halves what is left
  const cost = ({ residualFrac, parts }: Fitted) => residualFrac * 2 ** (NAMES[parts.topology].length / 4)
  return found.sort((a, b) => cost(a) - cost(b))
}

/** Fits a capacitor or a coil to a measured impedance. */
export function* fitImpedance(network: Network): Generator<Progress, readonly Fitted[]> {
  const rows = rowsOf(network)
  const z = rows.map((row) => impedanceAt(network, row))
  const hz = rows.map((row) => network.hz[row] as number)
  const found: Fitted[] = []
  for (const [i, topology] of (['C', 'L'] as const).entries()) {
    const names = NAMES[topology]
    const residuals: Residuals = (values) => {
      const parts = partsFrom(topology, names, values)
      return Float64Array.from(
        hz.flatMap((f, k) => {
          const [re, im] = partOhm(parts, f)
          const [zRe, zIm] = z[k] as readonly [number, number]
          const size = Math.hypot(zRe, zIm)
          return [(re - zRe) / size, (im - zIm) / size]
        }),
      )
    }
    const best = yield* bestFrom(residuals, startsOf(names), i / 2, 0.5)
    found.push({
      parts: partsFrom(topology, names, best.parameters),
      residualFrac: Math.sqrt(best.sum / hz.length),
      untold: untoldOf(residuals, names, best),
    })
  }
  return found.sort((a, b) => a.residualFrac - b.residualFrac)
}

/** Impedance of the one part of a topology C or L. */
function partOhm(parts: FittedParts, hz: number): readonly [number, number] {
  const w = 2 * Math.PI * hz
  if (parts.topology === 'C') return [parts.esrOhm ?? 0, w * (parts.eslH ?? 0) - 1 / (w * (parts.capacitanceF ?? 0))]
  const x = w * (parts.inductanceH ?? 0)
  const nRe = 1 - w * x * (parts.inductorParallelF ?? 0)
  const nIm = x / (parts.inductorParallelOhm ?? Number.POSITIVE_INFINITY)
  const n2 = nRe * nRe + nIm * nIm
  return [(parts.dcrOhm ?? 0) + (x * nIm) / n2, (x * nRe) / n2]
}

type Measured = { readonly hz: Float64Array; readonly s: readonly (readonly (readonly [number, number])[])[] }

const rowsOf = ({ hz }: Network): readonly number[] => {
  const used = [...hz.keys()].filter((row) => (hz[row] as number) > 0)
  const count = Math.min(MOST_POINTS, used.length)
  return Array.from(
    { length: count },
    (_, i) => used[Math.round((i * (used.length - 1)) / Math.max(1, count - 1))] as number,
  )
}

/** S of the file in 50 Ω at the frequencies a fit looks at. */
function sampled(network: Network): Measured {
  const rows = rowsOf(network)
  return {
    hz: Float64Array.from(rows, (row) => network.hz[row] as number),
    s: rows.map((row) => entriesOf(chainAt(network, row), 'S', [OHM, OHM])),
  }
}

/** What comes through counts by its own size, what comes back as it is. */
function twoPortResiduals({ hz, s }: Measured, topology: Topology, names: readonly Name[]): Residuals {
  return (values) => {
    const { re, im } = networkOf(circuitOfParts(partsFrom(topology, names, values)), hz, OHM)
    const residuals = new Float64Array(6 * hz.length)
    for (let k = 0; k < hz.length; k++) {
      const entries = s[k] as Measured['s'][number]
      for (const [place, entry] of [0, 2, 3].entries()) {
        const [sRe, sIm] = entries[entry] as readonly [number, number]
        const size = entry === 2 ? Math.max(Math.hypot(sRe, sIm), 1e-7) : 1
        residuals[6 * k + 2 * place] = ((re[4 * k + entry] as number) - sRe) / size
        residuals[6 * k + 2 * place + 1] = ((im[4 * k + entry] as number) - sIm) / size
      }
    }
    return residuals
  }
}

/** A grid over the decades of capacitance and inductance, everything else as usual. */
function startsOf(names: readonly Name[]): readonly (readonly number[])[] {
  const decades = (from: number, to: number) =>
    Array.from({ length: 2 * (to - from) + 1 }, (_, i) => 10 ** (from + i / 2))
  const farads = names.includes('capacitanceF') ? decades(-12, -4) : [1e-8]
  const henries = names.includes('inductanceH') ? decades(-9, -2) : [1e-6]
  return farads.flatMap((c) =>
    henries.map((l) =>
      names.map((name) => (name.startsWith('capacitance') ? c : /^inductance/.test(name) ? l : USUAL[name])),
    ),
  )
}

const TRIED_DEEPLY = 5

/** The lowest of the descents from the best few starts. */
function* bestFrom(
  residualsOf: Residuals,
  starts: readonly (readonly number[])[],
  from: number,
  width: number,
): Generator<Progress, Fit> {
  const ranked: { readonly start: readonly number[]; readonly sum: number }[] = []
  for (const start of starts) {
    ranked.push({ start, sum: residualsOf(start).reduce((sum, one) => sum + one * one, 0) })
    yield { doneFrac: from + (width * 0.5 * ranked.length) / starts.length }
  }
  ranked.sort((a, b) => a.sum - b.sum)
  let best: Fit = { parameters: ranked[0]?.start ?? [], sum: Number.POSITIVE_INFINITY }
  for (const [i, { start }] of ranked.slice(0, TRIED_DEEPLY).entries()) {
    const fit = leastSquares(residualsOf, start)
    if (fit.sum < best.sum) best = fit
    yield { doneFrac: from + width * (0.5 + (0.5 * (i + 1)) / TRIED_DEEPLY) }
  }
  return best
}

/** Off by more than this share of itself, twice its standard error counted, a part is not told by what was measured. */
const TOLD_FRAC = 0.5
const untoldOf = (residuals: Residuals, names: readonly Name[], fit: Fit): readonly Name[] => {
  const errors = errorsOf(residuals, fit)
  return names.filter((_, i) => 2 * (errors[i] as number) > TOLD_FRAC)
}

function fittedOf(
  { hz, s }: Measured,
  topology: Topology,
  names: readonly Name[],
  { parameters, sum }: Fit,
): Omit<Fitted, 'untold'> {
  const parts = partsFrom(topology, names, parameters)
  const { re, im } = networkOf(circuitOfParts(parts), hz, OHM)
  let worstDb = 0
  let worstAtHz = hz[0] ?? 0
  for (let k = 0; k < hz.length; k++) {
    const [x, y] = s[k]?.[2] ?? [0, 0]
    const off = Math.abs(
      20 * Math.log10(Math.hypot(re[4 * k + 2] as number, im[4 * k + 2] as number) / Math.hypot(x, y)),
    )
    if (off > worstDb) [worstDb, worstAtHz] = [off, hz[k] as number]
  }
  return { parts, residualFrac: Math.sqrt(sum / (3 * hz.length)), worstDb, worstAtHz }
}
