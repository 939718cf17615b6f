/**
 * Photos and measured files in a file of complaints: behind the complaints, one on a line of its own, so that a file of
 * many megabytes is written and read piece by piece.
 */
import { type Photo, restorePhoto } from '../photos.ts'
import { isRecord } from '../plain.ts'
import { type KeptTrace, restoreTrace } from '../traces.ts'
import { fromBase64, toBase64 } from './base64.ts'
import type { Path } from './json-text.ts'
import { PHOTO_IN_FILE, TRACE_IN_FILE } from './schema.ts'
import { type Misfit, misfitOf } from './schema-check.ts'

export type Attached =
  | { readonly is: 'photo'; readonly record: Photo }
  | { readonly is: 'trace'; readonly record: KeptTrace }

/** Most bytes of one: photos are 300 kB at most, a measured file of 1,000,000 rows is packed from 16 MB. */
const MOST_BYTES = 32 * 1024 * 1024

/** The line that begins the list, as it is written. */
export const LIST_BEGINS = ' "attached": ['
export const LIST_ENDS = ' ]'

/** One as its line, without what stands between two of them. */
export function attachedLine({ is, record }: Attached): string {
  const { bytes, ...rest } = record
  return `  ${JSON.stringify({ is, ...rest, bytes: toBase64(bytes) })}`
}

const NO_BYTES = 'bytes in base 64 are expected here (letters, digits, + and /, filled up with =)'

/** One from what a file says, of the complaints and lines that are in it. Never throws. */
export function readAttached(raw: unknown, path: Path, owners: ReadonlySet<string>): Attached | Misfit {
  const is = isRecord(raw) ? raw['is'] : undefined
  if (!isRecord(raw) || (is !== 'photo' && is !== 'trace'))
    return { path, message: 'a record is expected here whose “is” is one of photo, trace' }
  const misfit = misfitOf(is === 'photo' ? PHOTO_IN_FILE : TRACE_IN_FILE, raw, path)
  if (misfit !== undefined) return misfit
  if (!owners.has(String(raw['owner'])))
    return { path: [...path, 'owner'], message: 'no complaint or line of this file has this id; take this entry out' }
  const text = String(raw['bytes'])
  const bytes = text.length > MOST_BYTES * 1.4 ? undefined : fromBase64(text)
  if (bytes === undefined || bytes.byteLength === 0) return { path: [...path, 'bytes'], message: NO_BYTES }
  const { is: _kind, ...rest } = raw
  const photo = is === 'photo' ? restorePhoto({ ...rest, bytes }) : undefined
  if (photo !== undefined) return { is: 'photo', record: photo }
  const trace = restoreTrace({ ...rest, bytes })
  return trace === undefined ? { path, message: 'this is no whole measured file' } : { is: 'trace', record: trace }
}

/** Complaints and lines that something may belong to. */
export const ownersIn = (
  complaints: readonly { readonly complaint: { readonly id: string; readonly lines: readonly { id: string }[] } }[],
): ReadonlySet<string> =>
  new Set(complaints.flatMap(({ complaint }) => [complaint.id, ...complaint.lines.map(({ id }) => id)]))
