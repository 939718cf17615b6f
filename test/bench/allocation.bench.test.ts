/** A sweep allocates nothing per point. Needs node --expose-gc, which vitest.config.ts passes to its workers. */
import { expect, test } from 'vitest'
import { logGrid, sweepLossInto } from '../../src/calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../src/calc/network/circuit.ts'

const circuit: FilterCircuit = {
  topology: 'PI',
  shunt1: { ...NO_SHUNT, capacitanceF: 3.7e-9, esrOhm: 0.02, eslH: 0.3e-9 },
  shunt2: { ...NO_SHUNT, capacitanceF: 5.9e-9, esrOhm: 0.03, eslH: 0.2e-9 },
  series1: { ...NO_SERIES, inductanceH: 1.7e-6, dcrOhm: 0.04, parallelOhm: 2900, parallelF: 2.3e-12 },
  series2: NO_SERIES,
  bondOhm: 2.1e-3,
  bondH: 1.3e-9,
}

test('1,000 sweeps of 1,001 points grow the heap by less than 64 kB', () => {
  const gc = globalThis.gc
  if (!gc) throw new Error('run node with --expose-gc')
  const hz = logGrid(1e4, 1e9, 1001)
  const out = new Float64Array(hz.length)
  const sweep = () => sweepLossInto(circuit, BENCH_SOURCE, BENCH_LOAD, hz, out)
  for (let i = 0; i < 50; i++) sweep()
  // The compiler and the test runner allocate at moments of their own, so the quietest of five rounds counts:
  // garbage made by the sweeps would be in every round, as nothing is collected within one.
  const grown = Array.from({ length: 5 }, () => {
    gc()
    const before = process.memoryUsage().heapUsed
    for (let i = 0; i < 1000; i++) sweep()
    return process.memoryUsage().heapUsed - before
  })
  expect(Math.min(...grown)).toBeLessThan(64 * 1024)
})
