/** How findings of a whole connector name contacts and show figures. */
import { formatEstimate, formatQuantity, type LimitSide } from '../../quantity/format.ts'
import type { Basis, Quantity, Source, Step } from '../../types.ts'

export const show = (si: number, quantity: Quantity, side?: LimitSide): string => formatEstimate(si, quantity, side)
export const exact = (si: number, quantity: Quantity): string => formatQuantity(si, quantity, 4)

/** dB of a ratio ≥ 0; nothing at all is −400 dB. */
export const decibels = (ratio: number): number => 20 * Math.log10(Math.max(1e-20, ratio))

const NAMED = 6

/** "contact A", "contacts A, B and C", "contacts A, B, C, D, E, F and 12 more". */
export function contactsNamed(ids: readonly string[]): string {
  if (ids.length === 1) return `contact ${ids[0]}`
  const shown = ids.length > NAMED + 1 ? ids.slice(0, NAMED) : ids.slice(0, -1)
  const last = ids.length > NAMED + 1 ? `${ids.length - NAMED} more` : ids.at(-1)
  return `contacts ${shown.join(', ')} and ${last}`
}

export const DERIVED: Source = { id: 'derived', standing: 'derived' }
export const PRACTICE: Source = { id: 'practice', standing: 'practice' }

export const basisOf = (
  steps: readonly Step[],
  assumptions: readonly string[] = [],
  sources: Basis['sources'] = [DERIVED],
): Basis => ({ steps, assumptions, sources })

export const step = (formula: string, withNumbers: string, si: number, quantity: Quantity): Step => ({
  formula,
  withNumbers,
  si,
  quantity,
})
