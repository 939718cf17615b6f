/** What a field takes that reads a number, or several. */
import type { Quantity } from './quantity/quantity.ts'

export type NumberType = {
  readonly is: 'number'
  readonly quantity: Quantity
  readonly min: number
  readonly max: number
  readonly many?: true
  /** a level may be written as in a test category, "A3": the letters of the test sets it is the level of */
  readonly category?: string
  /** which figure of an alternating voltage is meant: one written as the other is refused */
  readonly volts?: 'peak' | 'rms'
}
