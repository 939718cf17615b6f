/** A complaint with all that belongs to it, and the form of it that leaves the device. */
import { SAFETY_QUESTIONS } from '../../guide/start.ts'
import type { Complaint } from '../complaint.ts'
import { type KeptConnector, restoreConnector } from '../connector.ts'
import { inOrder } from '../connector-steps.ts'
import type { Provenance } from '../gate.ts'
import { isRecord } from '../plain.ts'
import { restoreComplaint } from '../restore-complaint.ts'

export type Whole = { readonly complaint: Complaint; readonly connectors: readonly KeptConnector[] }

type Raw = Readonly<Record<string, unknown>>

const isSafety = (id: string): boolean => SAFETY_QUESTIONS.includes(id)

/** Without the answers to the safety questions, which are given at the aircraft. */
export function withoutSafety(complaint: Complaint): Complaint {
  const answers = Object.fromEntries(Object.entries(complaint.answers).filter(([id]) => !isSafety(id)))
  const events = complaint.events?.filter(({ evidence }) => !isSafety(evidence))
  return { ...complaint, answers, ...(events && { events }) }
}

/**
 * A complaint and its connectors from anything at all, in the one order of names that every export has; what was taken
 * out is left out. Never throws. Restoring what was restored changes nothing.
 */
export function restoreWhole(raw: unknown, from: Provenance): Whole {
  const { connectors: held, deletedAt: _gone, ...rest } = isRecord(raw) ? raw : { complaint: raw }
  const complaint = restoreComplaint(isRecord(raw) ? rest : raw, from)
  const all = (Array.isArray(held) ? held : []).map((one) => restoreConnector(one, from))
  const connectors = all
    .filter(({ removedAt }) => removedAt === undefined)
    .map((one) => ({ ...one, complaintId: complaint.id }))
    .sort(inOrder)
  return { complaint: from === 'import' ? withoutSafety(complaint) : complaint, connectors }
}

/** What is set aside is written where anything is. */
const withKept = ({ kept, ...rest }: Raw): Raw =>
  Array.isArray(kept) && kept.length === 0 ? rest : { ...rest, ...(kept === undefined ? {} : { kept }) }

/** Without what a line or a connector says for this device alone: whose it is, whether parts may be tried, its changes. */
function part(raw: Raw): Raw {
  const { complaintId: _whose, gate: _asked, removedAt: _gone, turn: _count, ...rest } = raw
  return withKept(rest)
}

/** The form of a complaint in a file: the same for everything that reads the same. */
export function formOf({ complaint, connectors }: Whole): Raw {
  const restored = restoreWhole({ ...complaint, connectors }, 'stored')
  const { kept, lines, turn: _count, ...record } = withoutSafety(restored.complaint)
  const form = {
    ...record,
    lines: lines.map((line) => part({ ...line })),
    connectors: restored.connectors.map((one) => part({ ...one })),
  }
  return kept.length === 0 ? form : { ...form, kept }
}
