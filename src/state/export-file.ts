/**
 * Complaints out to a file.
 *
 * `exportComplaint(id, wish)`, `exportAll(wish)`   the file, and in words what is not in it; undefined where there is no
 *                          such complaint. Rejects with an `AbortError` when it was stopped
 * `countAttached(id?)`     photos and measured files of one complaint, or of all
 */
import type { Progress } from '../calc/types.ts'
import { type Complaint, later } from '../store/complaint.ts'
import { attachedLine, LIST_BEGINS, LIST_ENDS, ownersIn } from '../store/exchange/attached.ts'
import { type AttachedKey, attachedKeys, readAttachedAt } from '../store/exchange/attached-store.ts'
import { writeSteps } from '../store/exchange/file.ts'
import type { Whole } from '../store/exchange/whole.ts'
import { StoreError } from '../store/trouble.ts'
import { wholeConnectors } from './connector-shelves.ts'
import { inSlices } from './in-slices.ts'
import { complaints, find } from './log.ts'
import { stopped } from './stopped.ts'

/** `parts`: its text, in pieces. `left`: in words, what is not in it. */
export type ExportFile = { readonly name: string; readonly parts: readonly string[]; readonly left: readonly string[] }

export type ExportWish = {
  /** false: without photos and measured files */
  readonly withAttached?: boolean
  readonly onProgress?: (doneFrac: number) => void
  readonly signal?: AbortSignal
}

/** A file name from a title: small letters, digits and dashes. */
function fileName(title: string): string {
  const words = title.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []
  return `${words.join('-').slice(0, 60) || 'complaint'}.stillpin.json`
}

const NO_SAFETY =
  'The answers to the safety questions are not in the file; they are asked anew at the aircraft.' as const
const NO_ATTACHED = 'Photos and measured files are not in the file; they stay on this device.' as const

async function keysOf(all: readonly Complaint[]): Promise<readonly AttachedKey[]> {
  try {
    return await attachedKeys(ownersIn(all.map((complaint) => ({ complaint }))))
  } catch (error) {
    // without storage there is none
    if (!(error instanceof StoreError)) throw error
    return []
  }
}

async function fileOf(all: readonly Complaint[], name: string, wish: ExportWish): Promise<ExportFile> {
  const { withAttached = true, onProgress = () => undefined, signal = new AbortController().signal } = wish
  const connectors = await wholeConnectors(all.map(({ id }) => id))
  const wholes = all.map((complaint): Whole => ({ complaint, connectors: connectors.get(complaint.id) ?? [] }))
  const keys = await keysOf(all)
  const taken = withAttached ? keys : []
  const share = 1 / (1 + taken.length)
  const tell = ({ doneFrac = 0 }: Progress) => onProgress(doneFrac * share)
  const text = await inSlices(writeSteps(wholes), tell, signal)
  const left = [...(taken.length < keys.length ? [NO_ATTACHED] : []), NO_SAFETY]
  const parts = taken.length === 0 ? [text] : [text.replace(/\n\}\n$/, ',\n'), `${LIST_BEGINS}\n`]
  let count = 0
  for (const key of taken) {
    if (signal.aborted) throw stopped()
    const one = await readAttachedAt(key)
    onProgress(++count * share)
    // gone meanwhile
    if (one !== undefined) parts.push(parts.length > 2 ? ',\n' : '', attachedLine(one))
  }
  if (taken.length > 0) parts.push(`\n${LIST_ENDS}\n}\n`)
  return { name, parts, left }
}

/** One complaint with its lines and connectors, photos and measured files as a file. */
export async function exportComplaint(id: string, wish: ExportWish = {}): Promise<ExportFile | undefined> {
  const complaint = find(id)
  return complaint && fileOf([complaint], fileName(complaint.title), wish)
}

/** Everything in the Log as one file. */
export function exportAll(wish: ExportWish = {}): Promise<ExportFile> {
  const all = complaints.value ?? []
  const newest = all.reduce((at, one) => later(at, one.updatedAt), '')
  return fileOf(all, `log-${newest.slice(0, 10) || 'empty'}.stillpin.json`, wish)
}

export type AttachedCount = { readonly photos: number; readonly traces: number }

/** How many photos and measured files one complaint has, or all of them. */
export async function countAttached(id?: string): Promise<AttachedCount> {
  const all = id === undefined ? (complaints.value ?? []) : [find(id) ?? []].flat()
  const keys = await keysOf(all)
  const photos = keys.filter(({ is }) => is === 'photo').length
  return { photos, traces: keys.length - photos }
}
