/** Figures as people read them. One place, so that every screen prints alike. */

import type { Field } from '../../calc/line/fields.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import type { Cell, Output, Quantity } from '../../calc/types.ts'

export function printed(si: number, quantity: Quantity, digits = 3): string {
  return Number.isFinite(si) ? formatQuantity(si, quantity, digits) : '–'
}

export function cellText(cell: Cell, quantity: Quantity | undefined, digits = 3): string {
  if (cell.is === 'si') return printed(cell.si, quantity ?? 'number', digits)
  return cell.is === 'word' ? cell.word : cell.why
}

/** A cell as its output is printed. */
export function outputText(cell: Cell, output: Output): string {
  return 'quantity' in output ? cellText(cell, output.quantity, output.digits) : cellText(cell, undefined)
}

/** The number and its unit apart, so that the unit can stand smaller. */
export function splitFigure(text: string): { readonly number: string; readonly unit: string } {
  const at = text.search(/[\s\u00a0\u202f](?=[^\d]*$)/)
  return at < 0 ? { number: text, unit: '' } : { number: text.slice(0, at), unit: text.slice(at + 1) }
}

/** What is assumed for an empty field, with its unit even where the descriptor wrote a bare number. */
export function assumedText(field: Field): string {
  const { input, value, assumed } = field
  if (input.type.is === 'number' && typeof value === 'number') return printed(value, input.type.quantity)
  return assumed?.text ?? ''
}
