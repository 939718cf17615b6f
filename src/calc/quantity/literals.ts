/** Prepares typed calculations: prefixed numbers become plain bracketed ones, and nothing but arithmetic gets through. */
import { foldText } from './fold.ts'
import { type Numeral, numeralValue, readNumeral } from './numeral.ts'
import type { Quantity } from './quantity.ts'
import { MAX_TEXT_LENGTH, quote, type Refused, refuse } from './reading.ts'
import { pointLetterPower, readUnitInSum } from './unit.ts'

/** A calculation an evaluator may see: plain numbers, + - * / ^, brackets, pi and whitelisted functions only. */
export type ReadyExpression = { readonly is: 'ready'; readonly text: string }

type FunctionRule = { readonly least: number; readonly most: number; readonly name: string }

/** Functions a typed calculation may use, with how many arguments each takes and its name in the evaluator. */
export const FUNCTIONS: ReadonlyMap<string, FunctionRule> = new Map([
  ['sqrt', { least: 1, most: 1, name: 'sqrt' }],
  ['log10', { least: 1, most: 1, name: 'log10' }],
  ['ln', { least: 1, most: 1, name: 'log' }],
  ['log', { least: 2, most: 2, name: 'log' }],
  ['exp', { least: 1, most: 1, name: 'exp' }],
  ['abs', { least: 1, most: 1, name: 'abs' }],
  ['sin', { least: 1, most: 1, name: 'sin' }],
  ['cos', { least: 1, most: 1, name: 'cos' }],
  ['atan', { least: 1, most: 1, name: 'atan' }],
  ['min', { least: 1, most: 20, name: 'min' }],
  ['max', { least: 1, most: 20, name: 'max' }],
  ['pow', { least: 2, most: 2, name: 'pow' }],
])

const ALLOWED = `a calculation may use numbers, + - * / ^, brackets, pi and ${[...FUNCTIONS.keys()].join(', ')}`
const UNIT_LETTERS = /^ ?([A-Za-zµΩ°℃%]+)/u
const POINT_LETTER = /^([A-Za-zµΩ])(\d+)(?![.,\d])/u
const LEADING_LETTER = /^[pnµumkKMGR]\d+$/u
const NAME = /^[A-Za-z_µΩ][A-Za-z0-9_µΩ]*/u

type Call = { readonly name: string; readonly rule: FunctionRule | undefined; commas: number }

/** What has been read so far. `afterOperand`: a number, a name or a closing bracket stands just before. */
type Scan = { readonly quantity: Quantity; readonly calls: Call[]; out: string; rest: string; afterOperand: boolean }

function takesSeveral(scan: Scan): boolean {
  return (scan.calls.at(-1)?.rule?.most ?? 1) > 1
}

function putOperand(scan: Scan, text: string, length: number): Refused | undefined {
  if (scan.afterOperand) {
    const next = quote(scan.rest.slice(0, length).trim())
    return refuse('cannot-calculate', `Something is missing before “${next}”; write * to multiply, as in 2*pi.`)
  }
  scan.out += text
  scan.rest = scan.rest.slice(length)
  scan.afterOperand = true
  return undefined
}

/** In max(4.7, 3) the comma parts arguments; in max(4,7) nobody can tell. */
function splitAtComma(scan: Scan): { text: string } | Refused {
  if (!takesSeveral(scan)) return { text: scan.rest }
  const match = /^([\d.]*),(\d[\d.]*)/u.exec(scan.rest)
  if (!match) return { text: scan.rest.replace(/^([\d.]+),.*$/su, '$1') }
  const [, before = '', after = ''] = match
  if (before.includes('.')) return { text: before }
  return refuse(
    'ambiguous-number',
    `${before},${after} could be one number or two; write ${before || '0'}.${after}, or ${before || '0'}, ${after} with a space.`,
  )
}

function valueText(numeral: Numeral, power: number, marked: boolean): string | Refused {
  const value = numeralValue(numeral, power)
  if (typeof value !== 'number') return value
  return marked ? `(${value})` : String(value)
}

function readNumber(scan: Scan): Refused | undefined {
  const segment = splitAtComma(scan)
  if ('is' in segment) return segment
  const head = readNumeral(segment.text)
  if (head === undefined)
    return refuse('cannot-calculate', `“${quote(scan.rest)}” does not start with a number; ${ALLOWED}.`)
  if ('is' in head) return head
  const { numeral } = head
  const typedLength = numeral.length
  const after = segment.text.slice(typedLength)
  const point = numeral.whole ? POINT_LETTER.exec(after) : null
  const pointPower = point?.[1] === undefined ? undefined : letterPower(point[1], scan.quantity)
  if (point && pointPower !== undefined) {
    const joined: Numeral = { ...numeral, digits: `${numeral.digits}.${point[2] ?? ''}`, whole: false }
    const text = valueText(joined, pointPower, true)
    return typeof text === 'string' ? putOperand(scan, text, typedLength + point[0].length) : text
  }
  const tail = UNIT_LETTERS.exec(after)
  const unit = tail?.[1] ?? ''
  if (unit === 'pi' || FUNCTIONS.has(unit)) {
    return refuse('cannot-calculate', `Something is missing before “${unit}”; write * to multiply, as in 2*pi.`)
  }
  const read = readUnitInSum(numeral.typed, unit, scan.quantity)
  if ('is' in read) return read
  const text = valueText(numeral, read.power, unit !== '')
  return typeof text === 'string' ? putOperand(scan, text, typedLength + (tail?.[0].length ?? 0)) : text
}

function letterPower(letter: string, quantity: Quantity): number | undefined {
  return (
    pointLetterPower(letter, quantity) ?? pointLetterPower(letter, 'resistance') ?? pointLetterPower(letter, 'time')
  )
}

function readName(scan: Scan): Refused | undefined {
  const name = NAME.exec(scan.rest)?.[0] ?? ''
  if (name === 'pi') return putOperand(scan, 'pi', name.length)
  const rule = FUNCTIONS.get(name)
  const opening = /^ ?\(/u.exec(scan.rest.slice(name.length))
  if (rule && opening) {
    const trouble = putOperand(scan, `${rule.name}(`, name.length + opening[0].length)
    scan.calls.push({ name, rule, commas: 0 })
    scan.afterOperand = false
    return trouble
  }
  if (rule) return refuse('cannot-calculate', `${name} needs brackets; write ${name}(…).`)
  const power = LEADING_LETTER.test(name) ? letterPower(name.charAt(0), scan.quantity) : undefined
  if (power !== undefined) return putOperand(scan, `(${Number(`0.${name.slice(1)}e${power}`)})`, name.length)
  if (name === 'e')
    return refuse('unknown-name', 'e is not known here; write exp(1) for 2.718, or 1e-9 for a power of ten.')
  return refuse('unknown-name', `“${quote(name)}” is not known here; ${ALLOWED}.`)
}

function closeBracket(scan: Scan): Refused | undefined {
  const call = scan.calls.pop()
  if (!call) return refuse('cannot-calculate', 'A bracket closes that was never opened; take one “)” away.')
  if (!scan.afterOperand)
    return refuse('cannot-calculate', 'A bracket closes with nothing before it; write a number there.')
  scan.out += ')'
  scan.rest = scan.rest.slice(1)
  const count = call.commas + 1
  if (call.name === 'log' && count === 1) {
    return refuse('ambiguous-number', 'log could mean log10 or ln; write log10(…), ln(…) or log(…, base).')
  }
  if (call.rule && (count < call.rule.least || count > call.rule.most)) {
    const wanted = call.rule.least === call.rule.most ? `${call.rule.least}` : `${call.rule.least} to ${call.rule.most}`
    return refuse(
      'cannot-calculate',
      `${call.name} takes ${wanted} values, not ${count}; write each after a comma and a space.`,
    )
  }
  return undefined
}

function readComma(scan: Scan): Refused | undefined {
  const call = scan.calls.at(-1)
  if (!call?.rule || !takesSeveral(scan) || !scan.afterOperand) {
    return refuse('cannot-calculate', 'A comma stands where no second value can follow; write decimals with a point.')
  }
  call.commas += 1
  scan.out += ', '
  scan.rest = scan.rest.slice(1)
  scan.afterOperand = false
  return undefined
}

function readOperator(scan: Scan): Refused | undefined {
  const sign = scan.rest.charAt(0)
  if (!scan.afterOperand && sign !== '+' && sign !== '-') {
    return refuse('cannot-calculate', `A number is missing before “${sign}”; write one there.`)
  }
  scan.out += sign
  scan.rest = scan.rest.slice(1)
  scan.afterOperand = false
  return undefined
}

function openBracket(scan: Scan): Refused | undefined {
  const trouble = putOperand(scan, '(', 1)
  scan.calls.push({ name: '', rule: undefined, commas: 0 })
  scan.afterOperand = false
  return trouble
}

function readNext(scan: Scan): Refused | undefined {
  const next = scan.rest.charAt(0)
  if (/[\d.]/u.test(next) || (/^,\d/u.test(scan.rest) && !scan.afterOperand)) return readNumber(scan)
  if (NAME.test(scan.rest)) return readName(scan)
  if (next === '(') return openBracket(scan)
  if (next === ')') return closeBracket(scan)
  if (next === ',') return readComma(scan)
  if (/[-+*/^]/u.test(next)) return readOperator(scan)
  const shown = [...scan.rest][0] ?? ''
  return refuse('not-allowed', `“${shown}” has no place in a calculation; ${ALLOWED}.`)
}

/**
 * Turns a typed calculation into one an evaluator may see: every number with a prefix, a unit or a point letter becomes
 * a bracketed plain literal in SI base units ("1/2n" is "1/(2e-9)", "4n7*2" is "(4.7e-9)*2"), ln becomes log. Inside a
 * calculation any prefix and any unit is taken; dimensions are not checked. A decimal comma is read where it cannot
 * part two arguments. Everything else (names, strings, brackets, assignments, multiplication without a sign) is refused
 * with a sentence. Never throws.
 * Source: IEC 60062 (`iec-60062`, from memory) for the point letters; the rest is this project's grammar.
 */
export function bracketLiterals(text: string, quantity: Quantity): ReadyExpression | Refused {
  const folded = foldText(text).replaceAll(/[×·]/gu, '*').replaceAll('÷', '/')
  if (folded.length > MAX_TEXT_LENGTH) {
    return refuse('too-long', `That is ${folded.length} characters; write at most ${MAX_TEXT_LENGTH}.`)
  }
  const scan: Scan = { quantity, calls: [], out: '', rest: folded, afterOperand: false }
  while (scan.rest !== '') {
    const trouble = readNext(scan)
    if (trouble) return trouble
    scan.rest = scan.rest.trimStart()
  }
  if (scan.calls.length > 0) return refuse('cannot-calculate', 'A bracket is still open; write “)” where it ends.')
  if (!scan.afterOperand) return refuse('cannot-calculate', 'The calculation stops after a sign; write a number there.')
  return { is: 'ready', text: scan.out }
}
