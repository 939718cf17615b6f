import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bracketLiterals } from '../../../src/calc/quantity/literals.ts'
import { QUANTITIES, type Quantity } from '../../../src/calc/quantity/quantity.ts'

const NAMES = Object.keys(QUANTITIES) as Quantity[]

describe('a calculation made ready for an evaluator', () => {
  it.each<[string, Quantity, string]>([
    ['1/2n', 'capacitance', '1/(2e-9)'],
    ['4n7*2', 'capacitance', '(4.7e-9)*2'],
    ['2*4.7n+330p', 'capacitance', '2*(4.7e-9)+(3.3e-10)'],
    ['4.7 nF + 330 pF', 'capacitance', '(4.7e-9)+(3.3e-10)'],
    ['1/(2*pi*50*1n)', 'frequency', '1/(2*pi*50*(1e-9))'],
    ['1/(2*pi*1k5*10 nF)', 'frequency', '1/(2*pi*(1500)*(1e-8))'],
    ['R47+4R7', 'resistance', '(0.47)+(4.7)'],
    ['4,7n*2', 'capacitance', '(4.7e-9)*2'],
    ['sqrt(4,41)', 'number', 'sqrt(4.41)'],
    ['max(4.7n,3n)', 'capacitance', 'max((4.7e-9), (3e-9))'],
    ['max(4, 7)', 'number', 'max(4, 7)'],
    ['max(4.7,3)', 'number', 'max(4.7, 3)'],
    ['ln(2)', 'number', 'log(2)'],
    ['log(8, 2)', 'number', 'log(8, 2)'],
    ['3 × (\u22122)', 'number', '3*(-2)'],
    ['6÷4', 'number', '6/4'],
    ['20 % + 5 %', 'fraction', '(0.2)+(0.05)'],
    ['100 dB-60 dB', 'decibel', '(100)-(60)'],
    ['2^-3', 'number', '2^-3'],
    ['10 kΩ*2', 'resistance', '(10000)*2'],
    ['1n*1', 'frequency', '(1e-9)*1'],
  ])('%s in %s becomes %s', (typed, quantity, text) => {
    expect(bracketLiterals(typed, quantity)).toEqual({ is: 'ready', text })
  })

  it.each<[string, Quantity, string]>([
    ['1,000*2', 'number', 'write 1000 or 1.000'],
    ['max(4,7)', 'number', 'write 4.7, or 4, 7 with a space'],
    ['max(4,7n, 3n)', 'capacitance', 'could be one number or two'],
    ['2pi', 'number', 'write * to multiply'],
    ['2(3)', 'number', 'write * to multiply'],
    ['(1)(2)', 'number', 'write * to multiply'],
    ['1 2 + 3', 'number', 'space inside the number'],
    ['log(100)', 'number', 'write log10(…), ln(…)'],
    ['sqrt(1, 2)', 'number', 'decimals with a point'],
    ['pow(2)', 'number', 'pow takes 2 values, not 1'],
    ['sqrt 2', 'number', 'write sqrt(…)'],
    ['2*', 'number', 'write a number there'],
    ['*2', 'number', 'A number is missing before “*”'],
    ['max()', 'number', 'write a number there'],
    ['(2', 'number', 'still open'],
    ['2)', 'number', 'take one “)” away'],
    ['e^2', 'number', 'write exp(1)'],
    ['foo+1', 'number', 'a calculation may use'],
    ['constructor(1)', 'number', 'a calculation may use'],
    ['import("x")', 'number', 'a calculation may use'],
    ['s5+1', 'number', 'a calculation may use'],
    ['x=3', 'number', 'a calculation may use'],
    ['"a"+1', 'number', 'has no place'],
    ['[1, 2]', 'number', 'has no place'],
    ['{1}', 'number', 'has no place'],
    ['1;2', 'number', 'has no place'],
    ['5!', 'number', 'has no place'],
    ['4.7n + 20 %', 'capacitance', 'such as 0.2 for 20 %'],
    ['sin(30°)', 'number', 'write 30*pi/180'],
    ['10 mhz*2', 'frequency', '10 mHz or 10 MHz'],
    ['1f*2', 'resistance', '1 fF or 1 F'],
    ['10 MF*2', 'capacitance', 'write 10 mF, 10 µF or 10 nF'],
    ['5 kg*2', 'number', 'such as 2'],
    ['1e999*2', 'number', 'too large'],
    ['1+'.repeat(101), 'number', 'at most 200'],
  ])('%s in %s is refused and says: %s', (typed, quantity, cure) => {
    const ready = bracketLiterals(typed, quantity)
    expect(ready.is).toBe('refused')
    if (ready.is === 'refused') expect(ready.message).toContain(cure)
  })

  it('never throws, and lets nothing but arithmetic through', () => {
    const alphabet = fc.constantFrom(
      ...'0123456789.,eE+-*/^()nkµRpi%[]{}="\' '.split(''),
      'sqrt(',
      'max(',
      'import(',
      ', ',
    )
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.array(alphabet, { maxLength: 14 }).map((signs) => signs.join('')),
    )
    fc.assert(
      fc.property(text, fc.constantFrom(...NAMES), (typed, quantity) => {
        const ready = bracketLiterals(typed, quantity)
        if (ready.is === 'refused') expect(ready.message).toMatch(/[.?]$/u)
        else {
          const rest = ready.text.replaceAll(/\d+(?:\.\d+)?(?:e[+-]?\d+)?|\b(?:sqrt|max|pi)\b/gu, '')
          expect(rest).toMatch(/^[-+*/^(), ]*$/u)
        }
      }),
      { seed: 2718, numRuns: 4000 },
    )
  })
})

describe('a bare m in a calculation', () => {
  it.each([
    ['25m*2', 'number'],
    ['670m', 'number'],
    ['1/(2*pi*50*25m)', 'frequency'],
  ] as const)('is milli in %s, though fields of lengths know the metre', (text, quantity) => {
    expect(bracketLiterals(text, quantity)).toMatchObject({ is: 'ready', text: expect.stringMatching(/0\.025|0\.67/) })
  })
})
