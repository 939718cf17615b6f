/** Figures as people read them. One place, so that every screen prints alike. */

import type { Field } from '../../calc/line/fields.ts'
import { formatEstimate, formatExact, formatQuantity, type LimitSide } from '../../calc/quantity/format.ts'
import type { Cell, Output, Quantity } from '../../calc/types.ts'

export function printed(si: number, quantity: Quantity, digits = 3): string {
  return Number.isFinite(si) ? formatQuantity(si, quantity, digits) : '–'
}

/** A limit: three digits, a most cut down and a least brought up. */
export function limitText(si: number, quantity: Quantity, side: LimitSide): string {
  return Number.isFinite(si) ? formatEstimate(si, quantity, side) : '–'
}

type Shown = { readonly quantity: Quantity; readonly digits?: number; readonly side?: LimitSide | undefined }

export function cellText(cell: Cell, shown: Shown | undefined): string {
  if (cell.is !== 'si') return cell.is === 'word' ? cell.word : cell.why
  const { quantity, digits, side } = shown ?? { quantity: 'number' }
  return side === undefined ? printed(cell.si, quantity, digits) : limitText(cell.si, quantity, side)
}

/** A cell as its output is printed. */
export function outputText(cell: Cell, output: Output): string {
  return cellText(cell, 'quantity' in output ? output : undefined)
}

/** The number and its unit apart, so that the unit can stand smaller. */
export function splitFigure(text: string): { readonly number: string; readonly unit: string } {
  const at = text.search(/[\s\u00a0\u202f](?=[^\d]*$)/)
  return at < 0 ? { number: text, unit: '' } : { number: text.slice(0, at), unit: text.slice(at + 1) }
}

/** What is assumed for an empty field, with its unit even where the descriptor wrote a bare number. */
export function assumedText(field: Field): string {
  const { input, value, assumed } = field
  if (input.type.is === 'number' && typeof value === 'number') return formatExact(value, input.type.quantity)
  return assumed?.text ?? ''
}
