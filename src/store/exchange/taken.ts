/** What stood there before a file came in, as it is kept until the next file: a record among the small ones. */
import { isRecord, itemsOf } from '../plain.ts'
import type { AddedBeside, AttachedKey } from './attached-store.ts'

/** Its name there. */
export const TAKEN = 'takenIn'

export const STORES = ['complaints', 'lines', 'connectors'] as const
type Store = (typeof STORES)[number]
export type Records = { readonly [K in Store]: readonly unknown[] }

/** One complaint as it stood before, as it was stored; `until`: the time of the last change the file brought. */
export type Before = {
  readonly id: string
  readonly until: string
  readonly records: Records
  readonly beside: AddedBeside
}
/** What was taken in last. */
export type Taken = { readonly at: string; readonly before: readonly Before[] }

function restoreBeside(raw: unknown): AddedBeside {
  if (!isRecord(raw)) return { added: [], gone: [] }
  const added = itemsOf(raw['added']).flatMap((one): AttachedKey[] => {
    if (!isRecord(one)) return []
    const { is, owner, id } = one
    const isKnown = is === 'photo' || is === 'trace'
    return isKnown && typeof owner === 'string' && typeof id === 'string' ? [{ is, owner, id }] : []
  })
  return { added, gone: itemsOf(raw['gone']) }
}

/** Reads it back from what may be damaged. */
export function restoreTaken(raw: unknown): Taken | undefined {
  if (!isRecord(raw) || typeof raw['at'] !== 'string') return undefined
  const before = itemsOf(raw['before']).flatMap((one): Before[] => {
    if (!isRecord(one) || typeof one['id'] !== 'string' || typeof one['until'] !== 'string') return []
    const held = isRecord(one['records']) ? one['records'] : {}
    const records = {
      complaints: itemsOf(held['complaints']),
      lines: itemsOf(held['lines']),
      connectors: itemsOf(held['connectors']),
    }
    return [{ id: one['id'], until: one['until'], records, beside: restoreBeside(one['beside']) }]
  })
  return { at: raw['at'], before }
}

/** Complaints and lines among these records that photos and measured files may belong to. */
export const ownersAmong = ({ complaints, lines }: Records): readonly string[] =>
  [...complaints, ...lines].flatMap((raw) => (isRecord(raw) && typeof raw['id'] === 'string' ? [raw['id']] : []))

/** Those of all that can still be taken back: what belongs to them is wanted again then. */
export const ownersTaken = (raw: unknown): readonly string[] =>
  restoreTaken(raw)?.before.flatMap(({ records }) => ownersAmong(records)) ?? []
