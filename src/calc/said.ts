/** What a check says of its answer: the sentence, its reasons, figures and pictures, or why there is none. */
import type { Picture } from './picture.ts'
import type { Cell, Verdict } from './terms.ts'
import type { Basis, Rung, SaidBound } from './types.ts'

export type Issue = { readonly key: string; readonly code: string; readonly message: string }

export type Finding = { readonly verdict: Verdict; readonly sentence: string }

export type Success = {
  readonly ok: true
  readonly verdict?: Verdict
  /** The sentence that answers what was asked: number and limit in it, the word of the verdict too (`sentenceOf`). */
  readonly headline: string
  /** the question is for a number: the number is the answer, and `ok` says only that it stands */
  readonly answers?: 'number'
  /** The one fact that would decide it: the key of its field, and how it is found out. */
  readonly needs?: { readonly key: string; readonly sentence: string }
  /** Reasons, worst first: limits named, what opens a shut window, dips, cautions that follow from the numbers. */
  readonly findings: readonly Finding[]
  readonly outputs: Readonly<Record<string, { readonly cell: Cell; readonly basis: Basis }>>
  readonly bounds: readonly SaidBound[]
  readonly rungs: readonly Rung[]
  readonly pictures: readonly Picture[]
  /** keys of fields that may stay empty in general but are needed for this answer */
  readonly asks?: readonly string[]
  /** ids of safety texts (reference/safety.ts) that fit this result */
  readonly cautions: readonly string[]
}

/** `lists`: what stands all the same, for the checks that would pass over it. */
export type Refused = {
  readonly ok: false
  readonly issues: readonly Issue[]
  readonly lists?: Readonly<Record<string, readonly number[]>>
}

export type Result = Refused | Success

/** A verdict short of a yes, with the sentence that says what care has to be taken of. */
export type Resting = { readonly verdict: 'marginal'; readonly headline: string }
