/** A Pi or a T whose halves were entered unequal, over the tolerance of both: against points of the box by the nodal solver. */
import { expect, it } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { BENCH_LOAD, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { run, si } from '../../support/run-check.ts'

const HZ = 318.8e3
const SOURCE = { ohm: 1366, seriesH: 0 }
const LOAD = { ...BENCH_LOAD, ohm: 1732 }
const TEXTS = {
  sourceOhm: '1366',
  loadOhm: '1732',
  frequencyHz: '318.8k',
  toleranceFrac: '20 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  esrOhm: '0',
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
  inductorParallelF: '0',
  neededDb: '10',
}

const circuit = (change: Partial<FilterCircuit>): FilterCircuit => ({
  topology: 'PI',
  shunt1: NO_SHUNT,
  shunt2: NO_SHUNT,
  series1: NO_SERIES,
  series2: NO_SERIES,
  bondOhm: 0,
  bondH: 0,
  ...change,
})
const cap = (capacitanceF: number) => ({ ...NO_SHUNT, capacitanceF })
const coil = (inductanceH: number) => ({ ...NO_SERIES, inductanceH })
const shares = (from: number, to: number, steps: number) =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)

it('a Pi of 124 and 180 nF with 4 µH meets its resonance inside the box: as entered it holds, its worst part does not', () => {
  const lossDb = (first: number, second: number, henries: number) =>
    nodalLossDb(
      circuit({ shunt1: cap(first), shunt2: cap(second), series1: coil(henries), series2: coil(henries) }),
      SOURCE,
      LOAD,
      HZ,
    )
  expect(lossDb(124e-9, 180e-9, 4e-6)).toBeGreaterThan(20)
  let lowest = Number.POSITIVE_INFINITY
  for (const one of shares(0.8, 1.2, 80)) {
    // both on the resonance L·C1·C2/(C1 + C2) = 1/ω², a step to either side
    for (const more of shares(1, 1.5, 80)) {
      const seriesF = 1 / ((2 * Math.PI * HZ) ** 2 * 4e-6 * more)
      const other = 1 / (1 / seriesF - 1 / (one * 124e-9))
      for (const near of shares(0.996, 1.004, 40)) {
        const second = other * near
        if (second < 0.8 * 180e-9 || second > 1.2 * 180e-9) continue
        lowest = Math.min(lowest, lossDb(one * 124e-9, second, 4e-6 * more))
      }
    }
  }
  expect(lowest).toBeLessThan(1)
  const answer = run(filterCheck, {
    ...TEXTS,
    topology: 'PI',
    capacitanceF: '124n',
    capacitance2F: '180n',
    inductanceH: '4u',
  })
  expect(answer.verdict).toBe('fails')
  const worst = si(answer, 'worstInsertionLossDb') ?? Number.NaN
  expect(worst).toBeLessThan(lowest + 1e-6)
  expect(worst).toBeGreaterThan(lowest - 0.05)
})

it('a T of 2 and 6 µH is judged with each inductor at its own end', () => {
  const ends: number[] = []
  for (const a of [2e-6, 3e-6])
    for (const b of [6e-6, 9e-6])
      for (const farads of [8e-9, 12e-9])
        ends.push(
          nodalLossDb(
            circuit({ topology: 'T', shunt1: cap(farads), shunt2: cap(farads), series1: coil(a), series2: coil(b) }),
            SOURCE,
            LOAD,
            HZ,
          ),
        )
  const answer = run(filterCheck, {
    ...TEXTS,
    topology: 'T',
    capacitanceF: '10n',
    inductanceH: '2u',
    inductance2H: '6u',
  })
  // No resonance lies in this box: its lowest is at a corner.
  expect(si(answer, 'worstInsertionLossDb')).toBeCloseTo(Math.min(...ends), 6)
  expect(answer.headline).toContain('with the worst part')
})

it('of a Pi without its first half an LC is left', () => {
  const common = { ...TEXTS, inductanceH: '10u' }
  const answer = run(filterCheck, { ...common, topology: 'PI', capacitanceF: '0', capacitance2F: '100n' })
  const same = run(filterCheck, { ...common, topology: 'LC', capacitanceF: '100n' })
  expect(si(answer, 'worstInsertionLossDb')).toBeCloseTo(si(same, 'worstInsertionLossDb') ?? Number.NaN, 9)
})

it('a Pi of two equal capacitors lifts most where they lie at unlike ends of their tolerance: by the nodal solver', () => {
  const [source, load] = [
    { ohm: 20, seriesH: 0 },
    { ...BENCH_LOAD, ohm: 600 },
  ]
  const everyHz = Array.from({ length: 4001 }, (_, i) => 1e5 * 10 ** (i / 2000))
  const gainDb = (first: number, second: number, henries: number) =>
    Math.max(
      ...everyHz.map(
        (hz) =>
          -nodalLossDb(
            circuit({ shunt1: cap(first), shunt2: cap(second), series1: coil(henries), series2: coil(henries) }),
            source,
            load,
            hz,
          ),
      ),
    )
  const [least, most] = [8e-9, 12e-9]
  const coils = [2.2e-6, 3.3e-6]
  const alike = coils.flatMap((henries) => [least, most].map((farads) => gainDb(farads, farads, henries)))
  const unlike = coils.flatMap((henries) => [gainDb(least, most, henries), gainDb(most, least, henries)])
  expect(Math.max(...alike)).toBeLessThan(2)
  expect(Math.max(...unlike)).toBeGreaterThan(4)
  const answer = run(filterCheck, {
    ...TEXTS,
    topology: 'PI',
    capacitanceF: '10n',
    inductanceH: '2.2u',
    sourceOhm: '20',
    loadOhm: '600',
    frequencyHz: '10M',
  })
  expect(answer.verdict).toBe('fails')
  const said = answer.findings.find(({ sentence }) => sentence.startsWith('Amplifies'))?.sentence
  const saidDb = Number(/by (\d+\.\d+)/.exec(said ?? '')?.[1])
  expect(saidDb).toBeGreaterThan(Math.max(...unlike) - 1e-3)
  expect(saidDb).toBeLessThan(Math.max(...unlike) + 2e-3)
})
