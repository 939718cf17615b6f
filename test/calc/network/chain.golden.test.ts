/** Every ngspice reference circuit through the solver the app uses. Truth: ngspice-39, netlists in the golden file. */
import { expect, test } from 'vitest'
import { chainLossInto, sweepLossInto } from '../../../src/calc/network/chain.ts'
import golden from '../../golden/ngspice-filters.json' with { type: 'json' }
import { circuitOf, endsOf, TOLERANCE_DB } from '../../support/ngspice-row.ts'

test('no golden circuit was lost', () => {
  expect(golden.circuits.map((c) => c.id)).toEqual([
    'F01',
    'F02',
    'F03',
    'F04',
    'F05',
    'F06',
    'F07',
    'F08',
    'F09',
    'F10',
    'F11',
    'F12',
    'X13',
    'X14',
  ])
  expect(golden.circuits.reduce((n, c) => n + c.results.length, 0)).toBe(84)
})

for (const row of golden.circuits) {
  test(`${row.id} ${row.title} agrees with ngspice at every frequency`, () => {
    const hz = Float64Array.from(row.results.map((r) => r.f_hz))
    const out = new Float64Array(hz.length)
    chainLossInto(circuitOf(row), hz, endsOf(row, hz), out)
    row.results.forEach((r, i) => {
      expect(
        Math.abs((out[i] as number) - r.il_db),
        `${row.id} at ${r.f_hz} Hz: ${out[i]} against ${r.il_db}`,
      ).toBeLessThan(r.il_db > 120 ? 0.01 : TOLERANCE_DB)
    })
  })
}

for (const row of golden.circuits.filter((c) => c.id !== 'F12')) {
  test(`${row.id} gives the same figures through the R–L source and R–C–L load the checks use`, () => {
    const hz = Float64Array.from(row.results.map((r) => r.f_hz))
    const out = new Float64Array(hz.length)
    const isX13 = row.id === 'X13'
    const source = { ohm: isX13 ? 0.5 : Number(row.source_ohm), seriesH: isX13 ? 5e-6 : 0 }
    const load = { ohm: isX13 ? 100 : Number(row.load_ohm), parallelF: 0, parallelH: Number.POSITIVE_INFINITY }
    sweepLossInto(circuitOf(row), source, load, hz, out)
    row.results.forEach((r, i) => {
      expect(Math.abs((out[i] as number) - r.il_db)).toBeLessThan(r.il_db > 120 ? 0.01 : TOLERANCE_DB)
    })
  })
}
