/** Addresses as a stranger, a broken link or an attacker writes them. */
import type { Check, Input } from '../../../src/calc/types.ts'
import { damaged, rubbish } from './expressions.ts'
import type { Chance } from './random.ts'

const ENDS = [
  '%',
  '%zz',
  '%00',
  '%C0%AE',
  '%ED%A0%80',
  '%F0%9F%98%80',
  '+',
  '&',
  '&&',
  '=',
  '?',
  '#',
  '/',
  '//',
  '../',
  '\\',
] as const
const FIRM = [
  '0',
  '1',
  '50',
  '1e-12',
  '1e300',
  '-1',
  '10n',
  '4.7u',
  '1k',
  '100M',
  '0.2',
  '20 %',
  'true',
  'false',
  '',
  ' ',
  '1;2;3',
  '10;',
] as const

/** What a field takes as it is, most often near what it asks for, at its ends as well. */
function textFor(input: Input, by: Chance, calm: boolean): string {
  if (!calm && by.happens(0.15)) return rubbish(by)
  if (!calm && by.happens(0.1)) return damaged(by)
  if (input.type.is === 'choice' && (calm || by.happens(0.9))) return by.pick(input.type.options).value
  if (input.type.is === 'flag' && (calm || by.happens(0.9))) return by.pick(['true', 'false'])
  if (input.type.is === 'number' && (calm || by.happens(0.7))) {
    const { min, max } = input.type
    const low = min > 0 ? Math.log10(min) : -12
    const high = max > 0 ? Math.log10(Math.min(max, 1e12)) : 0
    const one = () => (by.happens(0.1) ? by.pick([min, max]) : 10 ** (low + (high - low) * by.next())).toExponential(3)
    return input.type.many === true && by.happens(0.3) ? [one(), one(), one()].join(';') : one()
  }
  if (calm && input.type.is === 'tolerance') return by.pick(['0 %', '20 %', '+80/-20 %', '0.1'])
  if (calm && input.type.is === 'level')
    return `${Math.round(20 + 100 * by.next())} ${by.pick(['dBµV', 'dBm', 'dBµA', ''])}`
  return by.pick(FIRM)
}

/** The hash of a check with many of its fields filled in, and now and then something damaged in it. */
export function checkAddress(check: Check, by: Chance): string {
  const full = by.next()
  // half of them could be meant: those go all the way to an answer
  const calm = by.happens(0.5)
  const pairs = check.inputs
    .filter(() => by.happens(full))
    .map((input) => `${input.key}=${encodeURIComponent(textFor(input, by, calm).toWellFormed())}`)
  if (by.happens(0.2))
    pairs.push(`${by.pick(['__proto__', 'constructor', 'hasOwnProperty', 'b.x', 'é'])}=${by.pick(FIRM)}`)
  if (by.happens(0.1)) pairs.push(...pairs.slice(0, 3))
  const hash = `#/check/${check.id}?${pairs.join('&')}`
  if (!by.happens(0.2)) return hash
  const at = by.whole(hash.length)
  return hash.slice(0, at) + by.pick(ENDS) + hash.slice(at)
}

/** Any other hash. */
export function wildAddress(by: Chance): string {
  const steps = Array.from({ length: by.whole(8) }, () =>
    by.pick([
      'ask',
      'check',
      'log',
      'notes',
      'connector',
      'contact',
      'window',
      '',
      '.',
      '..',
      by.pick(ENDS),
      rubbish(by),
    ]),
  )
  return `#/${steps.join('/')}${by.happens(0.4) ? `?${rubbish(by)}` : ''}`
}
