/** A documented case: what was told at first, what was tried, what it was, and how well that is known. */
import type { SourceId } from '../../../reference/sources.ts'
import type { SuspectId } from '../../investigation.ts'
import type { Answers } from '../../types.ts'

/** What kind of document tells of it. */
export type Telling = 'report' | 'press' | 'paper' | 'maker' | 'owner' | 'hearsay'

export const TELLING_WORDS: Readonly<Record<Telling, string>> = {
  report: 'report of an authority or a reporting scheme',
  press: 'press, on the report of an authority',
  paper: 'published paper',
  maker: 'notice of a maker, as quoted',
  owner: 'log of an owner or technician, one witness',
  hearsay: 'hearsay: told from memory, or quoted by somebody else',
}

export type CaseRecord = {
  /** id of its document in the sources */
  readonly source: SourceId
  readonly title: string
  readonly told: string
  /** what was tried, in order, and what came of it */
  readonly trail: readonly string[]
  readonly cause: string
  readonly cure: string
  /** what one takes along from it */
  readonly lesson: string
  readonly telling: Telling
  /** what the document does not settle */
  readonly open?: string
  /** suspects whose repair the record supports */
  readonly suspects: readonly SuspectId[]
  /** the answers of the guide that the document gives: what was told, and what was found */
  readonly answers: Answers
  /** answers among them that are worked out from it; the document does not tell of them, so that they make nothing alike */
  readonly inferred?: readonly string[]
  readonly words: readonly string[]
}
