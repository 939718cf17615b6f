/**
 * A need that is met by the resonance of the capacitor with its lead and bond alone. What is entered of them is what they
 * are at most: a plain yes has to hold with less. Truth: an independent nodal solver over the box of the capacitor.
 */
import { describe, expect, test } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { run, si } from '../../support/run-check.ts'
import { lossesDb, windowOf } from './less-inductance.ts'

const HZ = 10e6
const NEED_DB = 20
const LINE = {
  lineKind: 'discrete-28v',
  signalOhm: '1k',
  topology: 'C',
  frequencyHz: String(HZ),
  neededDb: String(NEED_DB),
  sourceOhm: '50',
  loadOhm: '50',
  toleranceFrac: '10 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  existingF: '0',
  suppressorF: '0',
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
}

/** Least loss of this mark over its tolerance, with any inductance of the bond from `leastH` to what was entered. */
function leastLossDb(markedF: number, leastH: number, mostH: number): number {
  const source = { ohm: 50, seriesH: 0 }
  const load = { ohm: 50, parallelF: 0, parallelH: Number.POSITIVE_INFINITY }
  const losses = Array.from({ length: 21 * 41 }, (_, i) => {
    const [k, l] = [i % 21, Math.floor(i / 21)]
    const circuit: FilterCircuit = {
      topology: 'C',
      shunt1: { capacitanceF: markedF * (0.9 + 0.01 * k), esrOhm: 1e-6, eslH: 0 },
      shunt2: NO_SHUNT,
      series1: NO_SERIES,
      series2: NO_SERIES,
      bondOhm: 1e-6,
      bondH: leastH + ((mostH - leastH) * l) / 40,
    }
    return nodalLossDb(circuit, source, load, HZ)
  })
  return Math.min(...losses)
}

describe('a need that resonance alone would meet', () => {
  test.each(['bondH', 'eslH'] as const)(
    'is no plain yes, and a value that needs none comes first: %s',
    (inductance) => {
      for (const [text, henries] of [
        ['20n', 20e-9],
        ['40n', 40e-9],
        ['60n', 60e-9],
        ['100n', 100e-9],
      ] as const) {
        const result = run(windowCheck, { ...LINE, [inductance]: text })
        const markedF = si(result, 'proposedF') ?? 0
        expect(leastLossDb(markedF, henries, henries), text).toBeGreaterThan(NEED_DB - 1e-3)
        const isHeld = leastLossDb(markedF, 0, henries) >= NEED_DB
        if (result.verdict === 'ok') expect(isHeld, text).toBe(true)
        expect(result.headline.includes('less of that would lose it'), text).toBe(!isHeld)
      }
    },
  )

  test('6.8 nF beside 40 nH: 10 nF, which 0 nH and 40 nH both stand', () => {
    expect(leastLossDb(6.8e-9, 40e-9, 40e-9)).toBeGreaterThan(NEED_DB)
    expect(leastLossDb(6.8e-9, 0, 40e-9)).toBeLessThan(NEED_DB)
    const result = run(windowCheck, { ...LINE, bondH: '40n' })
    expect([result.verdict, si(result, 'proposedF')]).toEqual(['ok', 10e-9])
  })
})

test.each([
  ['LC', { hz: 65.8e6, sourceOhm: 2.02, loadOhm: 225, seriesH: 0.999e-6, bondH: 86.5e-9, needDb: 32, loadF: 745e-12 }],
  ['LC', { hz: 74.2e6, sourceOhm: 242, loadOhm: 218, seriesH: 1.65e-6, bondH: 51.4e-9, needDb: 8.1, loadF: 732e-12 }],
  ['LC', { hz: 83e6, sourceOhm: 7.38, loadOhm: 1860, seriesH: 0.237e-6, bondH: 7.08e-9, needDb: 3.39, loadF: 613e-12 }],
] as const)('%s: what none and all of it stand, and some of it does not, is no plain yes', (topology, facts) => {
  const one = { ...facts, topology, sourceH: 0 }
  const result = windowOf(one)
  const markedF = si(result, 'proposedF') ?? Number.NaN
  const losses = lossesDb(one, markedF, 1001)
  expect(losses.at(-1)).toBeGreaterThan(one.needDb - 0.01)
  if (Math.min(...losses) < one.needDb - 0.01) {
    expect(result.verdict).not.toBe('ok')
    expect(result.headline).toContain('less of that would lose it')
  }
})

test('more parts than the proof takes are no plain yes, and the sentence says that they were searched alone', () => {
  const line = {
    ...LINE,
    topology: 'PI',
    frequencyHz: '100M',
    eslH: '1n',
    bondH: '1n',
    bondOhm: '2.5m',
    beadHz: '10M; 100M; 300M',
    beadOhm: '60; 600; 500',
    beadReactanceOhm: '300; 100; -200',
    dampOhm: '10',
    dampF: '10n',
    chokeH: '1u',
    chokeWires: 'all',
  }
  expect(run(windowCheck, line).verdict).toBe('ok')
  // one part more than the proof takes
  const result = run(windowCheck, { ...line, suppressorF: '100p' })
  expect(result.verdict).toBe('marginal')
  expect(result.headline).toContain('a proof for all of them was not reached')
  const strip = result.pictures.find(({ is }) => is === 'strip')
  if (strip?.is !== 'strip') throw new Error('no strip')
  expect(strip.rows.find(({ topology }) => topology === 'PI')).toMatchObject({ isWithCare: true, verdict: 'marginal' })
})

test('an inductor that only its self-resonance makes good is no plain yes', () => {
  const line = { ...LINE, topology: 'L', inductanceH: '10u', frequencyHz: '30M', neededDb: '33' }
  const result = run(windowCheck, { ...line, inductorResonanceHz: '30M' })
  expect(result.verdict).toBe('marginal')
  expect(result.headline).toContain('less of that would lose it')
  expect(run(windowCheck, { ...line, inductorResonanceHz: '30M', neededDb: '20' }).verdict).toBe('ok')
})
