import { expect, it } from 'vitest'
import { lossDb } from '../../../src/calc/connector/plate/loss.ts'

it('is 20·log10 of the bare volts over those that are left, 400 dB either way', () => {
  expect(lossDb(0.1, 1)).toBeCloseTo(20, 12)
  expect(lossDb(10, 1)).toBeCloseTo(-20, 12)
  expect([lossDb(0, 1), lossDb(1e-300, 1)]).toEqual([400, 400])
  expect([lossDb(Number.POSITIVE_INFINITY, 1), lossDb(1, 0)]).toEqual([-400, -400])
})

it('promises nothing where the volts are no number', () => {
  expect([lossDb(Number.NaN, 1), lossDb(1, Number.NaN), lossDb(0, 0)]).toEqual([-400, -400, -400])
})
