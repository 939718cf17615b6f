/** Worst case, preferred values and room: small closed forms. */
import { expect, test } from 'vitest'
import { crossPerLegF, legFactor } from '../../../src/calc/bounds/legs.ts'
import { proposeF } from '../../../src/calc/bounds/preferred.ts'
import { mostMarkedF, roomPerLegF, roomToChassisF } from '../../../src/calc/bounds/room.ts'
import { leastShare, mostShare } from '../../../src/calc/bounds/worst-case.ts'

const spread = {
  tolerance: { lowFrac: 0.2, highFrac: 0.2 },
  temperatureFrac: 0.25,
  biasFrac: 0,
  ageingDecades: 2,
  ageingFracPerDecade: 0.025,
}

test('−20 %, −25 % and two decades at 2.5 % leave 0.570375 (worked stack of filters fact 3.4, derived)', () => {
  expect(Math.abs(leastShare(spread) - 0.570375)).toBeLessThan(1e-12)
  expect(Math.abs(20 * Math.log10(leastShare(spread)) + 4.8768)).toBeLessThan(5.1e-5)
})

test('1,000 h to 100,000 h at 2.5 % a decade leaves 0.950625', () => {
  const aged = { ...spread, tolerance: { lowFrac: 0, highFrac: 0 }, temperatureFrac: 0 }
  expect(Math.abs(leastShare(aged) - 0.950625)).toBeLessThan(1e-12)
})

test('the most takes no bias and no ageing loss', () => {
  expect(mostShare({ ...spread, biasFrac: 0.4 })).toBeCloseTo(1.2 * 1.25, 12)
  expect(mostShare({ ...spread, tolerance: { lowFrac: 0, highFrac: 1 } })).toBeCloseTo(2 * 1.25, 12)
})

test('a pair leg sees twice the impedance in common mode and half in differential', () => {
  expect([legFactor(true, 'common'), legFactor(true, 'differential'), legFactor(false, 'common')]).toEqual([2, 0.5, 1])
  expect(crossPerLegF(7e-12, true, 'differential')).toBe(14e-12)
  expect(crossPerLegF(7e-12, true, 'common')).toBe(0)
})

test('room on a pair is 2·(C_works − Cx − existing) − suppressor, on a single line C_works − existing − suppressor', () => {
  const taken = { isPair: true, existingF: 0.7e-9, crossF: 0.3e-9, suppressorF: 1.1e-9 }
  expect(roomPerLegF(8.03e-9, taken)).toBeCloseTo(2 * (8.03e-9 - 1e-9) - 1.1e-9, 20)
  expect(roomPerLegF(2.5e-9, { ...taken, isPair: false, crossF: 0 })).toBeCloseTo(2.5e-9 - 1.8e-9, 20)
  expect(roomToChassisF(2e-8, taken)).toBeCloseTo(2e-8 - 1.1e-9, 20)
  expect(mostMarkedF(12e-9, 2, 1.38)).toBeCloseTo(12e-9 / 2.76, 20)
  expect(mostMarkedF(-1, 1, 1.2)).toBe(0)
})

test('the proposal is the nearest E6 value inside, else E12, else none', () => {
  // target min(2·2.2, √(2.2·6.8) = 3.87) = 3.87 nF: 3.3 is nearer than 4.7 on the log axis
  expect(proposeF(2.2e-9, 6.8e-9)).toEqual({ valueF: 3.3e-9, series: 'E6', verdict: 'ok' })
  expect(proposeF(2.2e-9, Number.POSITIVE_INFINITY)).toEqual({ valueF: 4.7e-9, series: 'E6', verdict: 'ok' })
  expect(proposeF(1.6e-12, 2.1e-12)).toEqual({ valueF: 1.8e-12, series: 'E12', verdict: 'ok' })
  expect(proposeF(1.55e-12, 1.75e-12)).toBeUndefined()
  expect(proposeF(9.1e-9, 12e-9)).toEqual({ valueF: 10e-9, series: 'E6', verdict: 'ok' })
})
