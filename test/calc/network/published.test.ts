/** Published filter examples and tables, through the same solver. Sources are named in each row. */
import { expect, test } from 'vitest'
import { lossDb, sweepLossInto } from '../../../src/calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import {
  findCorners,
  HALF_POWER_DB,
  localSlopeDbPerDecade,
  mostGainDb,
  worstGain,
} from '../../../src/calc/network/shape.ts'
import type { Topology } from '../../../src/calc/types.ts'
import golden from '../../golden/filters-published.json' with { type: 'json' }

const bench = { source: BENCH_SOURCE, load: BENCH_LOAD }

function ideal(topology: Topology, capacitanceF: number, inductanceH: number): FilterCircuit {
  const shunt = { ...NO_SHUNT, capacitanceF }
  const coil = { ...NO_SERIES, inductanceH }
  return { topology, shunt1: shunt, shunt2: shunt, series1: coil, series2: coil, bondOhm: 0, bondH: 0 }
}

test('no published row was lost', () => {
  expect(golden.shuntC.rows).toHaveLength(9)
  expect(golden.seriesL.rows).toHaveLength(5)
  expect(golden.topologies.rows).toHaveLength(5)
  expect(golden.realC.rows).toHaveLength(7)
  expect(golden.bondFloor.rows).toHaveLength(4)
  expect(golden.points.length).toBeGreaterThanOrEqual(13)
})

for (const row of golden.shuntC.rows) {
  test(`shunt ${row.capacitanceF} F in 50/50 Ω meets the closed-form table`, () => {
    const circuit = ideal('C', row.capacitanceF, 0)
    row.lossDb.forEach((db, i) => {
      expect(Math.abs(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, golden.shuntC.hz[i] ?? 0) - db)).toBeLessThan(5.1e-5)
    })
    const corner = findCorners(circuit, bench)
    expect(Math.abs((corner.firstHz ?? 0) / row.cornerHz - 1)).toBeLessThan(3e-6)
    expect(Math.abs((corner.lastingHz ?? 0) / row.cornerHz - 1)).toBeLessThan(3e-6)
  })
}

for (const row of golden.seriesL.rows) {
  test(`series ${row.inductanceH} H in 50/50 Ω meets the closed-form table`, () => {
    const circuit = ideal('L', 0, row.inductanceH)
    row.lossDb.forEach((db, i) => {
      expect(Math.abs(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, golden.seriesL.hz[i] ?? 0) - db)).toBeLessThan(5.1e-5)
    })
  })
}

for (const row of golden.topologies.rows) {
  test(`${row.sourceOhm}/${row.loadOhm} Ω: the six topologies at 10 MHz meet the check table`, () => {
    const source = { ohm: row.sourceOhm, seriesH: 0 }
    const load = { ...BENCH_LOAD, ohm: row.loadOhm }
    for (const [topology, db] of Object.entries(row.lossDb)) {
      const got = lossDb(ideal(topology as Topology, 10e-9, 1e-6), source, load, 10e6)
      expect(Math.abs(got - db), `${topology}: ${got}`).toBeLessThan(5.1e-4)
    }
  })
}

for (const row of golden.realC.rows) {
  test(`${row.part} capacitor ${row.capacitanceF} F with its parasitics meets the table`, () => {
    const shunt = { capacitanceF: row.capacitanceF, esrOhm: row.esrOhm, eslH: row.eslH }
    const circuit = { ...ideal('C', 0, 0), shunt1: shunt }
    row.lossDb.forEach((db, i) => {
      expect(Math.abs(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, golden.realC.hz[i] ?? 0) - db)).toBeLessThan(5.1e-5)
    })
  })
}

for (const row of golden.bondFloor.rows) {
  test(`a ${row.bondH} H bond sets the floor of the table however large the capacitor`, () => {
    const circuit = { ...ideal('C', 1e3, 0), bondOhm: 2.5e-3, bondH: row.bondH }
    row.lossDb.forEach((db, i) => {
      expect(Math.abs(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, golden.bondFloor.hz[i] ?? 0) - db)).toBeLessThan(6e-4)
    })
  })
}

for (const row of golden.points) {
  test(`${row.id} ${row.name}`, () => {
    const circuit = ideal(row.topology as Topology, row.capacitanceF, row.inductanceH)
    const source = { ohm: row.sourceOhm, seriesH: row.sourceH }
    const load = { ...BENCH_LOAD, ohm: row.loadOhm }
    expect(Math.abs(lossDb(circuit, source, load, row.hz) - row.lossDb)).toBeLessThan(row.tolDb)
  })
}

test('a 50 Ω constant-k Pi is a three-element Butterworth: 3.0103 dB at its cut-off and 60 dB a decade up', () => {
  const cutoffHz = 10e6
  const circuit = ideal('PI', 1 / (2 * Math.PI * 50 * cutoffHz), 50 / (Math.PI * cutoffHz))
  expect(Math.abs(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, cutoffHz) - HALF_POWER_DB)).toBeLessThan(1e-9)
  expect(Math.abs((findCorners(circuit, bench).firstHz ?? 0) / cutoffHz - 1)).toBeLessThan(1e-9)
  expect(worstGain(circuit, bench)).toBeUndefined()
  expect(Math.abs(localSlopeDbPerDecade(circuit, bench, 1e9) - 60)).toBeLessThan(1e-3)
})

test('a Pi between equal ends is the Butterworth table for n = 3 (g = 1 2 1) at 75 Ω and 3.3 MHz', () => {
  const w = 2 * Math.PI * 3.3e6
  const circuit = ideal('PI', 1 / (75 * w), (2 * 75) / w)
  const ends = { source: { ohm: 75, seriesH: 0 }, load: { ...BENCH_LOAD, ohm: 75 } }
  for (const k of [0.5, 1, 2, 5]) {
    expect(Math.abs(lossDb(circuit, ends.source, ends.load, k * 3.3e6) - 10 * Math.log10(1 + k ** 6))).toBeLessThan(
      1e-9,
    )
  }
})

test('a T between equal ends is the same Butterworth', () => {
  const w = 2 * Math.PI * 3.3e6
  const circuit = ideal('T', 2 / (75 * w), 75 / w)
  expect(
    Math.abs(lossDb(circuit, { ohm: 75, seriesH: 0 }, { ...BENCH_LOAD, ohm: 75 }, 6.6e6) - 10 * Math.log10(65)),
  ).toBeLessThan(1e-9)
})

test('LC at its resonance between 0.1 and 100 Ω shows the gain of the closed form', () => {
  const circuit = ideal('LC', 1e-6, 10e-6)
  const gain = worstGain(circuit, { source: { ohm: 0.1, seriesH: 0 }, load: { ...BENCH_LOAD, ohm: 100 } })
  // |N| at 50.329 kHz is 23.9870 dB; the true peak lies a hair beside the resonance.
  expect(gain?.gainDb).toBeGreaterThan(23.987)
  expect(gain?.gainDb).toBeLessThan(23.9885)
  expect(Math.abs((gain?.atHz ?? 0) / 50329 - 1)).toBeLessThan(1e-3)
})

test('between resistances nothing passive lifts a level by more than the power that is available; a matching section just does', () => {
  const ends = (sourceOhm: number, ohm: number) => ({
    source: { ohm: sourceOhm, seriesH: 0 },
    load: { ...BENCH_LOAD, ohm },
  })
  // maximum power transfer (any textbook): 1 Ω into 100 Ω hands over 1/101², a match 1/(4·100): 25.5025 times as much
  expect(mostGainDb(ends(1, 100))).toBeCloseTo(14.0658, 3)
  expect(mostGainDb(ends(50, 50))).toBe(0)
  expect(mostGainDb({ ...ends(50, 50), load: { ...BENCH_LOAD, parallelF: 1e-12 } })).toBe(Number.POSITIVE_INFINITY)
  // the L section that matches 1 Ω to 100 Ω at 1 Mrad/s: Q = √99, X = Q·1 Ω in series, 100 Ω/Q across
  const q = Math.sqrt(99)
  const match = worstGain(ideal('LC', q / 100 / 1e6, q / 1e6), ends(1, 100))
  expect(match?.gainDb).toBeCloseTo(14.0658, 3)
  let seed = 20261126
  const draw = () => {
    seed = (seed * 48271) % 2147483647
    return seed / 2147483647
  }
  for (let i = 0; i < 60; i++) {
    const drawn = ends(10 ** (4 * draw() - 1), 10 ** (4 * draw() - 1))
    const topology = (['LC', 'CL', 'PI', 'T'] as const)[i % 4] ?? 'PI'
    const gain = worstGain(ideal(topology, 10 ** (-12 + 5 * draw()), 10 ** (-8 + 4 * draw())), drawn)
    expect(gain?.gainDb ?? 0).toBeLessThan(mostGainDb(drawn) + 1e-9)
  }
})

test('a ferrite bead with open load and 10 mΩ peaks where the bead model says', () => {
  const bead = { inductanceH: 1.208e-6, dcrOhm: 0.3, parallelOhm: 1082, parallelF: 1.678e-12 }
  const rows = [
    [10e-9, 28.33, 1.4471e6],
    [100e-9, 20.7, 0.4569e6],
    [1e-6, 11.05, 0.1418e6],
  ] as const
  for (const [capacitanceF, peakDb, hz] of rows) {
    const circuit: FilterCircuit = {
      ...ideal('LC', 0, 0),
      series1: bead,
      shunt1: { capacitanceF, esrOhm: 0.01, eslH: 0 },
    }
    const gain = worstGain(circuit, { source: { ohm: 0, seriesH: 0 }, load: { ...BENCH_LOAD, ohm: 1e12 } })
    expect(Math.abs((gain?.gainDb ?? 0) - peakDb), `${gain?.gainDb}`).toBeLessThan(0.0051)
    expect(Math.abs((gain?.atHz ?? 0) / hz - 1), `${gain?.atHz}`).toBeLessThan(5e-3)
  }
})

test('a sweep of 1,001 points is finite for parts exactly at a lossless resonance', () => {
  const circuit: FilterCircuit = { ...ideal('PI', 1e-9, 1e-6), shunt1: { capacitanceF: 1e-9, esrOhm: 0, eslH: 1e-9 } }
  const hz = new Float64Array(1001).fill(1 / (2 * Math.PI * 1e-9))
  const out = new Float64Array(1001)
  sweepLossInto(circuit, BENCH_SOURCE, BENCH_LOAD, hz, out)
  expect(out.every(Number.isFinite)).toBe(true)
})
