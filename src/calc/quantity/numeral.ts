/** The digits of a typed number: sign, point or comma, grouping by spaces, exponent. Everything after them is left over. */
import { GROUP_SPACE } from './fold.ts'
import { quote, type Refused, refuse } from './reading.ts'

/** An exact decimal, `digits` (with "." as its point, no sign) times ten to the `exponent`. */
export type Numeral = {
  readonly negative: boolean
  readonly digits: string
  readonly exponent: number
  /** whether the digits are whole and carry no exponent, so that a letter may stand for the point (4n7) */
  readonly whole: boolean
  /** the number as it was typed, for messages */
  readonly typed: string
  /** how many characters of the folded text it took */
  readonly length: number
}

const SHAPE =
  /^([+-]?) ?((?:\d+(?:[.,]\d+)*(?:\u2009\d{3})*(?:[.,]\d+|\.|,$)?)|[.,]\d+(?:[.,]\d+)*)(?:[eE]([+-]?\d+))?/u
const EXPONENT_LIMIT = 99_999

function readDigits(body: string): { digits: string } | Refused {
  const joined = body.replaceAll(GROUP_SPACE, '')
  const points = joined.split('.').length - 1
  const commas = joined.split(',').length - 1
  const bare = joined.replaceAll(/[.,]/gu, '')
  if (points > 0 && commas > 0) {
    const last = Math.max(joined.lastIndexOf('.'), joined.lastIndexOf(','))
    const plain = `${joined.slice(0, last).replaceAll(/[.,]/gu, '')}.${joined.slice(last + 1)}`
    return refuse('ambiguous-number', `${joined} mixes a point and a comma; write ${plain} without grouping.`)
  }
  if (points + commas > 1) {
    const grouped = /^[1-9]\d{0,2}(?:([.,])\d{3})(?:\1\d{3})+$/u.test(joined)
    const cure = grouped ? `write ${bare} without grouping` : 'write it with one decimal point'
    return refuse('ambiguous-number', `${joined} has more than one point or comma; ${cure}.`)
  }
  if (body.includes(GROUP_SPACE) && !/^\d{1,3}(?:\u2009\d{3})+(?:[.,]\d*)?$/u.test(body)) {
    return refuse('ambiguous-number', `${body} is not grouped in threes; write it without spaces.`)
  }
  if (commas === 1 && /^[1-9]\d{0,2},\d{3}$/u.test(body)) {
    const asDecimal = joined.replace(',', '.')
    return refuse('ambiguous-number', `${joined} could be ${bare} or ${asDecimal}; write ${bare} or ${asDecimal}.`)
  }
  return { digits: joined.replace(',', '.') }
}

/**
 * Reads the number at the start of folded text. A comma is a decimal comma except where it could be grouping
 * ("1,000"), which is refused; groups of three may be set apart by typographic spaces, not by ordinary ones.
 * Returns the numeral and what follows it, a refusal, or undefined when the text does not start with a number.
 */
export function readNumeral(folded: string): { numeral: Numeral; rest: string } | Refused | undefined {
  const match = SHAPE.exec(folded)
  if (!match) return undefined
  const [typed, sign = '', body = '', exponentText] = match
  const read = readDigits(body)
  if ('is' in read) return read
  const exponent = Number(exponentText ?? '0')
  const numeral: Numeral = {
    negative: sign === '-',
    digits: read.digits,
    exponent: Math.max(-EXPONENT_LIMIT, Math.min(EXPONENT_LIMIT, exponent)),
    whole: /^\d+$/u.test(body) && exponentText === undefined,
    typed: quote(typed),
    length: typed.length,
  }
  const after = folded.slice(typed.length)
  const next = /^ (\d[\d.,]*)/u.exec(after)?.[1]
  if (next !== undefined) {
    const said = `“${quote(`${typed} ${next}`)}” has a space inside the number`
    return refuse('ambiguous-number', `${said}; write ${typed}${next}, or ${typed};${next} where several are taken.`)
  }
  return { numeral, rest: after.trim() }
}

/**
 * The nearest double to the numeral times ten to the `power`. Going through the decimal text rounds once, so that
 * 4.7 with a power of -9 is the same double as 4.7e-9. Refuses what is too large or too small to hold.
 */
export function numeralValue(numeral: Numeral, power: number): number | Refused {
  const magnitude = Number(`${numeral.digits}e${numeral.exponent + power}`)
  if (!Number.isFinite(magnitude)) {
    return refuse('not-finite', `${numeral.typed} is too large to calculate with; write a number below 1e308.`)
  }
  if (magnitude === 0 && /[1-9]/u.test(numeral.digits)) {
    return refuse('not-finite', `${numeral.typed} is too small to calculate with; write 0 or a number above 1e-308.`)
  }
  return numeral.negative && magnitude !== 0 ? -magnitude : magnitude
}
