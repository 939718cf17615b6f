/** One spelling for what people type in several: minus signs, spaces, micro and ohm signs, superscript exponents. */

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const TIMES_TEN = /\s*[×·]\s*10(?:\^([+-]?\d+)|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+))/gu

function plainExponent(superscript: string): string {
  return [...superscript]
    .map((sign) => (sign === '⁻' ? '-' : sign === '⁺' ? '+' : String(SUPERSCRIPTS.indexOf(sign))))
    .join('')
}

/** Stands between groups of three digits where a typographic space did; an ordinary space there may part two numbers. */
export const GROUP_SPACE = '\u2009'

/**
 * Typed text with its typographic variants folded: U+2212 to "-", every space to " "
 * (except a no-break or thin one that groups digits), U+03BC to U+00B5,
 * U+2126 to U+03A9, "× 10⁻⁹" to "e-9"; trimmed. Changes no letter's case. Never throws.
 */
export function foldText(text: string): string {
  return text
    .replace(/[\u2212\u2010\u2011\u2013\uFE63\uFF0D]/gu, '-')
    .replace(/(?<=\d)[\u00A0\u2007\u2009\u202F](?=\d{3}(?!\d))/gu, GROUP_SPACE)
    .replace(/[\s\u200B\u2060\uFEFF]+/gu, (space) => (space === GROUP_SPACE ? GROUP_SPACE : ' '))
    .replace(/\u03BC/gu, '\u00B5')
    .replace(/\u2126/gu, '\u03A9')
    .replace(TIMES_TEN, (_, caret: string | undefined, raised: string | undefined) => {
      return `e${caret ?? plainExponent(raised ?? '')}`
    })
    .trim()
}
