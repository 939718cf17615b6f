/** No yes beside an inductor that some inductance of the bond up to the entered one refutes. Another seed: SEED=… */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { si } from '../../support/run-check.ts'
import { logRange } from '../fuzz/log-range.ts'
import { type Bonded, lossesDb, windowOf } from './less-inductance.ts'

const SEED = Number(process.env['SEED'] ?? 77)
const RUNS = 3000

const bonded: fc.Arbitrary<Bonded> = fc
  .record({
    topology: fc.constantFrom('LC', 'CL', 'PI', 'T'),
    hz: logRange(3e6, 2e8),
    needDb: fc.double({ min: 3, max: 33, noNaN: true }),
    sourceOhm: logRange(2, 300),
    loadOhm: logRange(20, 5000),
    coil: logRange(0.2, 20),
    sourceCoil: fc.oneof(fc.constant(0), logRange(0.05, 5)),
    loadF: fc.oneof(fc.constant(0), logRange(1e-12, 1e-9)),
    bondH: logRange(1e-9, 1e-6),
  })
  .map(({ coil, sourceCoil, ...one }) => {
    const unitH = Math.sqrt(one.sourceOhm * one.loadOhm) / (2 * Math.PI * one.hz)
    return { ...one, seriesH: coil * unitH, sourceH: sourceCoil * unitH }
  })

test(`${RUNS} filters with an inductor, seed ${SEED}: what is a plain yes holds with any less inductance of the bond`, () => {
  const wrong: string[] = []
  let yes = 0
  for (const one of fc.sample(bonded, { numRuns: RUNS, seed: SEED })) {
    const result = windowOf(one)
    const markedF = si(result, 'proposedF')
    if (result.verdict !== 'ok' || markedF === undefined || !Number.isFinite(markedF)) continue
    yes++
    const least = Math.min(...lossesDb(one, markedF, 101))
    if (least < one.needDb - 0.01) wrong.push(`${least.toFixed(2)} dB with ${markedF} F: ${JSON.stringify(one)}`)
  }
  expect(yes).toBeGreaterThan(RUNS / 4)
  expect(wrong).toEqual([])
})
