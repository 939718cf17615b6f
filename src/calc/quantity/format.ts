/** Prints numbers with their prefix and unit. The only place where powers of ten turn into prefixes. */
import { PREFIX_POWER, QUANTITIES, type Quantity } from './quantity.ts'

const NO_BREAK_SPACE = '\u00A0'
const MINUS = '\u2212'
const FINEST_DECIBEL_DECIMALS = 3
const SUPERSCRIPTS = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹']

/** Decimal digits without a point, and the power of ten of the first of them. */
type Decimal = { readonly digits: string; readonly exponent: number }

function decimalOf(exponential: string): Decimal {
  const [mantissa = '0', exponent = '0'] = exponential.split('e')
  const digits = mantissa.replace('.', '').replace(/0+$/u, '')
  return { digits: digits === '' ? '0' : digits, exponent: Number(exponent) }
}

/** The digits with the point so many places right of the first one. */
function place(digits: string, shift: number): string {
  if (shift < 0) return `0.${'0'.repeat(-shift - 1)}${digits}`
  const whole = digits.slice(0, shift + 1).padEnd(shift + 1, '0')
  const decimals = digits.slice(shift + 1)
  return decimals === '' ? whole : `${whole}.${decimals}`
}

function raised(power: number): string {
  const digits = [...String(Math.abs(power))].map((digit) => SUPERSCRIPTS[Number(digit)] ?? '').join('')
  return power < 0 ? `⁻${digits}` : digits
}

/** Which prefix fits, or undefined when no prefix of the quantity brings the number between 1 and 1000. */
function prefixFor(exponent: number, quantity: Quantity): string | undefined {
  const { prefixes } = QUANTITIES[quantity]
  if (prefixes.length === 1) return exponent >= -4 && exponent < 6 ? '' : undefined
  const fits = (prefix: string) => {
    const shift = exponent - (PREFIX_POWER[prefix] ?? 0)
    return shift >= 0 && shift < 3
  }
  return prefixes.find(fits)
}

type Style = { readonly space: string; readonly minus: string; readonly powerOfTen: (power: number) => string }

const SHOWN: Style = { space: NO_BREAK_SPACE, minus: MINUS, powerOfTen: (power) => `×10${raised(power)}` }
const TYPED: Style = { space: ' ', minus: '-', powerOfTen: (power) => `e${power}` }

function assemble(negative: boolean, decimal: Decimal, quantity: Quantity, style: Style): string {
  const { symbol } = QUANTITIES[quantity]
  const exponent = decimal.exponent + (quantity === 'fraction' ? 2 : 0)
  const isZero = decimal.digits === '0'
  const isWholeCount = quantity === 'count' && exponent >= decimal.digits.length - 1 && exponent < 21
  const prefix = isZero || isWholeCount ? '' : prefixFor(exponent, quantity)
  const number =
    prefix === undefined
      ? `${place(decimal.digits, 0)}${style.powerOfTen(exponent)}`
      : place(decimal.digits, isZero ? 0 : exponent - (PREFIX_POWER[prefix] ?? 0))
  const unit = `${prefix ?? ''}${symbol}`
  return `${negative && !isZero ? style.minus : ''}${number}${unit === '' ? '' : style.space}${unit}`
}

function assertFinite(si: number, quantity: Quantity): void {
  if (!Number.isFinite(si)) throw new RangeError(`expected a finite number for ${QUANTITIES[quantity].word}, got ${si}`)
}

const isDecibelLike = (quantity: Quantity): boolean =>
  quantity === 'decibel' || quantity === 'level' || quantity === 'slope'

function roundForShow(si: number, quantity: Quantity, digits: number): string {
  const size = Math.abs(si)
  if (quantity === 'count' && Number.isInteger(si)) return size.toExponential()
  const isDecibel = isDecibelLike(quantity)
  // a residue of rounding is no attenuation: 4e-16 dB prints as 0 dB
  const kept = isDecibel && size < 1 ? Number(size.toFixed(FINEST_DECIBEL_DECIMALS)) : size
  return kept.toExponential(digits - 1)
}

/**
 * A number with its unit for people to read: rounded to significant digits first, then given the prefix that fits the
 * rounded number (999 950 Hz at three digits is 1 MHz). Zeros after the point are dropped; a fraction prints as percent;
 * whole counts print in full; decibels go no finer than 0.001. Where no prefix of the quantity fits: 4.7×10⁻¹⁷ F.
 * `si`: SI base unit (°C, degrees, dB as they are). `digits`: 1 to 15.
 * Throws RangeError for NaN, an infinity or a digit count outside that range.
 * Example: formatQuantity(4.7e-9, 'capacitance') is "4.7 nF" with a no-break space.
 */
export function formatQuantity(si: number, quantity: Quantity, digits = 3): string {
  assertFinite(si, quantity)
  if (!Number.isInteger(digits) || digits < 1 || digits > 15) {
    throw new RangeError(`expected 1 to 15 significant digits, got ${digits}`)
  }
  return assemble(si < 0, decimalOf(roundForShow(si, quantity, digits)), quantity, SHOWN)
}

/** Which way a limit is rounded, so that who keeps what is printed keeps the limit. */
export type LimitSide = 'most' | 'least'

const ESTIMATE_DIGITS = 3
const FREQUENCY_DIGITS = 4
/** Past these digits binary arithmetic speaks, not the figure. */
const TRUE_DIGITS = 12

/** The leading digits of a size, cut off or brought up to the next: exponential notation. */
function towards(size: number, digits: number, up: boolean): string {
  const [mantissa = '0', exponent = '0'] = size.toExponential(TRUE_DIGITS - 1).split('e')
  const all = mantissa.replace('.', '')
  const isCut = /[1-9]/u.test(all.slice(digits))
  const head = Number(all.slice(0, digits)) + (up && isCut ? 1 : 0)
  return Number(`${head}e${Number(exponent) - digits + 1}`).toExponential()
}

/**
 * An estimate or a computed limit for people to read: three digits; a most is cut down and a least brought up, so that
 * what is printed lies inside the limit. Frequencies and rates keep four digits and are rounded to the nearest; decibels
 * go no finer than 0.001. `si` as for `formatQuantity`; typed values and figures of documents are `formatExact`.
 * Example: formatEstimate(4.809e-9, 'capacitance', 'most') is "4.8 nF" with a no-break space.
 */
export function formatEstimate(si: number, quantity: Quantity, side?: LimitSide): string {
  if (quantity === 'frequency' || quantity === 'bitRate') return formatQuantity(si, quantity, FREQUENCY_DIGITS)
  if (side === undefined || quantity === 'count') return formatQuantity(si, quantity, ESTIMATE_DIGITS)
  assertFinite(si, quantity)
  const up = (side === 'least') !== si < 0
  const size = Math.abs(si)
  const digits =
    isDecibelLike(quantity) && size > 0
      ? Math.min(ESTIMATE_DIGITS, Math.floor(Math.log10(size)) + 1 + FINEST_DECIBEL_DECIMALS)
      : ESTIMATE_DIGITS
  const rounded = digits >= 1 ? towards(size, digits, up) : (up ? 10 ** -FINEST_DECIBEL_DECIMALS : 0).toExponential()
  return assemble(si < 0, decimalOf(rounded), quantity, SHOWN)
}

/**
 * A figure that was typed or that a document prints, for people to read: nothing rounded away.
 * Example: formatExact(108.15e6, 'frequency') is "108.15 MHz".
 */
export const formatExact = (si: number, quantity: Quantity): string => formatQuantity(si, quantity, TRUE_DIGITS)

/**
 * Text for a field that `parseQuantity` reads back as the very same number: every digit kept, plain space and minus.
 * `si`: SI base unit; whole for a count. Throws RangeError for NaN or an infinity.
 * Example: printText(4.7e-9, 'capacitance') is "4.7 nF".
 */
export function printText(si: number, quantity: Quantity): string {
  assertFinite(si, quantity)
  return assemble(si < 0, decimalOf(Math.abs(si).toExponential()), quantity, TYPED)
}
