/** Complaints made from what is under way; fetched when one is made. */
import { RULES_EDITION } from '../calc/edition.ts'
import type { CheckId, Line } from '../calc/types.ts'
import type { Filled } from '../guide/fill-ins.ts'
import type { Event } from '../guide/investigation.ts'
import type { Answers } from '../guide/types.ts'
import type { Complaint } from '../store/complaint.ts'
import { newComplaint } from '../store/new-complaint.ts'
import { add } from './complaints.ts'

/** A new complaint from the triage under way. */
export function createFromTriage(parts: {
  readonly title: string
  readonly answers: Answers
  readonly events?: readonly Event[]
  readonly tables?: Filled
  readonly guideVersion: number
  readonly line: Line
}): Complaint {
  const { line, ...rest } = parts
  return add(newComplaint({ ...rest, lines: [line] }))
}

/** A new complaint from a quick check, on its line. */
export function createFromCheck(parts: {
  readonly title: string
  readonly check: CheckId
  readonly line: Line
  /** variants compared with it */
  readonly beside?: string
}): Complaint {
  const { title, check, line, beside } = parts
  const saved = { check, lineId: line.id, rules: RULES_EDITION, ...(beside !== undefined && { beside }) }
  return add(newComplaint({ title, lines: [line], checks: [saved] }))
}
