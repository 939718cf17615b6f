/** What one leg of a pair sees: every impedance of the pair, times the share of the mode. */
import { expect, test } from 'vitest'
import { legFactor, loadPerLeg, sourcePerLeg } from '../../../src/calc/bounds/legs.ts'
import type { NoiseLoad } from '../../../src/calc/network/circuit.ts'

/** Conductance and susceptance of R ∥ C ∥ L. */
const sieOf = ({ ohm, parallelF, parallelH }: NoiseLoad, w: number) =>
  [1 / ohm, w * parallelF - 1 / (w * parallelH)] as const

test.each([
  ['common', 2],
  ['differential', 0.5],
] as const)('in %s mode %s times the impedance, at every frequency', (mode, times) => {
  const load = { ohm: 120, parallelF: 47e-12, parallelH: 3e-6 }
  const factor = legFactor(true, mode)
  for (const hz of [1e5, 13.4e6, 1e9]) {
    const w = 2 * Math.PI * hz
    const [pair, leg] = [sieOf(load, w), sieOf(loadPerLeg(load, factor), w)]
    leg.forEach((sie, i) => {
      expect(sie * times).toBeCloseTo(pair[i] ?? Number.NaN, 12)
    })
  }
  expect(sourcePerLeg({ ohm: 10, seriesH: 1e-6 }, factor)).toEqual({ ohm: 10 * times, seriesH: 1e-6 * times })
})
