/** Field texts a person or a stranger's link could hold: inside and beyond each input's range, and rubbish. */
import fc from 'fast-check'
import type { Check, Input } from '../../../src/calc/types.ts'
import { logRange } from './log-range.ts'
import { type Texts, together } from './together.ts'

const GARBAGE = [
  'abc',
  '--',
  'NaN',
  'Infinity',
  '-Infinity',
  '1e999',
  '1e-999',
  'undefined',
  'null',
  '[object Object]',
  '4,7',
  '1,000',
  '1;;2',
  ';',
  '20 %',
  '+100/-0 %',
  '5 parsecs',
  '\u00b5',
  '0',
  '-0',
  '1.7976931348623157e308',
  '5e-324',
  '   ',
]

/** Plain decimal text, never a prefix: the reader of prefixes has its own tests. */
const plain = (x: number): string => String(Number(x.toPrecision(6)))

/** Spread over the decades of the whole range of the input, and its exact ends. */
function numberText(min: number, max: number): fc.Arbitrary<string> {
  // A range that only goes down from zero is its mirror image with a minus.
  if (max <= 0) return numberText(-max, -min).map((text) => (text === '0' ? text : `-${text}`))
  const low = min > 0 ? min : Math.min(1e-15, max / 1e3)
  const size = logRange(low, max).map(String)
  const either = fc.tuple(size, fc.boolean()).map(([t, minus]) => (minus && -Number(t) >= min ? `-${t}` : t))
  const tiny = min <= 0 ? ['1e-160', '1e-300', '5e-324'] : []
  const ends = fc.constantFrom(String(min), String(max), plain(low), ...tiny)
  return fc.oneof({ weight: 6, arbitrary: either }, { weight: 1, arbitrary: ends })
}

/** A number just or far outside. */
function beyondText({ type }: Input): fc.Arbitrary<string> {
  if (type.is !== 'number') return fc.constantFrom('9e9', '+0/-100 %', '1')
  const { min, max } = type
  return fc.constantFrom('0', plain(max * 3), plain(max * 1e9), plain(-Math.abs(max)), plain(min - Math.abs(min) / 2))
}

const toleranceText = fc.oneof(
  fc.integer({ min: 0, max: 99 }).map((p) => `${p} %`),
  fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 99 })).map(([p, m]) => `+${p}/-${m} %`),
  fc.constantFrom('0', '0.2', '+100/-0 %'),
)

/** Most lists hold one number: two lists of different length are refused, and little would be calculated. */
function listText(one: fc.Arbitrary<string>): fc.Arbitrary<string> {
  const several = fc.array(one, { minLength: 2, maxLength: 3 }).map((all) => all.join(';'))
  return fc.oneof({ weight: 4, arbitrary: one }, { weight: 1, arbitrary: several })
}

function goodText({ type }: Input): fc.Arbitrary<string> {
  switch (type.is) {
    case 'choice':
      return fc.constantFrom(...type.options.map((o) => o.value))
    case 'flag':
      return fc.constantFrom('true', 'false')
    case 'tolerance':
      return toleranceText
    case 'level': {
      const unit = fc.constantFrom('', 'dB', 'dBµV', 'dBuV', 'dBV', 'dBµA', 'dBm', 'dBµV/m')
      return fc.tuple(numberText(type.min, type.max), unit).map(([number, symbol]) => `${number} ${symbol}`)
    }
    case 'column': {
      const words = type.words.length > 0 ? [...type.words, ''] : ['', '09:12']
      const number = type.quantity === undefined ? fc.constant('') : numberText(type.min, type.max)
      const one = fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...words) }, { weight: 2, arbitrary: number })
      return fc.array(one, { minLength: 1, maxLength: 7 }).map((all) => all.join(';'))
    }
    case 'number': {
      const any = numberText(type.min, type.max)
      const one = type.quantity === 'count' ? any.map((t) => String(Math.max(type.min, Math.round(Number(t))))) : any
      return type.many ? listText(one) : one
    }
  }
}

/**
 * Two ways to say one thing, of which a person fills in one, usually the first. Both at once are refused, or agree only by
 * luck when they are drawn apart.
 */
const EITHER: readonly (readonly [string, string])[] = [
  ['level', 'bundleLevel'],
  ['openCircuitV', 'level'],
  ['breakdownV', 'standoffV'],
]

/** Most sets hold one of two ways: of ten turns one keeps both, two the second, the others the first. */
function eitherOf(texts: Record<string, string>, turns: readonly number[]): Record<string, string> {
  const gone = EITHER.flatMap(([one, other], i) => {
    const turn = turns[i] ?? 0
    return turn === 0 ? [] : [turn <= 2 ? one : other]
  })
  return Object.fromEntries(Object.entries(texts).filter(([key]) => !gone.includes(key)))
}

/**
 * Texts for every field of a check: mostly readable and in range, so that the sums behind them run; some fields absent or
 * empty; `spoiltPerMille` of them out of range or rubbish.
 */
export function textsFor(check: Check, spoiltPerMille: number): fc.Arbitrary<Texts> {
  const field = (input: Input) =>
    fc.oneof(
      { weight: 700, arbitrary: goodText(input) },
      { weight: 200, arbitrary: fc.constant(undefined) },
      { weight: 100, arbitrary: fc.constant('') },
      {
        weight: spoiltPerMille,
        arbitrary: fc.oneof(fc.constantFrom(...GARBAGE), fc.string({ maxLength: 12 }), beyondText(input)),
      },
    )
  const texts = fc
    .record(Object.fromEntries(check.inputs.map((i) => [i.key, field(i)])))
    .map((all) => Object.fromEntries(Object.entries(all).filter((e): e is [string, string] => e[1] !== undefined)))
  const turns = fc.array(fc.nat({ max: 9 }), { minLength: EITHER.length, maxLength: EITHER.length })
  const hasEither = EITHER.some((keys) => keys.every((key) => check.inputs.some((input) => input.key === key)))
  const one = hasEither ? fc.tuple(texts, turns).map(([all, drawn]) => eitherOf(all, drawn)) : texts
  // rubbish is to reach every field, so that half of its sets stay as they were drawn
  return together(one, new Set(check.inputs.map(({ key }) => key)), spoiltPerMille > 0 ? 5 : 1)
}
