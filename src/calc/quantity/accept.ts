/** What a quantity demands of a value beyond its unit: whole counts, shares of at most one. */
import type { Quantity } from './quantity.ts'
import { quote, type Reading, refuse } from './reading.ts'

const WHOLE_SLACK = 1e-9

/**
 * Accepts or refuses a value that was read or calculated. `bare`: it came without a percent sign, so that a share above
 * 1 is a percentage whose sign was forgotten. A count within a rounding error of a whole number becomes that number.
 * `si` must be finite. `typed` is quoted in the sentence.
 */
export function acceptValue(value: { si: number; typed: string; bare: boolean }, quantity: Quantity): Reading {
  const { si, bare } = value
  const typed = quote(value.typed)
  if (quantity === 'fraction' && bare && Math.abs(si) > 1) {
    return refuse('bare-above-one', `${typed} is more than the whole; did you mean ${typed} %?`)
  }
  if (quantity !== 'count') return { is: 'value', si: si === 0 ? 0 : si }
  const whole = Math.round(si)
  if (Math.abs(si - whole) <= WHOLE_SLACK * Math.max(1, Math.abs(si)))
    return { is: 'value', si: whole === 0 ? 0 : whole }
  return refuse('not-whole', `${typed} is not a whole number; write ${Math.floor(si)} or ${Math.ceil(si)}.`)
}
