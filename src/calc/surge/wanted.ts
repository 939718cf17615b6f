/** What a surge still waits for, and what it cannot take: keys and numbers; the words are the check's. */
import type { Waveform } from '../../reference/waveforms.ts'

/** One missing thing: any one of these fields supplies it. */
export type Wanted = readonly [key: string, ...others: string[]]

export type Refusal =
  | { readonly code: 'no-level'; readonly key: string; readonly row: Waveform }
  | { readonly code: 'unknown-level'; readonly key: string; readonly row: Waveform; readonly levels: readonly number[] }
  | { readonly code: 'half-too-early'; readonly key: string; readonly halfSec: number; readonly peakSec: number }
  | { readonly code: 'too-steep'; readonly key: string }
  | { readonly code: 'outside-envelope'; readonly key: string; readonly lowHz: number; readonly highHz: number }
  | {
      readonly code: 'above-breakdown'
      readonly key: string
      readonly standoffV: number
      readonly breakdownV: number
    }
  | { readonly code: 'not-a-pair'; readonly key: string; readonly lineName: string }
  | { readonly code: 'both-levels'; readonly key: string }
  | { readonly code: 'no-bundle-level'; readonly key: string; readonly row: Waveform }

export type Waiting = { readonly is: 'missing'; readonly wanted: readonly Wanted[] }
export type Refusing = { readonly is: 'refused'; readonly refusal: Refusal }

export const refuse = (refusal: Refusal): Refusing => ({ is: 'refused', refusal })
