/** How the surge check prints its numbers. */
import { formatQuantity } from '../../../quantity/format.ts'
import type { Quantity } from '../../../quantity/quantity.ts'

export const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)
export const V = (si: number): string => show(si, 'voltage')
export const A = (si: number): string => show(si, 'current')
export const F = (si: number): string => show(si, 'capacitance')
export const percent = (frac: number): string => show(frac, 'fraction')
