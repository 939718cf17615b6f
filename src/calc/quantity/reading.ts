/** What reading a field can give, and how a refusal quotes what was typed. */

/** Text that was not taken, with a sentence that says what is wrong and what would be right. */
export type Refused = { readonly is: 'refused'; readonly code: RefusalCode; readonly message: string }

export type RefusalCode =
  | 'not-a-number'
  | 'ambiguous-number'
  | 'ambiguous-prefix'
  | 'prefix-not-used'
  | 'wrong-unit'
  | 'unknown-unit'
  | 'not-finite'
  | 'not-whole'
  | 'bare-above-one'
  | 'one-sided'
  | 'not-a-flag'
  | 'too-long'
  | 'too-many'
  | 'gap-in-list'
  | 'unknown-name'
  | 'not-allowed'
  | 'cannot-calculate'
  | 'calculator-missing'

/** A field read as one number (SI base unit; °C for temperatures, degrees for angles), or as a sum still to be worked out. */
export type Reading =
  | { readonly is: 'value'; readonly si: number }
  | { readonly is: 'expression'; readonly text: string }
  | { readonly is: 'empty' }
  | Refused

/** A field that takes several numbers separated by semicolons. */
export type ListReading =
  | { readonly is: 'values'; readonly si: readonly number[] }
  | { readonly is: 'expression'; readonly text: string }
  | { readonly is: 'empty' }
  | Refused

/** Shares lost and gained; both positive, `lowFrac` below 1. */
export type ToleranceReading =
  | { readonly is: 'tolerance'; readonly lowFrac: number; readonly highFrac: number }
  | { readonly is: 'empty' }
  | Refused

export type FlagReading = { readonly is: 'flag'; readonly on: boolean } | { readonly is: 'empty' } | Refused

/** Longest text one number or calculation may have. */
export const MAX_TEXT_LENGTH = 200

/** Builds a refusal. */
export function refuse(code: RefusalCode, message: string): Refused {
  return { is: 'refused', code, message }
}

/** The typed text, cut to a length that fits a message; half of a surrogate pair never survives the cut. */
export function quote(text: string): string {
  const signs = [...text]
  return signs.length > 32 ? `${signs.slice(0, 31).join('')}…` : text
}
