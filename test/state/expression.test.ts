import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { computed } from '@preact/signals'
import fc from 'fast-check'
import { evaluate } from 'mathjs'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Quantity } from '../../src/calc/quantity/quantity.ts'
import type { Calculator } from '../../src/state/expression.ts'
import { evaluateExpression, openCalculator } from '../../src/state/expression.ts'

async function calculator(): Promise<Calculator> {
  const opened = await openCalculator()
  if (!opened) throw new Error('mathjs did not load')
  return opened
}

describe('a typed calculation', () => {
  it.each<[string, Quantity, number]>([
    ['2*4.7n+330p', 'capacitance', 9.73e-9],
    ['1/2n', 'number', 5e8],
    ['1/(2*pi*50*1n)', 'frequency', 1 / (2 * Math.PI * 50 * 1e-9)],
    ['4n7*2', 'capacitance', 9.4e-9],
    ['-2^2', 'number', -4],
    ['2^3^2', 'number', 512],
    ['log10(1000)', 'number', 3],
    ['ln(exp(2.5))', 'number', 2.5],
    ['log(8, 2)', 'number', 3],
    ['20*log10(47/3)', 'decibel', 20 * Math.log10(47 / 3)],
    ['max(3.3n, 4.7n, 1n)-min(1n, 2n)', 'capacitance', 3.7e-9],
    ['abs(-3)*sin(pi/6)+cos(0)+atan(1)', 'number', 2.5 + Math.PI / 4],
    ['sqrt(75*50)', 'resistance', Math.sqrt(3750)],
    ['pow(2, 0.5)', 'number', Math.SQRT2],
    ['--5', 'number', 5],
    ['3*0.1*10', 'count', 3],
    ['10 % + 7 %', 'fraction', 0.17],
  ])('%s in %s comes to %s', async (text, quantity, expected) => {
    const reading = await evaluateExpression(text, quantity)
    expect(reading.is).toBe('value')
    if (reading.is === 'value') expect(Math.abs(reading.si / expected - 1)).toBeLessThan(1e-15 * 4)
  })

  it.each<[string, Quantity, string]>([
    ['1/0', 'number', 'divides by zero'],
    ['3/(2-2)', 'number', 'divides by zero'],
    ['sqrt(1-2)', 'number', 'root of a negative number'],
    ['ln(0)', 'number', 'logarithm of zero or less'],
    ['log(8, 0)', 'number', 'positive base other than 1'],
    ['(-8)^(1/3)', 'number', 'write -(8^(1/3))'],
    ['0^(-1)', 'number', 'divides by zero'],
    ['10^400', 'number', 'too large'],
    ['5/2', 'count', 'write 2 or 3'],
    ['20*3', 'fraction', 'did you mean 60 %?'],
    ['2*foo', 'number', 'a calculation may use'],
    ['1+'.repeat(120), 'number', 'at most 200'],
  ])('%s in %s is refused and says: %s', async (text, quantity, cure) => {
    const reading = await evaluateExpression(text, quantity)
    expect(reading.is).toBe('refused')
    if (reading.is === 'refused') expect(reading.message).toContain(cure)
  })
})

describe('the evaluator behind its own lock, with no reader in front', () => {
  it.each([
    'import({})',
    'createUnit("foo")',
    'evaluate("1")',
    'parse("1")',
    'simplify("1")',
    'derivative("x", "x")',
    'config({})',
    'typed',
    'x = 3',
    'f(x) = x',
    '"text"',
    "'text'",
    '[1, 2]',
    '{a: 1}',
    '1:3',
    '3 cm',
    '3 pi',
    'unknown',
    'unknown(2)',
    'e',
    'i',
    'Infinity',
    'NaN',
    'true',
    'null',
    '1 < 2',
    '1 ? 2 : 3',
    '5!',
    '5%',
    '5 mod 3',
    '1; 2',
    'sqrt.constructor',
    'sqrt["constructor"]',
    'sqrt.constructor("return 1")()',
    '(sqrt)(4)',
    'toString()',
    'constructor',
    'random()',
  ])('refuses %s', async (text) => {
    const result = (await calculator())(text)
    expect(result).toMatchObject({ is: 'refused' })
  })

  it('refuses text that is too long or broken, with a sentence', async () => {
    const calculate = await calculator()
    for (const text of ['1+'.repeat(2000), '', '(', '1+', ')(', '1 2', '\u0000', '(('.repeat(700)]) {
      const result = calculate(text)
      expect(result).toMatchObject({ is: 'refused', message: expect.stringMatching(/\.$/u) })
    }
  })

  it('comes to what the whole of mathjs comes to, on 2,000 calculations (its min and max round, ours do not)', async () => {
    const calculate = await calculator()
    const { expression } = fc.letrec<{ expression: string; leaf: string }>((tie) => ({
      leaf: fc.oneof(
        fc.double({ min: 1e-12, max: 1e12, noNaN: true }).map(String),
        fc.integer({ min: 0, max: 20 }).map(String),
        fc.constant('pi'),
      ),
      expression: fc.oneof(
        { depthSize: 'small' },
        tie('leaf'),
        fc
          .tuple(tie('expression'), fc.constantFrom('+', '-', '*', '/', '^', ' - '), tie('expression'))
          .map(([a, sign, b]) => `${a}${sign}${b}`),
        tie('expression').map((inner) => `(${inner})`),
        tie('expression').map((inner) => `-${inner}`),
        fc
          .tuple(fc.constantFrom('sqrt', 'log10', 'log', 'exp', 'abs', 'sin', 'cos', 'atan'), tie('expression'))
          .map(([name, inner]) => `${name}(${inner})`),
        fc
          .tuple(fc.constantFrom('pow', 'log'), tie('expression'), tie('expression'))
          .map(([name, a, b]) => `${name}(${a}, ${b})`),
      ),
    }))
    let counted = 0
    fc.assert(
      fc.property(expression, (text) => {
        const ours = calculate(text)
        if (typeof ours !== 'number') return
        const theirs: unknown = evaluate(text)
        counted += 1
        expect(typeof theirs, text).toBe('number')
        const far = Math.abs(ours - Number(theirs))
        expect(far, text).toBeLessThanOrEqual(1e-14 * Math.abs(ours))
      }),
      { numRuns: 2000, seed: 20_261_126 },
    )
    expect(counted).toBeGreaterThan(1000)
  })

  it('keeps nothing from one calculation to the next', async () => {
    const calculate = await calculator()
    calculate('pi = 3')
    expect(calculate('pi')).toBe(Math.PI)
  })
})

describe('a reading inside a computed signal', () => {
  afterEach(() => {
    vi.doUnmock('mathjs/number')
    vi.resetModules()
    vi.useRealTimers()
  })

  it('is undefined until the evaluator has arrived, then computes again by itself', async () => {
    vi.resetModules()
    const { expressionReading, openCalculator: open } = await import('../../src/state/expression.ts')
    const reading = computed(() => expressionReading('2*4.7n', 'capacitance'))
    const seen: unknown[] = []
    const stop = reading.subscribe((value) => seen.push(value))
    expect(seen).toEqual([undefined])
    await open()
    expect(seen).toEqual([undefined, { is: 'value', si: 9.4e-9 }])
    expect(expressionReading('2*4.7n', 'capacitance')).toBe(reading.value)
    expect(expressionReading('2*4.7n', 'count')).not.toBe(reading.value)
    stop()
  })

  it('says how to go on when the evaluator cannot be fetched, and tries again later', async () => {
    vi.resetModules()
    let fetches = 0
    vi.doMock('mathjs/number', () => {
      fetches += 1
      throw new Error('offline')
    })
    const state = await import('../../src/state/expression.ts')
    expect(state.expressionReading('2*3', 'number')).toBeUndefined()
    const failed = await state.evaluateExpression('2*3', 'number')
    expect(failed).toMatchObject({ is: 'refused', code: 'calculator-missing' })
    expect(state.expressionReading('2*3', 'number')).toBe(failed)
    expect(fetches).toBeGreaterThan(0)

    vi.doUnmock('mathjs/number')
    vi.useFakeTimers({ now: Date.now() + 60_000, toFake: ['Date'] })
    expect(state.expressionReading('2*3', 'number')).toBe(failed)
    await state.openCalculator()
    expect(state.expressionReading('2*3', 'number')).toEqual({ is: 'value', si: 6 })
  })
})

describe('mathjs in the sources', () => {
  it('is imported in one file only, and there at run time only when needed', () => {
    const root = new URL('../../src', import.meta.url).pathname
    const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /(?<!\.d)\.tsx?$/u.test(name),
    )
    const importers = files.filter((name) => /['"]mathjs/u.test(readFileSync(join(root, name), 'utf8')))
    expect(importers).toEqual([join('state', 'expression.ts')])
    const source = readFileSync(join(root, 'state/expression.ts'), 'utf8')
    const lines = source.split('\n').filter((line) => /['"]mathjs/u.test(line))
    expect(lines.filter((line) => !/await import\(/u.test(line) && !/^import type /u.test(line))).toEqual([])
  })
})
