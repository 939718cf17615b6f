import type { CheckId, Line } from '../calc/types.ts'
import type { Answers } from '../guide/types.ts'

/** Version of the complaint's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const COMPLAINT_SCHEMA = 1

/**
 * A check that was run for a complaint, never its result: on a line of the complaint, or (as it was kept earlier) on the
 * inputs of an address.
 */
export type SavedCheck = { readonly check: CheckId; readonly address?: string; readonly lineId?: string }

/** Something this version did not understand, kept where it was found so that nothing is lost. */
export type Kept = { readonly at: string; readonly value: unknown }

/** One entry of the Log: what was answered and typed, never what was computed from it. Times are ISO 8601 in UTC. */
export type Complaint = {
  readonly id: string
  readonly schemaVersion: number
  readonly guideVersion: number
  readonly title: string
  readonly note: string
  readonly createdAt: string
  readonly updatedAt: string
  /** set while a deletion can still be undone */
  readonly deletedAt?: string
  readonly isDemo: boolean
  readonly answers: Answers
  readonly lines: readonly Line[]
  readonly checks: readonly SavedCheck[]
  readonly kept: readonly Kept[]
}

/** The parts of a complaint that may be changed after it was made. */
export type ComplaintPatch = Partial<
  Pick<Complaint, 'title' | 'note' | 'answers' | 'guideVersion' | 'lines' | 'checks'>
>

/**
 * A random id of 32 hexadecimal digits.
 * Not crypto.randomUUID, which is missing where a page is opened over plain http on a local network.
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** An empty line with a fresh id; its safety gate is not answered. */
export function newLine(name = ''): Line {
  return { id: newId(), name, gate: 'unknown', trials: [], facts: {} }
}

/** A complaint made now, with the given parts filled in. */
export function newComplaint(parts: ComplaintPatch & { readonly isDemo?: boolean } = {}): Complaint {
  const now = new Date().toISOString()
  return {
    schemaVersion: COMPLAINT_SCHEMA,
    guideVersion: 0,
    title: '',
    note: '',
    isDemo: false,
    answers: {},
    lines: [],
    checks: [],
    kept: [],
    ...parts,
    id: newId(),
    createdAt: now,
    updatedAt: now,
  }
}
