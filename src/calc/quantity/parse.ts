/** Reads what people type into fields. The only place where prefixes turn into powers of ten. */
import { acceptValue } from './accept.ts'
import { foldText } from './fold.ts'
import { type Numeral, numeralValue, readNumeral } from './numeral.ts'
import { QUANTITIES, type Quantity } from './quantity.ts'
import {
  type FlagReading,
  type ListReading,
  MAX_TEXT_LENGTH,
  quote,
  type Reading,
  type Refused,
  refuse,
} from './reading.ts'
import { twoMeanings } from './two-meanings.ts'
import { pointLetterPower, readUnit } from './unit.ts'

export type { FlagReading, ListReading, Reading } from './reading.ts'
export { parseTolerance } from './tolerance.ts'

const MAX_LIST_ITEMS = 100
const POINT_LETTER = /^([A-Za-zµΩ])(\d+)(?![.,\d]) ?(.*)$/u
// unit letters in front look like part marks (V5, F1), so only prefixes and R may lead
const LEADING_LETTER = /^([+-]?) ?([pnµumkKMGTR])(\d+)(?![.,\d]) ?(.*)$/u

function looksLikeExpression(folded: string): boolean {
  const withoutSigns = folded.replace(/^[+-]/u, '').replaceAll(/(\d[.,]?)[eE][+-]?\d+/gu, '$1')
  return /[*/^()+\-×·÷]/u.test(withoutSigns) || /(?<![A-Za-z])pi(?![A-Za-z])/u.test(withoutSigns)
}

function checked(si: number | Refused, numeral: Numeral, tail: string, quantity: Quantity): Reading {
  if (typeof si !== 'number') return si
  return acceptValue({ si, typed: numeral.typed, bare: tail === '' }, quantity)
}

/** 4n7: the letter is the point. Undefined when the text is not of that form. */
function readPointLetter(numeral: Numeral, rest: string, quantity: Quantity): Reading | undefined {
  const match = POINT_LETTER.exec(rest)
  if (!numeral.whole || !match) return undefined
  const [, letter = '', decimals = '', after = ''] = match
  const joined: Numeral = { ...numeral, digits: `${numeral.digits}.${decimals}`, whole: false }
  const shown = `${numeral.negative ? '-' : ''}${joined.digits}`
  const power = pointLetterPower(letter, quantity)
  const rule = QUANTITIES[quantity]
  if (power === undefined) {
    const unit = readUnit(shown, letter, quantity)
    if ('is' in unit) return unit
    const cure = `${shown} ${rule.prefixes.includes(letter) ? letter : ''}${rule.symbol}`
    return refuse('unknown-unit', `${letter} does not stand for the point; write ${cure}.`)
  }
  if (after !== '' && after !== rule.symbol && !rule.symbolsIn.includes(after)) return undefined
  return checked(numeralValue(joined, power), joined, letter, quantity)
}

function readLeadingLetter(folded: string, quantity: Quantity): Reading | undefined {
  const match = LEADING_LETTER.exec(folded)
  if (!match) return undefined
  const [, sign = '', letter = '', decimals = '', after = ''] = match
  const zero: Numeral = { negative: sign === '-', digits: '0', exponent: 0, whole: true, typed: folded, length: 0 }
  return readPointLetter(zero, `${letter}${decimals} ${after}`.trim(), quantity)
}

function notANumber(folded: string, quantity: Quantity): Refused {
  const rule = QUANTITIES[quantity]
  return refuse(
    'not-a-number',
    `“${quote(folded)}” is not a number; this field takes ${rule.word} such as ${rule.example}.`,
  )
}

function readFolded(folded: string, quantity: Quantity): Reading {
  const expression: Reading | undefined = looksLikeExpression(folded) ? { is: 'expression', text: folded } : undefined
  const head = readNumeral(folded)
  if (head === undefined) return expression ?? readLeadingLetter(folded, quantity) ?? notANumber(folded, quantity)
  if ('is' in head) return expression ?? head
  const { numeral, rest } = head
  const marked = expression ? undefined : readPointLetter(numeral, rest, quantity)
  if (marked) return marked
  const unit = readUnit(numeral.typed, rest, quantity)
  if (!('is' in unit)) return checked(numeralValue(numeral, unit.power), numeral, rest, quantity)
  // "10 b/s" and "12 dB/oct" hold a stroke but are no division
  return expression && unit.code === 'unknown-unit' && !/^db[^-+*^()]*$/iu.test(rest) ? expression : unit
}

/**
 * Reads one number in a field of a known quantity. Accepts 4.7n, 4n7, R47, 1k5 (IEC 60062), 4,7 nF, 0.0047uF, 1e-9, both
 * micro and both ohm signs, any minus sign and any space.
 * Returns the value in the SI base unit (°C for a temperature, degrees for an angle, the plain dB figure for a level,
 * a share of 1 for a fraction), `expression` for text that has to be calculated first, `empty`, or a refusal whose
 * message says what would be right. Never throws.
 * Source: IEC 60062 (`iec-60062`, from memory) for letters that stand for the point; the rest is this project's grammar.
 */
export function parseQuantity(text: string, quantity: Quantity): Reading {
  if (text.length > MAX_REMEMBERED_LENGTH) return readAnew(text, quantity)
  const ofQuantity = readings.get(quantity) ?? new Map<string, Reading>()
  const known = ofQuantity.get(text)
  if (known) return known
  const reading = readAnew(text, quantity)
  if (ofQuantity.size >= MOST_REMEMBERED) ofQuantity.clear()
  readings.set(quantity, ofQuantity.set(text, reading))
  return reading
}

/** Longest text a list may have. */
const MAX_LIST_LENGTH = MAX_LIST_ITEMS * (MAX_TEXT_LENGTH + 1)

const tooLong = ({ length }: string, most: number): Refused =>
  refuse('too-long', `That is ${length} characters; write at most ${most}.`)

/** The same few texts are read by every check of a line: what they say is remembered, short ones and not many. */
const readings = new Map<Quantity, Map<string, Reading>>()
const MAX_REMEMBERED_LENGTH = 32
const MOST_REMEMBERED = 500

function readAnew(text: string, quantity: Quantity): Reading {
  // before anything goes through it letter by letter
  if (text.length > 10 * MAX_TEXT_LENGTH) return tooLong(text, MAX_TEXT_LENGTH)
  const folded = foldText(text)
  if (folded === '') return { is: 'empty' }
  if (folded.length > MAX_TEXT_LENGTH) {
    return refuse('too-long', `That is ${folded.length} characters; write at most ${MAX_TEXT_LENGTH}.`)
  }
  return twoMeanings(folded) ?? readFolded(folded, quantity)
}

/**
 * Reads several numbers of one quantity separated by semicolons, "1;10;50". A trailing semicolon is ignored.
 * Returns `expression` with the whole text as soon as one item has to be calculated. Never throws.
 */
export function parseList(text: string, quantity: Quantity): ListReading {
  if (text.length > MAX_LIST_LENGTH) return tooLong(text, MAX_LIST_LENGTH)
  const items = text.split(';').map((item) => item.trim())
  if (items.at(-1) === '' && items.length > 1) items.pop()
  if (items.every((item) => foldText(item) === '')) return { is: 'empty' }
  if (items.length > MAX_LIST_ITEMS) {
    return refuse(
      'too-many',
      `That is ${items.length} numbers; write at most ${MAX_LIST_ITEMS}, separated by semicolons.`,
    )
  }
  const si: number[] = []
  let calculates = false
  for (const [index, item] of items.entries()) {
    const reading = parseQuantity(item, quantity)
    if (reading.is === 'refused')
      return items.length > 1 ? { ...reading, message: `Number ${index + 1}: ${reading.message}` } : reading
    if (reading.is === 'empty') {
      return refuse('gap-in-list', `Number ${index + 1} is missing; write one number between each two semicolons.`)
    }
    if (reading.is === 'expression') calculates = true
    else si.push(reading.si)
  }
  return calculates ? { is: 'expression', text: items.join(';') } : { is: 'values', si }
}

const FLAGS: Readonly<Record<string, boolean>> = {
  true: true,
  yes: true,
  on: true,
  false: false,
  no: false,
  off: false,
}

/** Reads true/false, yes/no or on/off in any case. Never throws. */
export function parseFlag(text: string): FlagReading {
  const folded = foldText(text).toLowerCase()
  if (folded === '') return { is: 'empty' }
  const on = Object.hasOwn(FLAGS, folded) ? FLAGS[folded] : undefined
  if (on === undefined) return refuse('not-a-flag', `“${quote(folded)}” is neither; write true or false.`)
  return { is: 'flag', on }
}
