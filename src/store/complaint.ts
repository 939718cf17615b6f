import type { CheckId } from '../calc/types.ts'
import type { Filled } from '../guide/fill-ins.ts'
import type { Event } from '../guide/investigation.ts'
import type { Answers } from '../guide/types.ts'
import type { Kept } from './gate.ts'
import type { KeptLine } from './line.ts'

/** Version of the complaint's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const COMPLAINT_SCHEMA = 7

/**
 * A check that was run for a complaint, never its result: on a line of the complaint, or (as it was kept earlier) on the
 * inputs of an address.
 */
export type SavedCheck = {
  readonly check: CheckId
  readonly address?: string
  readonly lineId?: string
  /** edition of the rules it was last judged by; absent = the first */
  readonly rules?: number
  /** variants compared with it: the texts that differ, as in an address (`b.<key>=…&c.<key>=…`) */
  readonly beside?: string
}

/** The texts of a complaint that are typed. */
export const COMPLAINT_TEXTS = ['title', 'aircraft', 'note'] as const
export type ComplaintText = (typeof COMPLAINT_TEXTS)[number]
export type ComplaintTexts = { readonly [K in ComplaintText]?: string }

export const PURPOSES = ['design'] as const
export type Purpose = (typeof PURPOSES)[number]

/** Another title, aircraft or note, typed in another window on the same text; kept until one of them is taken. */
export type ComplaintRival = { readonly field: ComplaintText; readonly text: string; readonly at: string }

/** One entry of the Log as it is stored: what was answered and typed, never what was computed from it. Times are ISO 8601 in UTC. */
export type ComplaintRecord = {
  readonly id: string
  readonly schemaVersion: number
  readonly guideVersion: number
  readonly title: string
  /** type and registration, as its user writes them */
  readonly aircraft?: string
  readonly note: string
  readonly createdAt: string
  readonly updatedAt: string
  /** how many changes it has had, whatever the clocks said; absent = none since they are counted */
  readonly turn?: number
  /** set while a deletion can still be undone */
  readonly deletedAt?: string
  readonly isDemo: boolean
  /** a new design, without anything to complain of; absent = a complaint */
  readonly purpose?: Purpose
  /** the newest answer to each item, as older windows read it; the events are the history */
  readonly answers: Answers
  readonly events?: readonly Event[]
  readonly checks: readonly SavedCheck[]
  /** tables filled in on the screen */
  readonly tables?: Filled
  readonly rivals?: readonly ComplaintRival[]
  readonly kept: readonly Kept[]
}

/** A complaint with its lines, which are records of their own; `updatedAt` is the newest of them all. */
export type Complaint = ComplaintRecord & { readonly lines: readonly KeptLine[] }

/** The parts of a complaint that may be changed after it was made. */
export type ComplaintPatch = Partial<
  Pick<Complaint, ComplaintText | 'answers' | 'events' | 'tables' | 'guideVersion' | 'checks'>
>

/** The complaint's own record, without its lines. */
export function recordOf({ lines: _lines, ...record }: Complaint): ComplaintRecord {
  return record
}

/** The later of two times. */
export const later = (a: string, b: string): string => (a > b ? a : b)

/** A complaint from its records; lines that were taken out stay out. */
export function assemble(record: ComplaintRecord, lines: readonly KeptLine[]): Complaint {
  const present = lines.filter(({ removedAt }) => removedAt === undefined)
  const ordered = [...present].sort((a, b) => a.order - b.order || a.id.localeCompare(b.id))
  const updatedAt = lines.reduce((at, line) => later(at, line.updatedAt), record.updatedAt)
  return { ...record, updatedAt, lines: ordered }
}
