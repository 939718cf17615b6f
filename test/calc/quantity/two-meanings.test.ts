import { describe, expect, it } from 'vitest'
import { readField } from '../../../src/calc/line/fields.ts'
import { parseList, parseQuantity } from '../../../src/calc/quantity/parse.ts'
import type { Quantity } from '../../../src/calc/quantity/quantity.ts'
import { CHECKS } from '../../../src/calc/registry.ts'

describe('a text with two meanings', () => {
  it.each<[string, Quantity, string]>([
    ['1×10-9', 'capacitance', 'write 1e-9, or 1*10 - 9'],
    ['4.7x10-9 F', 'capacitance', 'write 4.7e-9 F, or'],
    ['2 × 10 − 6', 'inductance', 'write 2e-6'],
    ['100-75 Ω', 'resistance', 'write one value such as 100 Ω, or 100 Ω - 75 Ω'],
    ['118-137 MHz', 'frequency', 'write one value such as 118 MHz, or 118 MHz - 137 MHz'],
    ['118–137 MHz', 'frequency', 'a span or a difference'],
    ['10 mohm', 'resistance', 'write 10 mΩ or 10 MΩ'],
    ['4.7mohm', 'resistance', 'write 4.7 mΩ or 4.7 MΩ'],
  ])('%s is refused, with what to write', (text, quantity, cure) => {
    const reading = parseQuantity(text, quantity)
    expect(reading).toMatchObject({ is: 'refused', message: expect.stringContaining(cure) })
    expect(parseList(`${text};${text}`, quantity)).toMatchObject({ is: 'refused' })
  })

  it.each<[string, Quantity]>([
    ['100n-75n', 'capacitance'],
    ['100-75', 'resistance'],
    ['100 Ω - 75 Ω', 'resistance'],
    ['3*10-9', 'number'],
    ['1e-9', 'capacitance'],
    ['1×10^-9', 'capacitance'],
    ['10 mOhm', 'resistance'],
    ['10 Mohm', 'resistance'],
    ['10 mΩ', 'resistance'],
    ['-5 dB', 'decibel'],
    ['1e-9 F', 'capacitance'],
  ])('%s has one, and is taken', (text, quantity) => {
    expect(['value', 'expression']).toContain(parseQuantity(text, quantity).is)
  })
})

describe('a text of a million letters', () => {
  it('is refused in every kind of field before it is read, with a sentence of a few words', () => {
    for (const check of CHECKS)
      for (const input of check.inputs)
        for (const text of [';'.repeat(1e6), '1;'.repeat(5e5), 'x'.repeat(1e6)]) {
          const field = readField(input, text, {}, undefined)
          expect(field.state, `${check.id} ${input.key}`).toBe('refused')
          expect(field.issue?.message.length).toBeLessThan(400)
          expect(field.issue?.message).toMatch(/characters|not one of the choices/)
        }
  })

  it('is not taken apart as a list', () => {
    expect(parseList(';'.repeat(1e6), 'frequency')).toMatchObject({ is: 'refused', code: 'too-long' })
    expect(parseList(`${'1;'.repeat(99)}1`, 'frequency')).toMatchObject({ is: 'values' })
  })
})
