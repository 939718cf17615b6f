/** Texts that are written in two ways, and would be read in the one that was not meant. */
import { quote, type Refused, refuse } from './reading.ts'

/** The end of a power of ten that lost its raised sign: 1×10-9. */
const LOST_POWER = /^([\d.,]+) ?[×x] ?10 ?([-−]) ?(\d+)(?! ?[\d.,a-zA-Z]*[*/×^(])(.*)$/u
/** Two plain numbers with one unit behind both: a span, or a difference whose first number has no unit. */
const SPAN = /^([\d.,]+) ?[-−] ?([\d.,]+) ?([A-Za-zµΩ°%][A-Za-zµΩ°%]*)$/u
/** Megohms were written with a large M, and milliohms are hardly written out. */
const SMALL_MOHM = /^[-+]?[\d.,]+ ?mohms?$/u

/** Why a text (folded) is not taken although it could be read, and what to write; undefined where it has one meaning. */
export function twoMeanings(text: string): Refused | undefined {
  const power = LOST_POWER.exec(text)
  if (power) {
    const [, number = '', , exponent = '', rest = ''] = power
    return refuse(
      'ambiguous-number',
      `“${quote(text)}” could be a power of ten or a difference; write ${number}e-${exponent}${rest}, or ${number}*10 - ${exponent}${rest}.`,
    )
  }
  const span = SPAN.exec(text)
  if (span) {
    const [, from = '', to = '', unit = ''] = span
    return refuse(
      'ambiguous-number',
      `“${quote(text)}” could be a span or a difference; write one value such as ${from} ${unit}, or ${from} ${unit} - ${to} ${unit} for the difference.`,
    )
  }
  if (!SMALL_MOHM.test(text)) return undefined
  const number = text.replace(/ ?mohms?$/u, '')
  return refuse('ambiguous-prefix', `“${quote(text)}” could be milli or mega; write ${number} mΩ or ${number} MΩ.`)
}
