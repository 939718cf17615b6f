/** The two solvers, chain matrix and nodes, against each other and against a voltage divider worked by hand. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { circuitOf, marginOf, type Parts } from '../../src/calc/bounds/surroundings.ts'
import { NO_SERIES, NO_SHUNT, TOPOLOGIES } from '../../src/calc/network/circuit.ts'
import { nodalLossDb } from './nodal.ts'
import { nodesOf, withModes } from './random-surroundings.ts'

const SEED = 8_642
const RUNS = 1000

test('a capacitor across 10 Ω and 90 Ω is √(1 + (ωC·9)²)', () => {
  const circuit = {
    topology: 'C' as const,
    shunt1: { ...NO_SHUNT, capacitanceF: 47e-9 },
    shunt2: NO_SHUNT,
    series1: NO_SERIES,
    series2: NO_SERIES,
    bondOhm: 0,
    bondH: 0,
  }
  const load = { ohm: 90, parallelF: 0, parallelH: Number.POSITIVE_INFINITY }
  const expected = 10 * Math.log10(1 + (2 * Math.PI * 1.3e6 * 47e-9 * 9) ** 2)
  expect(nodalLossDb(circuit, { ohm: 10, seriesH: 0 }, load, 1.3e6)).toBeCloseTo(expected, 10)
})

test(`chain matrix and nodes agree on ${RUNS} circuits with capacitance at both ends, seed ${SEED}`, () => {
  const wanted = { topologies: TOPOLOGIES, needs: 1, sources: 1, coilRatio: 2.3, withNodes: true }
  for (const around of fc.sample(withModes(wanted), { seed: SEED, numRuns: RUNS })) {
    const parts: Parts = {
      shunt1F: 70e-12 + around.load.parallelF,
      shunt2F: 220e-12,
      series1H: around.inductancesH[0] ?? 0,
      series2H: around.inductancesH[1] ?? 0,
      sourceNodeF: around.sourceNodeF?.most ?? 0,
      loadNodeF: around.loadNodeF?.most ?? 0,
      crossF: around.crossF?.least ?? 0,
      chokeH: around.choke?.spanH.least ?? 0,
    }
    const [need, source] = [around.needs[0], around.sources[0]]
    if (!need || !source) throw new Error('nothing asked')
    const chain = marginOf(around, need, source, parts).lossDb
    const nodal = nodalLossDb(circuitOf(around, parts), source, around.load, need.hz, nodesOf(around, parts))
    expect(Math.abs(chain - nodal), JSON.stringify({ around, chain, nodal })).toBeLessThan(1e-6)
  }
})
