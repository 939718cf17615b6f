/** The plain rows of a long file, read digit by digit: figures alone, nothing else on the line. */
import type { Divider } from './cells.ts'

/** Digits that a double holds exactly, and powers of ten that it holds exactly: the quotient is then rounded once. */
const MOST_DIGITS = 15
const TENS = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`))

const CODE = { zero: 48, nine: 57, minus: 45, plus: 43, point: 46, comma: 44, blank: 32, tab: 9 } as const

/** The two figures of the row read last. */
export type FastRow = { frequency: number; level: number }

let at = 0
let figure = 0

/**
 * Reads the frequency and the level of a line that holds figures in both columns and nothing that needs a second look;
 * false for any other line, which is then read cell by cell. The same numbers to the last digit.
 */
export function makeFastRow(q: {
  readonly divider: Divider
  readonly hasDecimalComma: boolean
  readonly frequencyAt: number
  readonly levelAt: number
}): (text: string, into: FastRow) => boolean {
  const dividerCode = q.divider.charCodeAt(0)
  const isBlank = q.divider === ' '
  const decimalCode = q.hasDecimalComma ? CODE.comma : CODE.point
  const last = Math.max(q.frequencyAt, q.levelAt)
  return (text, into) => {
    at = 0
    for (let column = 0; column <= last; column++) {
      skipBlanks(text, dividerCode)
      if (column === q.frequencyAt || column === q.levelAt) {
        if (!readFigure(text, decimalCode)) return false
        if (column === q.frequencyAt) into.frequency = figure
        else into.level = figure
      } else while (at < text.length && !isEnd(text.charCodeAt(at), dividerCode, isBlank)) at += 1
      const after = at
      skipBlanks(text, dividerCode)
      if (at >= text.length) return column === last
      if (text.charCodeAt(at) === dividerCode && !isBlank) at += 1
      else if (!isBlank || at === after) return false
    }
    // a word behind a figure may be its unit
    const next = text.charCodeAt(at)
    return at >= text.length || (next >= CODE.zero && next <= CODE.nine) || next === CODE.minus || next === CODE.point
  }
}

function skipBlanks(text: string, dividerCode: number): void {
  for (;;) {
    const code = text.charCodeAt(at)
    if (code !== CODE.blank && (code !== CODE.tab || dividerCode === CODE.tab)) return
    at += 1
  }
}

const isEnd = (code: number, dividerCode: number, isBlank: boolean): boolean =>
  code === dividerCode || (isBlank && code === CODE.tab)

/** Sign, digits, one decimal sign, digits; false where there is anything else or more than a double can hold. */
function readFigure(text: string, decimalCode: number): boolean {
  let code = text.charCodeAt(at)
  const isNegative = code === CODE.minus
  if (isNegative || code === CODE.plus) {
    at += 1
    code = text.charCodeAt(at)
  }
  let digits = 0
  let mantissa = 0
  let decimals = -1
  for (; ; at += 1, code = text.charCodeAt(at)) {
    if (code >= CODE.zero && code <= CODE.nine) {
      mantissa = mantissa * 10 + (code - CODE.zero)
      digits += 1
      if (decimals >= 0) decimals += 1
    } else if ((code === CODE.point || code === decimalCode) && decimals < 0) decimals = 0
    else break
  }
  if (digits === 0 || digits > MOST_DIGITS) return false
  const size = decimals > 0 ? mantissa / (TENS[decimals] as number) : mantissa
  figure = isNegative ? -size : size
  return true
}
