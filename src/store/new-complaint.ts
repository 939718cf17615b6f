/** A complaint at its beginning; fetched by whatever makes one. */
import type { Line } from '../calc/types.ts'
import { COMPLAINT_SCHEMA, type Complaint, type ComplaintPatch, type Purpose } from './complaint.ts'
import { newId } from './ids.ts'
import { keptLine } from './line.ts'

/** A complaint made now, with the given parts filled in. */
export function newComplaint(
  parts: ComplaintPatch & {
    readonly isDemo?: boolean
    readonly purpose?: Purpose
    readonly lines?: readonly Line[]
  } = {},
): Complaint {
  const now = new Date().toISOString()
  const id = newId()
  return {
    schemaVersion: COMPLAINT_SCHEMA,
    guideVersion: 0,
    title: '',
    note: '',
    isDemo: false,
    answers: {},
    checks: [],
    kept: [],
    ...parts,
    lines: (parts.lines ?? []).map((line, order) => ({ ...keptLine(line, id, order), updatedAt: now })),
    id,
    createdAt: now,
    updatedAt: now,
  }
}
