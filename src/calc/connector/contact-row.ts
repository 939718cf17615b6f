/** A row of the schedule: one contact, what is proposed, what was chosen, and what counts. */
import type { Line, Topology, Verdict } from '../types.ts'
import type { Build } from './build.ts'
import type { Choice } from './choice.ts'
import type { OpenAnswer } from './contact-line.ts'
import type { DecidedContact } from './decided.ts'
import type { ConnectorFinding } from './finding.ts'
import type { SuppressorAdvice } from './place.ts'
import type { Together } from './plate/judge.ts'
import type { Contact } from './types.ts'

/** A part for one contact; an inductor alone has no capacitance. */
export type ContactPart = {
  readonly topology: Topology
  /** of one capacitor, as marked */
  readonly valueF?: number
  readonly inductanceH?: number
}

/** A decided part as it is chosen or named: no capacitor, no value of one. */
export const contactPartOf = ({
  topology,
  capacitanceF,
  inductanceH,
}: NonNullable<DecidedContact['part']>): ContactPart => ({
  topology,
  ...(capacitanceF > 0 ? { valueF: capacitanceF } : {}),
  ...(inductanceH === undefined ? {} : { inductanceH }),
})

/** What the bounds of one contact propose, whatever the user chose. */
export type Proposal = {
  readonly part: ContactPart
  readonly verdict: Verdict
  /** the window it was taken from, as marked; no most = no ceiling known */
  readonly leastF?: number
  readonly mostF?: number
  readonly why: string
}

export type ContactRow = {
  readonly contact: Contact
  readonly line?: Line
  readonly decided: DecidedContact
  readonly verdict?: Verdict
  /** the answer in one sentence */
  readonly headline: string
  /** the fact that would decide it */
  readonly needs?: string
  readonly why: string
  readonly findings: readonly ConnectorFinding[]
  readonly proposal?: Proposal
  readonly choice?: Choice
  /** what is left of its loss while all contacts are driven in the shared bond */
  readonly together?: Together
  /** the value it would have alone, where the shared bond asked for another */
  readonly aloneF?: number
  /** what can be built of its capacitor */
  readonly build?: Build
  /** where its parts go, in words */
  readonly place?: string
  readonly suppressor?: SuppressorAdvice
  /** a capacitor its signal stands, for a contact that would be a hole in the wall */
  readonly offer?: ContactPart
  /** why nothing may be fitted yet, though the figures stand */
  readonly waits?: string
}

/** A row with the answers it was made from: what grouping and the shared bond work on. */
export type Asked = {
  readonly row: ContactRow
  /** the window as proposed, and as chosen where something was */
  readonly open?: OpenAnswer
  readonly judged?: OpenAnswer
}
