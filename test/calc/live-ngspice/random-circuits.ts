/** Filters as they are built: real parts, shared bond, ends with and without reactance. */
import fc from 'fast-check'
import { NO_SERIES, type SeriesPart, type ShuntPart, TOPOLOGIES } from '../../../src/calc/network/circuit.ts'
import type { PairCircuit } from '../../../src/calc/pair.ts'
import type { Topology } from '../../../src/calc/types.ts'
import type { Wired } from './netlist.ts'

/** Evenly spread over the decades; three significant digits more than a part is marked with. */
export const between = (low: number, high: number): fc.Arbitrary<number> =>
  fc
    .noBias(fc.integer({ min: Math.round(1e4 * Math.log10(low)), max: Math.round(1e4 * Math.log10(high)) }))
    .map((e) => Number((10 ** (e / 1e4)).toPrecision(6)))

export const orNone = (some: fc.Arbitrary<number>, none: number): fc.Arbitrary<number> =>
  fc.oneof({ weight: 1, arbitrary: fc.constant(none) }, { weight: 2, arbitrary: some })

const shunt: fc.Arbitrary<ShuntPart> = fc.record({
  capacitanceF: between(10e-12, 2e-6),
  esrOhm: orNone(between(1e-3, 0.5), 0),
  eslH: orNone(between(10e-12, 20e-9), 0),
})

const series: fc.Arbitrary<SeriesPart> = fc.record({
  inductanceH: between(50e-9, 200e-6),
  dcrOhm: orNone(between(1e-3, 2), 0),
  parallelOhm: orNone(between(100, 50e3), NO_SERIES.parallelOhm),
  parallelF: orNone(between(0.2e-12, 30e-12), 0),
})

const damper: fc.Arbitrary<ShuntPart> = fc.record({
  capacitanceF: between(100e-12, 10e-6),
  esrOhm: between(0.3, 300),
  eslH: orNone(between(10e-12, 20e-9), 0),
})

/** The same filters with a resistor and a capacitor across the last capacitor. */
export function dampedCircuits(seed: number, each: number): Wired[] {
  return randomCircuits(seed, each).map((one, i) => {
    const [part] = fc.sample(damper, { seed: seed + 7 * i, numRuns: 1 })
    return part === undefined ? one : { ...one, circuit: { ...one.circuit, damper: part } }
  })
}

function wired(topology: Topology): fc.Arbitrary<Wired> {
  return fc.record({
    circuit: fc.record({
      topology: fc.constant(topology),
      shunt1: shunt,
      shunt2: shunt,
      series1: series,
      series2: series,
      bondOhm: orNone(between(0.5e-3, 0.1), 0),
      bondH: orNone(between(0.1e-9, 60e-9), 0),
    }),
    source: fc.record({ ohm: between(0.1, 5e3), seriesH: orNone(between(10e-9, 50e-6), 0) }),
    load: fc.record({
      ohm: between(0.5, 100e3),
      parallelF: orNone(between(5e-12, 100e-9), 0),
      parallelH: orNone(between(1e-6, 1e-3), Number.POSITIVE_INFINITY),
    }),
  })
}

/** `each` circuits of every topology; the same ones for the same seed. */
export function randomCircuits(seed: number, each: number): Wired[] {
  return TOPOLOGIES.flatMap((topology, i) => fc.sample(wired(topology), { seed: seed + i, numRuns: each }))
}

/** Pairs whose legs differ by 1 % to ten times. */
export function randomPairs(seed: number, count: number): PairCircuit[] {
  const pair = fc
    .record({ legF: between(10e-12, 100e-9), ratio: between(1.01, 10), legOhm: between(1, 10e3) })
    .map(({ legF, ratio, legOhm }) => ({ legF, leg2F: Number((legF * ratio).toPrecision(6)), legOhm }))
  return fc.sample(pair, { seed, numRuns: count })
}
