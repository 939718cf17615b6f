/** A table typed column by column in one text each: what stands between two semicolons is one entry, which may stay empty. */
import type { LevelUnit } from './quantity/level-unit.ts'
import type { Quantity } from './quantity/quantity.ts'

/**
 * Each entry is one of the words, or a number of the quantity where there is one; any text where there are neither words
 * nor a quantity. `min` and `max` in SI units.
 */
export type ColumnType = {
  readonly is: 'column'
  readonly words: readonly string[]
  readonly quantity?: Quantity
  readonly min: number
  readonly max: number
  readonly example: string
}

/** One entry: nothing, a word, or a number in SI units (a level keeps the unit it was typed in). */
export type ColumnEntry =
  | { readonly is: 'none' }
  | { readonly is: 'word'; readonly word: string }
  | { readonly is: 'number'; readonly si: number; readonly unit?: LevelUnit }
