/** The value to try between two that were tried. */
import { expect, it } from 'vitest'
import { between } from '../../../src/calc/trial/zones.ts'

it('is a standard value clear of both ends, or none', () => {
  // E6 of 1 nF to 10 nF: 3.3 nF lies nearest √10 nF
  expect(between(1e-9, 10e-9)).toBe(3.3e-9)
  // nothing of E6 or E12 lies between 1 nF and 1.2 nF
  expect(between(1e-9, 1.2e-9)).toBeUndefined()
})
