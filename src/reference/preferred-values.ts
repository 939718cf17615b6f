/**
 * Preferred numbers of IEC 60063, one decade each (from memory), and the tolerance letters of IEC 60062.
 * Choosing the nearest one is the window's job (calc/bounds/preferred.ts).
 */
import { read } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

/** Six values a decade, for parts of ±20 %. */
export const E6: readonly number[] = [1, 1.5, 2.2, 3.3, 4.7, 6.8]

/** Twelve values a decade, for parts of ±10 %. */
export const E12: readonly number[] = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2]

/** A tolerance letter as marked on capacitors; `text` is how a field accepts it. */
export type ToleranceLetter = { readonly letter: string; readonly text: string; readonly note?: string }

export const TOLERANCE_LETTERS: readonly ToleranceLetter[] = [
  { letter: 'J', text: '5 %' },
  { letter: 'K', text: '10 %' },
  { letter: 'M', text: '20 %' },
  { letter: 'Z', text: '+80/-20 %' },
  {
    letter: 'P',
    text: '+100/-0 %',
    note: 'guaranteed minimum value; one of three lists gives +80/−0 %, the wider reading is kept',
  },
]

export const TOLERANCE_SOURCE: Citation = read('S27')
