/** Reads a capacitor tolerance: one share both ways, or one each way. */
import { foldText } from './fold.ts'
import { type Numeral, numeralValue, readNumeral } from './numeral.ts'
import { quote, type Refused, refuse, type ToleranceReading } from './reading.ts'

const ACCEPTED = 'write a tolerance such as 20 %, ±20 % or +80/-20 %'
const MAX_TOLERANCE_LENGTH = 60

type Side = { readonly sign: '' | '+' | '-'; readonly numeral: Numeral; readonly percent: boolean }

function readSide(text: string): { side: Side; rest: string } | Refused | undefined {
  const head = readNumeral(text)
  if (head === undefined || 'is' in head) return head
  const sign = text.startsWith('+') ? '+' : text.startsWith('-') ? '-' : ''
  const percent = head.rest.startsWith('%')
  return { side: { sign, numeral: head.numeral, percent }, rest: head.rest.slice(percent ? 1 : 0).trim() }
}

function share(side: Side, percent: boolean): number | Refused {
  const value = numeralValue({ ...side.numeral, negative: false }, percent ? -2 : 0)
  if (typeof value === 'number' && !percent && value > 1) {
    const typed = side.numeral.typed.trim()
    return refuse('bare-above-one', `${typed} is more than the whole part; did you mean ${typed} %?`)
  }
  return value
}

function build(low: number | Refused, high: number | Refused, folded: string): ToleranceReading {
  if (typeof low !== 'number') return low
  if (typeof high !== 'number') return high
  if (low >= 1) return refuse('not-allowed', `${quote(folded)} would leave no capacitance; write a loss below 100 %.`)
  return { is: 'tolerance', lowFrac: low, highFrac: high }
}

function bothSides(first: Side, second: Side, folded: string): ToleranceReading {
  if (first.sign === second.sign || first.sign === '' || second.sign === '') {
    return refuse('one-sided', `${quote(folded)} does not say which side is which; write it as +80/-20 %.`)
  }
  const percent = first.percent || second.percent
  const [high, low] = first.sign === '+' ? [first, second] : [second, first]
  const reading = build(share(low, percent), share(high, percent), folded)
  if (reading.is !== 'refused' || reading.code !== 'bare-above-one') return reading
  return refuse('bare-above-one', `${quote(folded)} is more than the whole part; did you mean ${quote(folded)} %?`)
}

/**
 * Reads "20 %", "±20 %", "0.2", "+100/-0 %", "-20/+80 %", "+80 -20 %" as the share lost (below 1) and the share gained.
 * A bare number above 1 is refused, and so is a sign on one side only. Never throws.
 */
export function parseTolerance(text: string): ToleranceReading {
  const folded = foldText(text)
  if (folded === '') return { is: 'empty' }
  const unknown = refuse('not-a-number', `“${quote(folded)}” is not a tolerance; ${ACCEPTED}.`)
  if (folded.length > MAX_TOLERANCE_LENGTH) return unknown
  const symmetric = /^(?:±|\+ ?\/ ?-|\+-) ?(?=[\d.,])/u.exec(folded)
  const first = readSide(symmetric ? folded.slice(symmetric[0].length) : folded)
  if (first === undefined) return unknown
  if ('is' in first) return first
  if (first.rest === '') {
    if (first.side.sign !== '') {
      return refuse('one-sided', `${quote(folded)} gives one side only; ${ACCEPTED}.`)
    }
    const both = share(first.side, first.side.percent)
    return build(both, both, folded)
  }
  if (symmetric) return unknown
  const second = readSide(first.rest.replace(/^[/,] ?/u, ''))
  if (second === undefined) return unknown
  if ('is' in second) return second
  return second.rest === '' ? bothSides(first.side, second.side, folded) : unknown
}
