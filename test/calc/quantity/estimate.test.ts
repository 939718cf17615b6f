/** Estimates are printed with three digits, a most never above what was computed and a least never below. */
import fc from 'fast-check'
import { expect, it, test } from 'vitest'
import { formatEstimate, formatExact } from '../../../src/calc/quantity/format.ts'
import { parseQuantity } from '../../../src/calc/quantity/parse.ts'
import type { Quantity } from '../../../src/calc/quantity/quantity.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-')

test.each([
  [4.809e-9, 'capacitance', 'most', '4.8 nF'],
  [4.809e-9, 'capacitance', 'least', '4.81 nF'],
  [4.809e-9, 'capacitance', undefined, '4.81 nF'],
  [4.7e-9, 'capacitance', 'most', '4.7 nF'],
  [4.7e-9, 'capacitance', 'least', '4.7 nF'],
  [0.1 + 0.2, 'voltage', 'least', '300 mV'],
  [999.6e-12, 'capacitance', 'least', '1 nF'],
  [999.6e-12, 'capacitance', 'most', '999 pF'],
  [36.02, 'decibel', 'least', '36.1 dB'],
  [36.02, 'decibel', 'most', '36 dB'],
  [-36.02, 'decibel', 'least', '-36 dB'],
  [0.0004, 'decibel', 'most', '0 dB'],
  [0.0004, 'decibel', 'least', '0.001 dB'],
  [0.12345, 'decibel', 'least', '0.124 dB'],
  [0, 'capacitance', 'most', '0 F'],
  [1.23456e6, 'frequency', 'most', '1.235 MHz'],
] as const)('%s as %s, %s: %s', (si, quantity, side, said) => {
  expect(plain(formatEstimate(si, quantity, side))).toBe(said)
})

it('prints a most no higher and a least no lower than it is, and neither further away than one in the third digit', () => {
  const sizes = fc.double({ min: 1e-11, max: 1e-4, noNaN: true })
  fc.assert(
    fc.property(sizes, fc.constantFrom<'most' | 'least'>('most', 'least'), (si, side) => {
      const quantity: Quantity = 'capacitance'
      const read = parseQuantity(formatEstimate(si, quantity, side), quantity)
      const said = read.is === 'value' ? read.si : Number.NaN
      const over = (said - si) / si
      if (side === 'most') expect(over).toBeLessThanOrEqual(1e-11)
      else expect(over).toBeGreaterThanOrEqual(-1e-11)
      expect(Math.abs(over)).toBeLessThanOrEqual(0.0101)
    }),
  )
})

it('rounds nothing away of what was typed', () => {
  expect(plain(formatExact(108.15e6, 'frequency'))).toBe('108.15 MHz')
  expect(plain(formatExact(1.00001e-9, 'capacitance'))).toBe('1.00001 nF')
  expect(plain(formatExact(1090.5e6, 'frequency'))).toBe('1.0905 GHz')
})
