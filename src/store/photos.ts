/**
 * Photos kept with tests: records of a store of their own, so that no list of complaints ever reads them. Every function
 * fails with a `StoreError`; a full storage is told of by whoever adds the photo, since nothing else is affected by it.
 */
import { inOneGo } from './db.ts'
import { id, oneOf, positive, type Reader, readRecord, required, schema, type Table, text, time } from './gate.ts'
import { newId } from './ids.ts'
import { isRecord } from './plain.ts'

/** Version of a photo's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const PHOTO_SCHEMA = 1

export const PHOTO_TYPES = ['image/webp', 'image/jpeg'] as const
export type PhotoType = (typeof PHOTO_TYPES)[number]

/** What a photo is made of, whoever it belongs to. */
export type Picture = {
  readonly type: PhotoType
  readonly widthPx: number
  readonly heightPx: number
  readonly bytes: ArrayBuffer
}

/** `owner`: the complaint, or the line of a triage that is not kept yet. `evidence`: the test it was taken at. */
export type Photo = Picture & {
  readonly owner: string
  readonly id: string
  readonly schemaVersion: number
  readonly evidence: string
  readonly takenAt: string
}

/** By its own name: a buffer read back may come from another realm. */
const bytesOf: Reader<ArrayBuffer> = (value) =>
  Object.prototype.toString.call(value) === '[object ArrayBuffer]' ? (value as ArrayBuffer) : undefined

const PHOTO: Table<Photo> = {
  owner: required(id),
  id: required(id),
  schemaVersion: { read: schema(PHOTO_SCHEMA), or: () => PHOTO_SCHEMA },
  evidence: { read: text, or: () => '' },
  takenAt: { read: time, or: () => '1970-01-01T00:00:00.000Z' },
  type: { read: oneOf(PHOTO_TYPES), or: () => 'image/jpeg' },
  widthPx: { read: positive, or: () => 4 },
  heightPx: { read: positive, or: () => 3 },
  bytes: required(bytesOf),
}

/** Every field a photo's record has, for the guard over the fixtures. */
export const PHOTO_FIELDS = Object.keys(PHOTO)

/** A photo from anything at all; undefined where it has no owner, no name or no picture. Never throws. */
export function restorePhoto(raw: unknown): Photo | undefined {
  if (!isRecord(raw)) return undefined
  const { kept: _aside, ...photo } = readRecord(PHOTO, raw, 'stored')
  const isWhole = [photo.owner, photo.id, photo.bytes].every((part) => part !== undefined)
  return isWhole ? photo : undefined
}

/** A photo taken now. */
export const newPhoto = (owner: string, evidence: string, picture: Picture): Photo => ({
  owner,
  id: newId(),
  schemaVersion: PHOTO_SCHEMA,
  evidence,
  takenAt: new Date().toISOString(),
  ...picture,
})

/** The photos of these owners, the first taken first. */
export async function listPhotos(owners: readonly string[]): Promise<readonly Photo[]> {
  const raws = await inOneGo(['photos'], (desk) => Promise.all(owners.map((owner) => desk.ownedBy('photos', owner))))
  return raws
    .flat()
    .flatMap((raw) => restorePhoto(raw) ?? [])
    .sort((a, b) => a.takenAt.localeCompare(b.takenAt) || a.id.localeCompare(b.id))
}

/** Writes a photo, new or brought back. */
export function putPhoto(photo: Photo): Promise<void> {
  return inOneGo(
    ['photos'],
    async (desk) => {
      await desk.put('photos', photo)
    },
    'full',
  )
}

/** Takes a photo out. */
export function removePhoto({ owner, id: photoId }: Photo): Promise<void> {
  return inOneGo(['photos'], (desk) => desk.remove('photos', [owner, photoId]))
}

/** Gives the photos of one owner to another, as they are. */
export function movePhotos(from: string, to: string): Promise<void> {
  return inOneGo(
    ['photos'],
    async (desk) => {
      for (const raw of await desk.ownedBy('photos', from))
        if (isRecord(raw)) await desk.put('photos', { ...raw, owner: to })
      await desk.removeOwned('photos', from)
    },
    'full',
  )
}
