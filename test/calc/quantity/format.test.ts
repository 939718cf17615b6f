import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatQuantity, printText } from '../../../src/calc/quantity/format.ts'
import { parseQuantity } from '../../../src/calc/quantity/parse.ts'
import { QUANTITIES, type Quantity } from '../../../src/calc/quantity/quantity.ts'

const NAMES = Object.keys(QUANTITIES) as Quantity[]
const SPACE = '\u00A0'
const MINUS = '\u2212'

describe('a printed quantity', () => {
  it.each<[number, Quantity, string]>([
    [4.7e-9, 'capacitance', '4.7 nF'],
    [4.7e-6, 'capacitance', '4.7 µF'],
    [470e-9, 'capacitance', '470 nF'],
    [0, 'capacitance', '0 F'],
    [-0, 'voltage', '0 V'],
    [75, 'resistance', '75 Ω'],
    [0.012, 'resistance', '12 mΩ'],
    [12.34e6, 'frequency', '12.3 MHz'],
    [85, 'temperature', '85 °C'],
    [0.2, 'fraction', '20 %'],
    [0.1234, 'fraction', '12.3 %'],
    [1.5, 'angle', '1.5 °'],
    [40.02, 'decibel', '40 dB'],
    [105.3, 'level', '105 dB'],
    [59.87, 'slope', '59.9 dB/decade'],
    [3, 'count', '3'],
    [1_234_567, 'count', '1234567'],
    [2.5, 'number', '2.5'],
  ])('%s in %s is %s', (si, quantity, shown) => {
    expect(formatQuantity(si, quantity)).toBe(shown.replace(' ', SPACE))
  })

  it('has a real minus and a space that does not break', () => {
    expect(formatQuantity(-40.234, 'decibel')).toBe(`${MINUS}40.2${SPACE}dB`)
    expect(formatQuantity(-28, 'voltage')).toBe(`${MINUS}28${SPACE}V`)
  })

  it.each<[number, number, string]>([
    [999.5, 3, '1 kHz'],
    [999.4, 3, '999 Hz'],
    [999_950, 3, '1 MHz'],
    [999_950, 5, '999.95 kHz'],
    [999_499, 3, '999 kHz'],
    [0.9995, 3, '1 Hz'],
    [0.9994, 3, '999 mHz'],
    [999.96e6, 4, '1 GHz'],
    [47_000, 1, '50 kHz'],
  ])('rounds %s Hz to %s digits before it chooses the prefix', (si, digits, shown) => {
    expect(formatQuantity(si, 'frequency', digits)).toBe(shown.replace(' ', SPACE))
  })

  it('uses a power of ten where the quantity has no prefix that fits', () => {
    expect(formatQuantity(4.7e-17, 'capacitance')).toBe(`4.7×10⁻¹⁷${SPACE}F`)
    expect(formatQuantity(999.6, 'capacitance')).toBe(`1×10³${SPACE}F`)
    expect(formatQuantity(-2.5e12, 'number')).toBe(`${MINUS}2.5×10¹²`)
  })

  it('prints a residue of rounding as no decibels', () => {
    expect(formatQuantity(-4e-16, 'decibel')).toBe(`0${SPACE}dB`)
    expect(formatQuantity(0.0123, 'decibel')).toBe(`0.012${SPACE}dB`)
  })

  it('refuses what is not finite and digit counts nobody can mean', () => {
    for (const si of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => formatQuantity(si, 'voltage')).toThrow(RangeError)
      expect(() => printText(si, 'voltage')).toThrow(RangeError)
    }
    for (const digits of [0, 2.5, 16, Number.NaN])
      expect(() => formatQuantity(1, 'voltage', digits)).toThrow(RangeError)
  })
})

describe('text for a field', () => {
  it.each<[number, Quantity, string]>([
    [4.7e-9, 'capacitance', '4.7 nF'],
    [-28.125, 'voltage', '-28.125 V'],
    [999_950, 'frequency', '999.95 kHz'],
    [0.2, 'fraction', '20 %'],
    [4.7e-17, 'capacitance', '4.7e-17 F'],
    [1_234_567, 'count', '1234567'],
    [12_345.678, 'number', '12345.678'],
    [0, 'resistance', '0 Ω'],
  ])('%s in %s is %s', (si, quantity, text) => {
    expect(printText(si, quantity)).toBe(text)
  })
})

describe('any finite number', () => {
  const tenPower = fc.tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -18, max: 12 }))
  const number = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    tenPower.map(([mantissa, power]) => mantissa * 10 ** power),
  )
  const whole = fc.oneof(fc.maxSafeInteger(), fc.integer({ min: 0, max: 2000 }))
  const pair = fc
    .constantFrom(...NAMES)
    .chain((quantity) => fc.tuple(fc.constant(quantity), quantity === 'count' ? whole : number))

  it('comes back from its field text as the very same number', () => {
    fc.assert(
      fc.property(pair, ([quantity, si]) => {
        expect(parseQuantity(printText(si, quantity), quantity)).toEqual({ is: 'value', si: si === 0 ? 0 : si })
      }),
      { seed: 4711, numRuns: 4000 },
    )
  })

  it('prints as a readable number that reads back to within the digits shown', () => {
    fc.assert(
      fc.property(pair, fc.integer({ min: 1, max: 15 }), ([quantity, si], digits) => {
        const shown = formatQuantity(si, quantity, digits)
        expect(shown).not.toMatch(/NaN|Infinity|undefined/u)
        // rounding up may pass the largest double, which the field then rightly refuses
        fc.pre(Math.abs(si) < 1.7e308)
        const back = parseQuantity(shown, quantity)
        // decibels go no finer than 0.001
        const slack = Math.max(Math.abs(si) * 0.5 * 10 ** (1 - digits), shown.includes('dB') ? 0.0005 : 0)
        expect(back.is).toBe('value')
        if (back.is === 'value')
          expect(Math.abs(back.si - si)).toBeLessThanOrEqual(slack * (1 + 1e-9) + Number.MIN_VALUE)
      }),
      { seed: 4712, numRuns: 4000 },
    )
  })
})
