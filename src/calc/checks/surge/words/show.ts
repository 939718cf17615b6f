/** How the surge check prints its numbers. */
import { formatEstimate, formatQuantity } from '../../../quantity/format.ts'
import type { Quantity } from '../../../quantity/quantity.ts'

export const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)
export const V = (si: number): string => show(si, 'voltage')
export const A = (si: number): string => show(si, 'current')
export const F = (si: number): string => show(si, 'capacitance')
/** What comes at a part is brought up, in every sentence and figure alike. */
export const comes = (si: number, quantity: Quantity): string => formatEstimate(si, quantity, 'least')
export const volts = (si: number): string => comes(si, 'voltage')
export const share = (frac: number): string => comes(frac, 'fraction')
export const percent = (frac: number): string => show(frac, 'fraction')
