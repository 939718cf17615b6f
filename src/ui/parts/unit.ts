import { QUANTITIES } from '../../calc/quantity/quantity.ts'
import type { Input } from '../../calc/types.ts'

/** A share is typed as 0.2 or as 20 %: a bare sign of percent beside 0.2 would say something else. */
const SHARE = '0–1'

/** The unit a field stands in, as it is written beside it; empty for a plain number. */
export function unitOf({ type }: Input): string {
  if (type.is === 'tolerance') return SHARE
  if (type.is === 'level') return QUANTITIES.level.symbol
  if (type.is !== 'number') return ''
  return type.quantity === 'fraction' ? SHARE : QUANTITIES[type.quantity].symbol
}

/** Whether the text ends in a unit itself: "10 nF" needs no F beside it. */
export function isUnitSaid(text: string, unit: string): boolean {
  const said = text.trim()
  return unit === SHARE ? said.includes('%') : unit === QUANTITIES.level.symbol ? /dB/i.test(said) : said.endsWith(unit)
}
