/** Texts for a field: calculations with the value they come to, worked out apart from the app, and rubbish. */
import { PREFIX_POWER } from '../../../src/calc/quantity/quantity.ts'
import type { Chance } from './random.ts'

export type Calculation = { readonly text: string; readonly value: number }

const PREFIXES = ['p', 'n', 'u', 'm', '', '', 'k', 'M'] as const

/** A number as people write it, with its value in plain units. */
function literal(by: Chance): Calculation {
  const digits = by.happens(0.5) ? String(1 + by.whole(999)) : `${by.whole(99)}.${1 + by.whole(998)}`
  const prefix = by.pick(PREFIXES)
  const power = PREFIX_POWER[prefix === 'u' ? 'µ' : prefix] ?? 0
  // read as one decimal number, so that no product of two rounded ones stands for it
  return { text: `${digits}${prefix}`, value: Number(`${digits}e${power}`) }
}

const FUNCTIONS: readonly (readonly [string, (value: number) => number])[] = [
  ['sqrt', Math.sqrt],
  ['log10', Math.log10],
  ['ln', Math.log],
  ['exp', Math.exp],
  ['abs', Math.abs],
  ['cos', Math.cos],
  ['atan', Math.atan],
]

/** A calculation of some depth, fully bracketed, so that its value does not rest on anybody's order of operators. */
export function calculation(by: Chance, depth = 3): Calculation {
  if (depth === 0 || by.happens(0.25)) return literal(by)
  if (by.happens(0.2)) {
    const [name, work] = by.pick(FUNCTIONS)
    const inner = calculation(by, depth - 1)
    return { text: `${name}(${inner.text})`, value: work(inner.value) }
  }
  const [a, b] = [calculation(by, depth - 1), calculation(by, depth - 1)]
  const space = by.happens(0.3) ? ' ' : ''
  const joined = (sign: string) => `(${a.text})${space}${sign}${space}(${b.text})`
  switch (by.whole(4)) {
    case 0:
      return { text: joined('+'), value: a.value + b.value }
    case 1:
      return { text: joined('-'), value: a.value - b.value }
    case 2:
      return { text: joined('*'), value: a.value * b.value }
    default:
      return { text: joined('/'), value: a.value / b.value }
  }
}

const PIECES = [
  '1',
  '4.7',
  '4,7',
  '1,000',
  '1e9',
  '1e400',
  '-',
  '+',
  '*',
  '/',
  '^',
  '(',
  ')',
  ';',
  '%',
  ' ',
  'n',
  'µ',
  'u',
  'k',
  'M',
  'F',
  'Hz',
  'Ω',
  'ohm',
  'dB',
  'dBµV',
  'V',
  '×',
  '·',
  '÷',
  '²',
  '½',
  '∞',
  'NaN',
  'Infinity',
  'sqrt',
  'log',
  'pi',
  'e',
  'i',
  '1/0',
  '0x10',
  '1_000',
  '--',
  '**',
  '..',
  '1..2',
  '±',
  '–',
  '−',
  '\u200b',
  '\u202e',
  '\0',
  '\n',
  '\t',
  'true',
  '__proto__',
  'constructor',
  'import',
  '=>',
  '{}',
  '[1]',
  '"',
  "'",
  '`',
  '<b>',
  '&',
  '#',
  '?',
  '=',
  '10-9',
  '100n-75n',
  '118-137',
  '4n7',
  '2k2',
  '1R5',
  'K',
  'mohm',
  'MEG',
  '١',
  '４',
  '𝟒',
  '😀',
  'a'.repeat(50),
] as const

/** A row of pieces that need not mean anything, now and then very long. */
export function rubbish(by: Chance): string {
  const count = by.happens(0.01) ? 400 + by.whole(4000) : 1 + by.whole(12)
  return Array.from({ length: count }, () => by.pick(PIECES)).join('')
}

/** A calculation with a sign changed, doubled or taken out. */
export function damaged(by: Chance): string {
  const { text } = calculation(by)
  const at = by.whole(text.length)
  const piece = by.pick(PIECES)
  if (by.happens(0.4)) return text.slice(0, at) + piece + text.slice(at)
  return by.happens(0.5) ? text.slice(0, at) + text.slice(at + 1) : text.slice(0, at) + piece + text.slice(at + 1)
}
