/** A length: "m" after a number is the metre itself there, and what is printed is read back. */
import { expect, test } from 'vitest'
import { printText } from '../../../src/calc/quantity/format.ts'
import { parseQuantity } from '../../../src/calc/quantity/parse.ts'

test.each([
  ['1.25 m', 1.25],
  ['1.25', 1.25],
  ['300 mm', 0.3],
  ['2 km', 2000],
])('%s', (text, si) => {
  expect(parseQuantity(text, 'length')).toEqual({ is: 'value', si })
})

test('what is printed is read back', () => {
  for (const si of [0.003, 0.25, 1, 12.5, 4000])
    expect(parseQuantity(printText(si, 'length'), 'length')).toEqual({ is: 'value', si })
})

test('elsewhere a lone m stays what it was', () => {
  expect(parseQuantity('5 m', 'time').is).toBe('value')
  expect(parseQuantity('5 m', 'capacitance').is).not.toBe('empty')
})
