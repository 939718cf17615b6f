/** Photos and measured files on the disk, one at a time. Every function fails with a `StoreError` and nothing else. */
import { type Desk, readKeys, readOne } from '../db.ts'
import { restorePhoto } from '../photos.ts'
import { isRecord } from '../plain.ts'
import { restoreTrace } from '../traces.ts'
import type { Attached } from './attached.ts'

/** Where one stands. */
export type AttachedKey = { readonly is: Attached['is']; readonly owner: string; readonly id: string }

export const STORE_OF = { photo: 'photos', trace: 'traces' } as const

const TYPES = ['photo', 'trace'] as const

/** One as a text: the same for the same place only. */
export const nameOf = ({ is, owner, id }: AttachedKey): string => `${is} ${owner} ${id}`

export const keyOf = ({ is, record }: Attached): AttachedKey => ({ is, owner: record.owner, id: record.id })

/** All of these owners, photos first, in one order on every device. */
export async function attachedKeys(owners: ReadonlySet<string>): Promise<readonly AttachedKey[]> {
  const all = await Promise.all(TYPES.map(async (is) => keysIn(is, await readKeys(STORE_OF[is]))))
  return all.flat().filter(({ owner }) => owners.has(owner))
}

const keysIn = (is: Attached['is'], keys: readonly IDBValidKey[]): readonly AttachedKey[] =>
  keys.flatMap((key): AttachedKey[] => {
    const [owner, id] = Array.isArray(key) ? key : []
    return typeof owner === 'string' && typeof id === 'string' ? [{ is, owner, id }] : []
  })

/** Undefined where it is gone, or damaged. */
export async function readAttachedAt({ is, owner, id }: AttachedKey): Promise<Attached | undefined> {
  const raw = await readOne(STORE_OF[is], [owner, id])
  const photo = is === 'photo' ? restorePhoto(raw) : undefined
  if (photo !== undefined) return { is: 'photo', record: photo }
  const trace = is === 'trace' ? restoreTrace(raw) : undefined
  return trace && { is: 'trace', record: trace }
}

/** What was added beside a complaint, and the measured files that made room. */
export type AddedBeside = { readonly added: readonly AttachedKey[]; readonly gone: readonly unknown[] }

/**
 * Puts these beside what is here, which stays. A line keeps one measured file for each use: with `makesRoom` that of the
 * file takes the place of the one that is here, otherwise it is left out.
 */
export async function addBeside(desk: Desk, all: readonly Attached[], makesRoom: boolean): Promise<AddedBeside> {
  const added: AttachedKey[] = []
  const gone: unknown[] = []
  for (const one of all) {
    const { record } = one
    if ((await desk.get(STORE_OF[one.is], [record.owner, record.id])) !== undefined) continue
    if (one.is === 'trace') {
      const rivals = (await desk.ownedBy('traces', record.owner)).filter(
        (raw) => restoreTrace(raw)?.role === one.record.role,
      )
      if (rivals.length > 0 && !makesRoom) continue
      for (const raw of rivals) {
        gone.push(raw)
        if (isRecord(raw)) await desk.remove('traces', [record.owner, String(raw['id'])])
      }
    }
    await desk.put(STORE_OF[one.is], record)
    added.push(keyOf(one))
  }
  return { added, gone }
}

/** Where every photo and measured file stands. */
export async function placesOf(desk: Desk): Promise<readonly AttachedKey[]> {
  const all = await Promise.all(TYPES.map(async (is) => keysIn(is, await desk.keys(STORE_OF[is]))))
  return all.flat()
}

/** Whether one of these was put there since `addBeside`, and its owner is lost when that is taken back. */
export function isBesideSince(
  places: readonly AttachedKey[],
  { added }: AddedBeside,
  lostOwners: ReadonlySet<string>,
): boolean {
  const known = new Set(added.map(nameOf))
  return places.some((one) => lostOwners.has(one.owner) && !known.has(nameOf(one)))
}

/** Takes back what `addBeside` did. */
export async function takeBeside(desk: Desk, { added, gone }: AddedBeside): Promise<void> {
  for (const { is, owner, id } of added) await desk.remove(STORE_OF[is], [owner, id])
  for (const raw of gone) await desk.put('traces', raw)
}
