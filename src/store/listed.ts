/**
 * A complaint as the Log lists it: of a record that is as it should be, what a list shows is read at once, and the rest
 * when it is first asked for. A Log of thousands is open before all of it has been through the gate.
 */
import type { Answers } from '../guide/types.ts'
import { assemble, type Complaint, later } from './complaint.ts'
import { flag, id, text, time } from './gate.ts'
import { restoreKeptLine } from './line.ts'
import { isRecord } from './plain.ts'
import { COMPLAINT_FIELDS, isBefore, restoreRecord, WITH_EVENTS } from './restore.ts'

/** What is read of a record at once; undefined where something in it needs the whole gate. */
type Head = Pick<Complaint, 'id' | 'title' | 'aircraft' | 'note' | 'createdAt' | 'updatedAt' | 'isDemo'> & {
  readonly raw: Readonly<Record<string, unknown>>
}

const isPlain = (raw: unknown): raw is Record<string, unknown> =>
  isRecord(raw) && Array.isArray(raw['kept']) && raw['kept'].length === 0

/** Reads a field on its own: nothing was set aside, so nothing is taken back and nothing is kept. */
const OWN = { from: 'stored', keep: () => undefined, takeBack: () => undefined, keptBelow: () => [] } as const

function headOf(raw: unknown): Head | undefined {
  if (!isPlain(raw) || isBefore(raw, WITH_EVENTS)) return undefined
  const [own, title, note] = [id(raw['id'], '', OWN), text(raw['title'], '', OWN), text(raw['note'], '', OWN)]
  const [createdAt, updatedAt] = [time(raw['createdAt'], '', OWN), time(raw['updatedAt'], '', OWN)]
  const [isDemo, aircraft] = [flag(raw['isDemo'], '', OWN), text(raw['aircraft'], '', OWN)]
  if (own === undefined || title === undefined || note === undefined || isDemo === undefined) return undefined
  if (createdAt === undefined || updatedAt === undefined) return undefined
  if (aircraft === undefined && raw['aircraft'] !== undefined) return undefined
  return { id: own, title, ...(aircraft === undefined ? {} : { aircraft }), note, createdAt, updatedAt, isDemo, raw }
}

/** Answers that are texts all through. */
function plainAnswers(raw: unknown): Answers | undefined {
  if (!isRecord(raw)) return undefined
  const isGood = ([key, value]: readonly [string, unknown]) => typeof value === 'string' && key !== '__proto__'
  return Object.entries(raw).every(isGood) ? (raw as Answers) : undefined
}

/** The complaint a line belongs to, and when it was changed last; undefined where it needs the whole gate. */
export function lineHeadOf(raw: unknown): { readonly complaintId: string; readonly updatedAt: string } | undefined {
  if (!isPlain(raw) || id(raw['id'], '', OWN) === undefined) return undefined
  const [complaintId, updatedAt] = [id(raw['complaintId'], '', OWN), time(raw['updatedAt'], '', OWN)]
  return complaintId === undefined || updatedAt === undefined ? undefined : { complaintId, updatedAt }
}

type Identity = {
  readonly id: string
  readonly complaintId: string | undefined
  /** when it was deleted, or removed from its complaint */
  readonly goneAt: string | undefined
}

/** Which record this is and whether it still stands; undefined where that needs the whole gate. */
export function identityOf(raw: unknown): Identity | undefined {
  if (!isPlain(raw)) return undefined
  const [own, complaintId] = [id(raw['id'], '', OWN), id(raw['complaintId'], '', OWN)]
  const gone = raw['deletedAt'] ?? raw['removedAt']
  const goneAt = time(gone, '', OWN)
  const isRead = own !== undefined && (goneAt !== undefined) === (gone !== undefined)
  return isRead && (complaintId !== undefined) === (raw['complaintId'] !== undefined)
    ? { id: own, complaintId, goneAt }
    : undefined
}

/** A complaint from what is stored of it, deleted ones aside. `rawLines`: its lines, as they are stored. */
export function listed(raw: unknown, rawLines: readonly unknown[]): Complaint | undefined {
  const whole = (): Complaint =>
    assemble(
      restoreRecord(raw),
      rawLines.map((line) => restoreKeptLine(line)),
    )
  const head = headOf(raw)
  if (head === undefined) {
    const complaint = whole()
    return complaint.deletedAt === undefined ? complaint : undefined
  }
  if (time(head.raw['deletedAt'], '', OWN) !== undefined) return undefined
  let known: Complaint | undefined
  const read = (): Complaint => {
    known ??= whole()
    return known
  }
  const { raw: record, ...own } = head
  const updatedAt = rawLines.reduce<string>((at, line) => later(at, lineHeadOf(line)?.updatedAt ?? at), own.updatedAt)
  const answers = plainAnswers(record['answers'])
  const complaint: Complaint = {
    ...own,
    updatedAt,
    get schemaVersion() {
      return read().schemaVersion
    },
    get guideVersion() {
      return read().guideVersion
    },
    get answers() {
      return answers ?? read().answers
    },
    get checks() {
      return read().checks
    },
    get kept() {
      return read().kept
    },
    get lines() {
      return read().lines
    },
  }
  // Fields a record may have or not.
  for (const key of COMPLAINT_FIELDS)
    if (!(key in complaint) && record[key] !== undefined)
      Object.defineProperty(complaint, key, { enumerable: true, get: () => read()[key] })
  return complaint
}
