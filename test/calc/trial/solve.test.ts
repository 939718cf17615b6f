/** The impedance from readings: figures of the trade, complex circuits worked out here, and spans over the error. */
import { describe, expect, test } from 'vitest'
import { loopCheck } from '../../../src/calc/checks/loop/check.ts'
import { trialCheck } from '../../../src/calc/checks/trial/check.ts'
import { dropDb, neededFarad, parallelFromOne, parallelFromTwo } from '../../../src/calc/network/capacitor-trial.ts'
import { endSpans, spanFromOne, spanFromTwo } from '../../../src/calc/network/trial-span.ts'
import { isCapacitorAt, ownResonanceHz, solveTrial } from '../../../src/calc/trial/solve.ts'
import { run, si } from '../../support/run-check.ts'

describe('check vectors of the trade', () => {
  test('1 nF that gives 6 dB at 120 MHz stands against 2.29 Ω, and 20 dB needs 5.76 nF', () => {
    expect(parallelFromOne({ farad: 1e-9, dropDb: 6 }, 120e6)).toBeCloseTo(2.29, 2)
    expect((neededFarad({ farad: 1e-9, dropDb: 6 }, 20) ?? 0) * 1e9).toBeCloseTo(5.76, 2)
  })

  test('50 Ω at 120 MHz: 0.1, 1 and 10 nF give 11.8, 31.5 and 51.5 dB', () => {
    const at = (farad: number) => dropDb({ ohm: 50, siemens: 0 }, farad, 120e6)
    expect(at(0.1e-9)).toBeCloseTo(11.8, 1)
    expect(at(1e-9)).toBeCloseTo(31.5, 1)
    expect(at(10e-9)).toBeCloseTo(51.5, 1)
  })

  test('ripple of 2.4 kHz from 1 Ω takes 660 µF for 20 dB, of 4.8 kHz 330 µF', () => {
    const from = (hz: number) => neededFarad({ farad: 1e-6, dropDb: dropDb({ ohm: 1, siemens: 0 }, 1e-6, hz) }, 20) ?? 0
    expect(from(2.4e3) * 1e6).toBeCloseTo(660, -1)
    expect(from(4.8e3) * 1e6).toBeCloseTo(330, -1)
  })

  test('10 nH of lead: 1 nF resonates at 50 MHz, 10 nF at 15.9 MHz, 100 nF at 5.0 MHz', () => {
    expect(ownResonanceHz(1e-9, 10e-9) / 1e6).toBeCloseTo(50.3, 1)
    expect(ownResonanceHz(10e-9, 10e-9) / 1e6).toBeCloseTo(15.9, 1)
    expect(ownResonanceHz(100e-9, 10e-9) / 1e6).toBeCloseTo(5.03, 2)
  })

  test('so that the first vector is taken only where the lead is shorter', () => {
    const texts = {
      steps: 'bare; empty; 1n; empty; bare',
      noise: '60; 60; 54; 60; 60',
      signal: ';;good',
      readAtHz: '120M',
    }
    expect(isCapacitorAt(1e-9, 10e-9, 120e6)).toBe(false)
    expect(si(run(trialCheck, texts), 'parallelOhm')).toBeUndefined()
    expect(run(trialCheck, texts).findings.some(({ sentence }) => sentence.includes('an inductor there'))).toBe(true)
    expect(si(run(trialCheck, { ...texts, leadH: '0' }), 'parallelOhm')).toBeCloseTo(2.29, 2)
  })
})

describe('spans over the error of the readings', () => {
  const HZ = 10e6
  test('close to nothing without error, and hold the reading with it', () => {
    const circuit = { ohm: 40, siemens: 5e-3 }
    const pair = [100e-12, 2.2e-9].map((farad) => ({ farad, dropDb: dropDb(circuit, farad, HZ) }))
    const [one, two] = [pair[0] ?? { farad: 0, dropDb: 0 }, pair[1] ?? { farad: 0, dropDb: 0 }]
    const exact = spanFromTwo(one, two, HZ, 0)
    expect(exact?.least).toBeCloseTo(40, 6)
    expect(exact?.most).toBeCloseTo(40, 6)
    const off = spanFromTwo(one, two, HZ, 1)
    expect(off?.least).toBeLessThan(40)
    expect(off?.most).toBeGreaterThan(40)
    expect(parallelFromTwo(one, two, HZ)?.ohm).toBeCloseTo(40, 6)
  })

  test('one capacitor: no lower end where its fall may be none', () => {
    expect(spanFromOne({ farad: 1e-9, dropDb: 0.5 }, HZ, 1).least).toBe(0)
  })

  test('adapters that may be off widen it to every corner of both', () => {
    const circuit = { ohm: 40, siemens: 0 }
    const read = (farad: number) => ({ farad, dropDb: dropDb(circuit, farad, HZ) })
    // both adapters 10 % larger than marked: everything in it is 10 % smaller than read
    const marked = { first: { ...read(110e-12), farad: 100e-12 }, second: { ...read(2.42e-9), farad: 2.2e-9 } }
    const span = solveTrial(marked, HZ, 0, 0.1).span
    expect(span?.least).toBeLessThanOrEqual(40 + 1e-9)
    expect(span?.most).toBeGreaterThanOrEqual(44 - 1e-9)
    const exact = solveTrial(marked, HZ, 0).span
    expect(exact?.least).toBeCloseTo(44, 6)
  })

  test('200 Ω together and 37.5 Ω side by side are 150 and 50 Ω; with an error, both ends hold them', () => {
    const sharp = endSpans({ least: 200, most: 200 }, { least: 37.5, most: 37.5 })
    expect(sharp?.higher.least).toBeCloseTo(150, 9)
    expect(sharp?.lower.most).toBeCloseTo(50, 9)
    const wide = endSpans({ least: 180, most: 220 }, { least: 33, most: 45 })
    // 4 · 45 reaches 180: both may be 90
    expect(wide?.higher.least).toBe(90)
    expect(wide?.lower.most).toBe(90)
    expect(endSpans({ least: 100, most: 120 }, { least: 31, most: 40 })).toBeUndefined()
  })
})

test('the loop reads the capacitors of a trial on the same line, and both ends with a clamp', () => {
  // 150 Ω and 50 Ω: 200 together, 37.5 side by side; 10 MHz
  const fall = (farad: number) => dropDb({ ohm: 37.5, siemens: 0 }, farad, 10e6)
  const result = run(loopCheck, {
    clampOhm: '100',
    fallDb: String(20 * Math.log10(1.5)),
    steps: 'bare; empty; 330p; 2.2n; empty; bare',
    noise: ['60', '60', 60 - fall(330e-12), 60 - fall(2.2e-9), '60', '60'].join(';'),
    readAtHz: '10M',
    offDb: '0.2',
    higherEnd: 'source',
  })
  expect(si(result, 'parallelOhm')).toBeCloseTo(37.5, 3)
  for (const [key, ohm] of [
    ['higher', 150],
    ['lower', 50],
  ] as const) {
    expect(si(result, `${key}LeastOhm`)).toBeLessThan(ohm)
    expect(si(result, `${key}MostOhm`)).toBeGreaterThan(ohm)
  }
  // neither flatters: the load at its least, the source so far that the sum reaches its most
  expect(si(result, 'loadOhm')).toBe(si(result, 'lowerLeastOhm'))
  const sum = (si(result, 'sourceMostOhm') ?? 0) + (si(result, 'loadOhm') ?? 0)
  expect(sum).toBeGreaterThanOrEqual(100 / (10 ** ((20 * Math.log10(1.5) - 0.2) / 20) - 1) - 1e-9)
  expect(result.findings.some(({ sentence }) => sentence.startsWith('The capacitors are those of the trial'))).toBe(
    true,
  )
})
