/**
 * The single gate for anything stored or imported.
 * Whatever comes in, a valid complaint comes out; what this version does not understand is kept aside, not dropped.
 */
import type { Answers } from '../guide/types.ts'
import { COMPLAINT_SCHEMA, type Complaint, type Kept, newId, type SavedCheck } from './complaint.ts'
import { entriesOf, isRecord, plain } from './plain.ts'
import { isCheckId } from './restore-ids.ts'
import { type Keep, restoreLine } from './restore-line.ts'

/** `stored`: read back from this device. `import`: from a file or another person, so no safety gate is taken over. */
export type Provenance = 'stored' | 'import'

const KNOWN_KEYS = new Set<string>([
  'id',
  'schemaVersion',
  'guideVersion',
  'title',
  'note',
  'createdAt',
  'updatedAt',
  'deletedAt',
  'isDemo',
  'answers',
  'lines',
  'checks',
  'kept',
])

const isTime = (value: unknown): value is string =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d/.test(value) && Number.isFinite(Date.parse(value))
const isText = (value: unknown): value is string => typeof value === 'string'
const isId = (value: unknown): value is string => typeof value === 'string' && /^[\w-]{1,64}$/.test(value)
const isVersion = (value: unknown): value is number => Number.isSafeInteger(value) && Number(value) >= 0
const isFlag = (value: unknown): value is boolean => typeof value === 'boolean'

/** Takes `raw[key]` if it fits; otherwise keeps it aside and takes the fallback. */
function field<T>(
  raw: Record<string, unknown>,
  key: string,
  fits: (value: unknown) => value is T,
  or: T,
  keep: Keep,
): T {
  const value = raw[key]
  if (fits(value)) return value
  if (value !== undefined) keep(key, value)
  return or
}

function restoreAnswers(raw: unknown, keep: Keep): Answers {
  if (!isRecord(raw)) {
    if (raw !== undefined) keep('answers', raw)
    return {}
  }
  const good: [string, string][] = []
  for (const [node, option] of entriesOf(raw)) {
    if (isText(option) && node !== '__proto__') good.push([node, option])
    else keep(`answers.${node}`, option)
  }
  return Object.fromEntries(good)
}

function restoreChecks(raw: unknown, keep: Keep): readonly SavedCheck[] {
  return listOf(raw, 'checks', keep).flatMap((item, index) => {
    const saved = restoreCheck(item)
    if (saved !== undefined) return [saved]
    keep(`checks.${index}`, item)
    return []
  })
}

function restoreCheck(raw: unknown): SavedCheck | undefined {
  if (!isRecord(raw) || !isCheckId(raw['check'])) return undefined
  const { check, address, lineId } = raw
  if ((address !== undefined && !isText(address)) || (lineId !== undefined && !isId(lineId))) return undefined
  if (address === undefined && lineId === undefined) return undefined
  return { check, ...(address === undefined ? {} : { address }), ...(lineId === undefined ? {} : { lineId }) }
}

/** A list, or the empty list with the odd value kept aside. */
function listOf(raw: unknown, at: string, keep: Keep): readonly unknown[] {
  if (Array.isArray(raw)) return raw
  if (raw !== undefined) keep(at, raw)
  return []
}

function keptBefore(raw: unknown): Kept[] {
  if (!Array.isArray(raw)) return raw === undefined ? [] : [{ at: 'kept', value: plain(raw) }]
  return raw.map((item: unknown, index) =>
    isRecord(item) && isText(item['at']) && 'value' in item
      ? { at: item['at'], value: plain(item['value']) }
      : { at: `kept.${index}`, value: plain(item) },
  )
}

function restoreRecord(raw: Record<string, unknown>, from: Provenance): Complaint {
  const kept = keptBefore(raw['kept'])
  const keep: Keep = (at, value) => kept.push({ at, value: plain(value) })
  const takeBack = <T>(at: string, read: (value: unknown) => T | undefined): T | undefined => {
    const index = kept.findIndex((item) => item.at === at && read(item.value) !== undefined)
    return index < 0 ? undefined : read(kept.splice(index, 1)[0]?.value)
  }
  for (const [key, value] of entriesOf(raw)) if (!KNOWN_KEYS.has(key)) keep(key, value)
  const createdAt = field(raw, 'createdAt', isTime, new Date().toISOString(), keep)
  const deletedAt = raw['deletedAt']
  if (deletedAt !== undefined && !isTime(deletedAt)) keep('deletedAt', deletedAt)
  const schemaVersion = field(raw, 'schemaVersion', isVersion, COMPLAINT_SCHEMA, keep)
  const usedIds = new Set<string>()
  return {
    id: field(raw, 'id', isId, newId(), keep),
    // A complaint written by a newer version keeps that version's number, so that it can take its parts back.
    schemaVersion: Math.max(schemaVersion, COMPLAINT_SCHEMA),
    // minus zero would not survive being stored as JSON
    guideVersion: field(raw, 'guideVersion', isVersion, 0, keep) + 0,
    title: field(raw, 'title', isText, '', keep),
    note: field(raw, 'note', isText, '', keep),
    createdAt,
    updatedAt: field(raw, 'updatedAt', isTime, createdAt, keep),
    ...(isTime(deletedAt) ? { deletedAt } : {}),
    isDemo: field(raw, 'isDemo', isFlag, false, keep),
    answers: restoreAnswers(raw['answers'], keep),
    lines: listOf(raw['lines'], 'lines', keep).flatMap((item, index) => {
      const line = restoreLine(item, { at: `lines.${index}`, from, usedIds, keep, takeBack })
      return line === undefined ? [] : [line]
    }),
    checks: restoreChecks(raw['checks'], keep),
    kept,
  }
}

/**
 * A valid complaint from anything at all. Never throws. Restoring what was restored changes nothing.
 * With `import`, every line's safety gate goes back to `unknown`: it is answered at the aircraft, not in a file.
 */
export function restoreComplaint(raw: unknown, from: Provenance): Complaint {
  try {
    return restoreRecord(isRecord(raw) ? raw : { kept: [{ at: '', value: raw }] }, from)
  } catch (error) {
    // Only an object that fights back when read (a throwing getter) gets here; it cannot come from storage or a file.
    return restoreRecord({ kept: [{ at: '', value: `unreadable: ${String(error)}` }] }, from)
  }
}
