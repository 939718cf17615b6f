/** A filter between a source and a load, as the numbers the solver needs. Fixed topologies, real parts. */
import { BENCH_ENDS } from '../../reference/field-figures.ts'
import type { Topology } from '../types.ts'

/** Capacitor to chassis: ESR + ESL + C in series. */
export type ShuntPart = { readonly capacitanceF: number; readonly esrOhm: number; readonly eslH: number }

/** Inductor in the line: winding resistance in series with (L ∥ loss resistance ∥ self-capacitance). `Infinity` = no loss resistance. */
export type SeriesPart = {
  readonly inductanceH: number
  readonly dcrOhm: number
  readonly parallelOhm: number
  readonly parallelF: number
  /** R + jX in Ω at a frequency instead of all that: a bead */
  readonly impedance?: (hz: number) => readonly [re: number, im: number]
}

/** `shunt1` and `series1` serve every topology; `shunt2` is the load side of a Pi, `series2` the load side of a T. */
export type FilterCircuit = {
  readonly topology: Topology
  readonly shunt1: ShuntPart
  readonly shunt2: ShuntPart
  readonly series1: SeriesPart
  readonly series2: SeriesPart
  /** the one bond every shunt part shares on its way to chassis */
  readonly bondOhm: number
  readonly bondH: number
  /** a resistor and a capacitor in series across the last capacitor; its resistance stands as `esrOhm` */
  readonly damper?: ShuntPart
  /** a common-mode choke as one leg sees it, before or behind everything else */
  readonly choke?: { readonly part: SeriesPart; readonly side: 'source' | 'load' }
  /** half of a capacitor from line to line, beside the capacitor on the load side: twice its farads, half its lead */
  readonly cross?: ShuntPart
}

/** Noise source: R + jωL, with a capacitance across it that is there with and without the filter. */
export type NoiseSource = { readonly ohm: number; readonly seriesH: number; readonly shuntF?: number }

/** Impedance of a noise source at ω: Z/(1 + jωC·Z), Z = R + jωL. Its open-circuit voltage falls alike with and without a filter. */
export function sourceImpedance({ ohm, seriesH, shuntF = 0 }: NoiseSource, w: number): readonly [number, number] {
  const x = w * seriesH
  if (shuntF === 0) return [ohm, x]
  const nRe = 1 - w * shuntF * x
  const nIm = w * shuntF * ohm
  const n2 = nRe * nRe + nIm * nIm
  return [(ohm * nRe + x * nIm) / n2, (x * nRe - ohm * nIm) / n2]
}

/** Noise load: R ∥ C ∥ L. `Infinity` for parallelH = none. */
export type NoiseLoad = { readonly ohm: number; readonly parallelF: number; readonly parallelH: number }

export const NO_SHUNT: ShuntPart = { capacitanceF: 0, esrOhm: 0, eslH: 0 }
export const NO_SERIES: SeriesPart = { inductanceH: 0, dcrOhm: 0, parallelOhm: Number.POSITIVE_INFINITY, parallelF: 0 }

/** The 50 Ω bench of the MIL-STD-220 convention. */
export const BENCH_SOURCE: NoiseSource = { ohm: BENCH_ENDS.fixtureOhm, seriesH: 0 }
export const BENCH_LOAD: NoiseLoad = { ohm: BENCH_ENDS.fixtureOhm, parallelF: 0, parallelH: Number.POSITIVE_INFINITY }

/** Number of reactive elements, which sets the final slope: 20 dB/decade each. */
export const ELEMENT_COUNT: Readonly<Record<Topology, number>> = { C: 1, L: 1, LC: 2, CL: 2, PI: 3, T: 3 }

/** Capacitors each topology carries. */
export const CAPACITOR_COUNT: Readonly<Record<Topology, number>> = { C: 1, L: 0, LC: 1, CL: 1, PI: 2, T: 1 }

export function hasCapacitor(topology: Topology): boolean {
  return CAPACITOR_COUNT[topology] > 0
}

export function hasInductor(topology: Topology): boolean {
  return topology !== 'C'
}

export const TOPOLOGIES: readonly Topology[] = ['C', 'L', 'LC', 'CL', 'PI', 'T']

/** What a reader sees. */
export const TOPOLOGY_LABEL: Readonly<Record<Topology, string>> = {
  C: 'C',
  L: 'L',
  LC: 'LC',
  CL: 'CL',
  PI: 'Pi',
  T: 'T',
}
