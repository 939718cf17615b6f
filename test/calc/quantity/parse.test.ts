import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseFlag, parseList, parseQuantity, parseTolerance, type Reading } from '../../../src/calc/quantity/parse.ts'
import { QUANTITIES, type Quantity } from '../../../src/calc/quantity/quantity.ts'

const NAMES = Object.keys(QUANTITIES) as Quantity[]

function si(text: string, quantity: Quantity): number {
  const reading = parseQuantity(text, quantity)
  if (reading.is !== 'value') throw new Error(`${text}: ${JSON.stringify(reading)}`)
  return reading.si
}

function refusal(reading: Reading | { is: string }): string {
  if (reading.is !== 'refused' || !('message' in reading)) throw new Error(`not refused: ${JSON.stringify(reading)}`)
  return reading.message
}

describe('numbers people write', () => {
  it.each<[string, Quantity, number]>([
    ['4.7n', 'capacitance', 4.7e-9],
    ['4,7 nF', 'capacitance', 4.7e-9],
    ['0.0047uF', 'capacitance', 4.7e-9],
    ['4.7\u00A0nF', 'capacitance', 4.7e-9],
    ['4.7\u2009nF', 'capacitance', 4.7e-9],
    ['4.7\u202FnF', 'capacitance', 4.7e-9],
    ['3.3 \u00B5F', 'capacitance', 3.3e-6],
    ['3.3 \u03BCF', 'capacitance', 3.3e-6],
    ['3.3u', 'capacitance', 3.3e-6],
    ['75 \u2126', 'resistance', 75],
    ['75 \u03A9', 'resistance', 75],
    ['7.5 k\u2126', 'resistance', 7500],
    ['120 ohm', 'resistance', 120],
    ['1e-9', 'capacitance', 1e-9],
    ['1.5E-6 s', 'time', 1.5e-6],
    ['4.7×10⁻⁹ F', 'capacitance', 4.7e-9],
    ['4.7 · 10^-9 F', 'capacitance', 4.7e-9],
    ['+5', 'number', 5],
    ['\u221240 dB', 'decibel', -40],
    ['- 40', 'decibel', -40],
    ['.5', 'number', 0.5],
    [',5', 'number', 0.5],
    ['5.', 'number', 5],
    ['4,7', 'number', 4.7],
    ['0,001', 'number', 0.001],
    ['1234,567', 'number', 1234.567],
    ['120 kΩ', 'resistance', 120_000],
    ['10\u2009000 Hz', 'frequency', 10_000],
    ['1\u00A0234\u00A0567,5', 'number', 1_234_567.5],
    ['25 C', 'temperature', 25],
    ['\u221255 °C', 'temperature', -55],
    ['10 khz', 'frequency', 10_000],
    ['12.5 Mhz', 'frequency', 12.5e6],
    ['100 kbit/s', 'frequency', 100_000],
    ['1 Mb/s', 'frequency', 1e6],
    ['115 Vrms', 'voltage', 115],
    ['0.2', 'fraction', 0.2],
    ['20 %', 'fraction', 0.2],
    ['7,5%', 'fraction', 0.075],
    ['120 %', 'fraction', 1.2],
    ['1', 'fraction', 1],
    ['60 dB/dec', 'slope', 60],
    ['1.5 deg', 'angle', 1.5],
    ['3', 'count', 3],
    ['3.0', 'count', 3],
    ['-0', 'number', 0],
  ])('reads %s as %s', (text, quantity, expected) => {
    expect(si(text, quantity)).toBe(expected)
  })

  it('keeps the reference of a level out of the number', () => {
    for (const text of ['105 dBµV', '105 dBuV', '105 dBμV', '105 dBµA', '105 dBm', '105 dBµV/m', '105 dbuv', '105']) {
      expect(si(text, 'level')).toBe(105)
    }
  })

  it('reads blanks of any kind as empty', () => {
    for (const text of ['', ' ', '\u00A0\u2009', '\t\n'])
      expect(parseQuantity(text, 'voltage')).toEqual({ is: 'empty' })
  })
})

/** Marking examples by the rule of IEC 60062: the letter stands where the point would. */
const MARKED: readonly [string, Quantity, number][] = [
  ['R47', 'resistance', 0.47],
  ['4R7', 'resistance', 4.7],
  ['47R', 'resistance', 47],
  ['470R', 'resistance', 470],
  ['1k5', 'resistance', 1500],
  ['4K7', 'resistance', 4700],
  ['47k', 'resistance', 47_000],
  ['470K', 'resistance', 470_000],
  ['4M7', 'resistance', 4.7e6],
  ['47M', 'resistance', 47e6],
  ['1G5', 'resistance', 1.5e9],
  ['p33', 'capacitance', 0.33e-12],
  ['3p3', 'capacitance', 3.3e-12],
  ['330p', 'capacitance', 330e-12],
  ['n33', 'capacitance', 0.33e-9],
  ['4n7', 'capacitance', 4.7e-9],
  ['33n', 'capacitance', 33e-9],
  ['µ33', 'capacitance', 0.33e-6],
  ['3u3', 'capacitance', 3.3e-6],
  ['μ33', 'capacitance', 0.33e-6],
  ['4n70', 'capacitance', 4.7e-9],
  ['4n7 F', 'capacitance', 4.7e-9],
  ['-3V3', 'voltage', -3.3],
]

describe('letters that stand for the point (IEC 60062)', () => {
  it.each(MARKED)('reads %s in %s', (text, quantity, expected) => {
    expect(si(text, quantity)).toBe(expected)
  })

  it('refuses a letter of another quantity and two points in one number', () => {
    expect(refusal(parseQuantity('4R7', 'capacitance'))).toContain('4.7 R is a resistance')
    expect(refusal(parseQuantity('4M7', 'capacitance'))).toContain('4.7 mF')
    expect(refusal(parseQuantity('4f7', 'capacitance'))).toContain('4.7 fF or 4.7 F')
    expect(refusal(parseQuantity('4f7', 'time'))).toContain('write 4.7 fs')
    expect(refusal(parseQuantity('3v3', 'voltage'))).toContain('write 3.3 V')
    expect(parseQuantity('4.7n5', 'capacitance').is).toBe('refused')
    expect(parseQuantity('4n7,5', 'capacitance').is).toBe('refused')
  })
})

describe('refusals say what would be right', () => {
  it.each<[string, Quantity, string, string]>([
    ['1,000', 'number', 'ambiguous-number', 'write 1000 or 1.000'],
    ['12,345 Hz', 'frequency', 'ambiguous-number', 'write 12345 or 12.345'],
    ['1,000.5', 'number', 'ambiguous-number', 'write 1000.5'],
    ['1.000,5', 'number', 'ambiguous-number', 'write 1000.5'],
    ['1,000,000', 'number', 'ambiguous-number', 'write 1000000'],
    ['1.2.3', 'number', 'ambiguous-number', 'one decimal point'],
    ['1,000\u2009000', 'number', 'ambiguous-number', 'without spaces'],
    ['10 000', 'number', 'ambiguous-number', 'write 10000, or 10;000'],
    ['10 MF', 'capacitance', 'prefix-not-used', 'MF is not used for a capacitance; write 10 mF, 10 µF or 10 nF.'],
    ['10 M', 'capacitance', 'prefix-not-used', 'write 10 mF, 10 µF or 10 nF'],
    ['10 kH', 'inductance', 'prefix-not-used', 'write 10 H, 10 mH or 10 µH'],
    ['10 nHz', 'frequency', 'prefix-not-used', 'write 10 mHz, 10 Hz or 10 kHz'],
    ['2 k', 'count', 'prefix-not-used', 'a whole number such as 3'],
    ['10 Hz', 'capacitance', 'wrong-unit', '10 Hz is a frequency; this field takes a capacitance such as 4.7 nF.'],
    ['10 b/s', 'capacitance', 'wrong-unit', 'a capacitance such as 4.7 nF'],
    ['40 dB', 'voltage', 'wrong-unit', 'a voltage such as 28 V'],
    ['12 dB/oct', 'slope', 'wrong-unit', 'times 3.32'],
    ['300 K', 'temperature', 'wrong-unit', 'take 273.15 off'],
    ['77 °F', 'temperature', 'wrong-unit', 'divide by 1.8'],
    ['10 mhz', 'frequency', 'ambiguous-prefix', '10 mHz or 10 MHz'],
    ['1 mb/s', 'frequency', 'ambiguous-prefix', 'write the one you mean'],
    ['5 mw', 'power', 'ambiguous-prefix', '5 mW or 5 MW'],
    ['10 mf', 'capacitance', 'ambiguous-prefix', '10 mF or 10 µF'],
    ['10 f', 'capacitance', 'ambiguous-prefix', '10 fF or 10 F'],
    ['10 NF', 'capacitance', 'unknown-unit', 'did you mean 10 nF?'],
    ['10 furlong', 'capacitance', 'unknown-unit', 'a capacitance such as 4.7 nF'],
    ['1e400', 'number', 'not-finite', 'below 1e308'],
    ['1e-400', 'number', 'not-finite', 'write 0 or a number above'],
    ['1e308 kHz', 'frequency', 'not-finite', 'too large'],
    ['2.5', 'count', 'not-whole', 'write 2 or 3'],
    ['20', 'fraction', 'bare-above-one', 'did you mean 20 %?'],
    ['hello', 'capacitance', 'not-a-number', 'a capacitance such as 4.7 nF'],
    ['V5', 'voltage', 'not-a-number', 'a voltage such as 28 V'],
    ['R47', 'capacitance', 'wrong-unit', 'a capacitance such as 4.7 nF'],
    ['NaN', 'number', 'not-a-number', 'a number such as 2'],
    ['Infinity', 'number', 'not-a-number', 'a number such as 2'],
    ['9'.repeat(201), 'number', 'too-long', 'at most 200'],
  ])('refuses %s in %s as %s', (text, quantity, code, cure) => {
    const reading = parseQuantity(text, quantity)
    expect(reading).toMatchObject({ is: 'refused', code })
    expect(refusal(reading)).toContain(cure)
  })

  it('tells milli from mega by case alone', () => {
    expect(si('3 mHz', 'frequency')).toBe(0.003)
    expect(si('3 MHz', 'frequency')).toBe(3e6)
    expect(si('3 mΩ', 'resistance')).toBe(0.003)
    expect(si('3 MΩ', 'resistance')).toBe(3e6)
  })
})

describe('text that has to be calculated', () => {
  it.each([
    '2*4.7n',
    '1/2n',
    '2*(4.7n+330p)',
    '10n-2n',
    'sqrt(2)',
    'pi',
    '1,000*2',
    '100 dB-60 dB',
    '2×3',
    '-(3)',
    '5 -3',
  ])('hands on %s as an expression', (text) => {
    expect(parseQuantity(text, 'decibel').is).toBe('expression')
  })

  it.each(['-5', '+5', '\u22125', '1e-9', '1E+3', '-1.5e-6'])('takes %s as a plain number', (text) => {
    expect(parseQuantity(text, 'number').is).toBe('value')
  })
})

describe('a bit rate', () => {
  it('reads every spelling of a frequency to the same number, so that stored texts keep their meaning', () => {
    const { prefixes, symbol, symbolsIn } = QUANTITIES.frequency
    // thousandths are below every field that takes a rate
    for (const unit of ['', symbol, ...symbolsIn])
      for (const prefix of prefixes.filter((one) => one !== 'm')) {
        const text = `3.7 ${prefix}${unit}`.trim()
        expect(parseQuantity(text, 'bitRate'), text).toEqual(parseQuantity(text, 'frequency'))
      }
  })

  it('is read as people write it', () => {
    const rates = ['500 kbit/s', '0.5 Mbit/s', '500k', '500 kb/s', '500 kbps']
    for (const text of rates) expect(parseQuantity(text, 'bitRate'), text).toEqual({ is: 'value', si: 500e3 })
  })
})

describe('lists', () => {
  it('reads numbers between semicolons, with a last one left open', () => {
    expect(parseList('1;10;50;150', 'resistance')).toEqual({ is: 'values', si: [1, 10, 50, 150] })
    expect(parseList(' 1k5 ; 4,7 ;', 'resistance')).toEqual({ is: 'values', si: [1500, 4.7] })
    expect(parseList('7.3 MHz', 'frequency')).toEqual({ is: 'values', si: [7.3e6] })
  })

  it('names the number that was refused', () => {
    expect(parseList('10 MHz;10 mhz', 'frequency')).toMatchObject({ is: 'refused', code: 'ambiguous-prefix' })
    expect(refusal(parseList('10 MHz;10 mhz', 'frequency'))).toContain('Number 2:')
    expect(refusal(parseList('1;;3', 'number'))).toContain('Number 2 is missing')
    expect(refusal(parseList('10 100', 'resistance'))).toContain('10;100')
    expect(refusal(parseList('1;'.repeat(101), 'number'))).toContain('at most 100')
  })

  it('is empty without any number and an expression as soon as one item is', () => {
    expect(parseList(' ; ', 'number')).toEqual({ is: 'empty' })
    expect(parseList('', 'number')).toEqual({ is: 'empty' })
    expect(parseList('1; 2*3', 'number')).toEqual({ is: 'expression', text: '1;2*3' })
  })
})

describe('tolerances', () => {
  it.each<[string, number, number]>([
    ['20 %', 0.2, 0.2],
    ['±20 %', 0.2, 0.2],
    ['+/-7,5%', 0.075, 0.075],
    ['0.2', 0.2, 0.2],
    ['±0.05', 0.05, 0.05],
    ['+100/-0 %', 0, 1],
    ['-20/+80 %', 0.2, 0.8],
    ['+80 -20 %', 0.2, 0.8],
    ['+80 % / \u221220 %', 0.2, 0.8],
    ['+0.8/-0.2', 0.2, 0.8],
    ['0', 0, 0],
  ])('reads %s as a loss of %s and a gain of %s', (text, lowFrac, highFrac) => {
    expect(parseTolerance(text)).toEqual({ is: 'tolerance', lowFrac, highFrac })
  })

  it.each<[string, string]>([
    ['20', 'did you mean 20 %?'],
    ['±20', 'did you mean 20 %?'],
    ['+100/-0', 'did you mean +100/-0 %?'],
    ['+20 %', '±20 %'],
    ['-20 %', '±20 %'],
    ['+80/+20 %', '+80/-20 %'],
    ['80/20 %', '+80/-20 %'],
    ['100 %', 'below 100 %'],
    ['+0/-100 %', 'below 100 %'],
    ['tight', 'such as 20 %'],
    ['20 % 30', '+80/-20 %'],
    ['1,000', '1.000'],
    ['%'.repeat(300), 'such as 20 %'],
  ])('refuses %s and says %s', (text, cure) => {
    expect(refusal(parseTolerance(text))).toContain(cure)
  })

  it('is empty when blank', () => {
    expect(parseTolerance(' \u00A0')).toEqual({ is: 'empty' })
  })
})

describe('flags', () => {
  it('reads true and false in three spellings and any case', () => {
    for (const text of ['true', 'YES', ' on ']) expect(parseFlag(text)).toEqual({ is: 'flag', on: true })
    for (const text of ['false', 'No', 'OFF']) expect(parseFlag(text)).toEqual({ is: 'flag', on: false })
    expect(parseFlag('')).toEqual({ is: 'empty' })
  })

  it('refuses anything else, also names every object has', () => {
    for (const text of ['maybe', '1', 'constructor', '__proto__']) {
      expect(refusal(parseFlag(text))).toContain('write true or false')
    }
  })
})

describe('any text at all', () => {
  const alphabet = fc.constantFrom(...'0123456789.,;eE+-*/^() nuµμkKmMGRΩ%°dBFHzVs\u00A0\u2009\u2212±×⁻⁹'.split(''))
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.string({ unit: 'grapheme', maxLength: 40 }),
    fc.string({ unit: alphabet, maxLength: 16 }),
  )

  it('is read without throwing, finite, or refused with a sentence', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...NAMES), (typed, quantity) => {
        const reading = parseQuantity(typed, quantity)
        if (reading.is === 'value') expect(Number.isFinite(reading.si)).toBe(true)
        if (reading.is === 'refused') expect(reading.message).toMatch(/[.?]$/u)
        const list = parseList(typed, quantity)
        if (list.is === 'values') expect(list.si.every(Number.isFinite)).toBe(true)
        const tolerance = parseTolerance(typed)
        if (tolerance.is === 'tolerance') {
          expect(tolerance.lowFrac).toBeGreaterThanOrEqual(0)
          expect(tolerance.lowFrac).toBeLessThan(1)
          expect(Number.isFinite(tolerance.highFrac) && tolerance.highFrac >= 0).toBe(true)
        }
        parseFlag(typed)
      }),
      { seed: 60062, numRuns: 4000 },
    )
  })
})
