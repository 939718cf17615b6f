/**
 * Photos kept with tests, fetched when a place shows them.
 *
 * `photos`            those of the owners opened last, the first taken first; undefined until read
 * `openPhotos(owners)`  a complaint and its lines, or the line of a triage that is not kept yet
 * `keepPhoto(owner, evidence, file)`  scales it down, shows it at once when it is on disk
 * `removePhoto(photo)`, `undoRemovePhoto()`, `removedPhoto`   one deletion can be undone
 * `photoTrouble`      sentence where a photo could not be kept; nothing else is affected
 *
 * Not part of the queue of what is typed: a photo that does not fit must never hold up a text.
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { askToKeepStorage } from '../store/browser-storage.ts'
import { listPhotos, newPhoto, type Photo, putPhoto, removePhoto as takeOut } from '../store/photos.ts'
import { StoreError } from '../store/trouble.ts'
import { broughtIn } from './brought-in.ts'
import { PhotoError, scaledPhoto } from './scaled-photo.ts'

/** A photo with the address under which this window shows it. */
export type ShownPhoto = Photo & { readonly url: string }

const shown = signal<readonly ShownPhoto[] | undefined>(undefined)
const trouble = signal<string | undefined>(undefined)
const removed = signal<Photo | undefined>(undefined)
export const photos: ReadonlySignal<readonly ShownPhoto[] | undefined> = shown
export const photoTrouble: ReadonlySignal<string | undefined> = trouble
export const removedPhoto: ReadonlySignal<Photo | undefined> = removed

let opened: readonly string[] = []
let readAt = 0

const withUrl = (photo: Photo): ShownPhoto => ({
  ...photo,
  url: URL.createObjectURL(new Blob([photo.bytes], { type: photo.type })),
})

const FULL =
  'The photo was not kept: the storage of this device is full. Everything typed is kept. Free some space, then choose it again.'

function wordsOf(error: unknown): string {
  if (error instanceof StoreError && error.trouble === 'full') return FULL
  if (error instanceof PhotoError) return error.message
  if (error instanceof StoreError) return `The photo was not kept. ${error.message}`
  throw error
}

/** Runs a change; what goes wrong is said, and the photos shown stay. */
async function attempt(change: () => Promise<void>): Promise<void> {
  try {
    await change()
    trouble.value = undefined
  } catch (error) {
    trouble.value = wordsOf(error)
  }
}

/** Reads the photos of these owners, unless they are shown already. */
export async function openPhotos(owners: readonly string[]): Promise<void> {
  if (owners.join() === opened.join() && readAt === broughtIn()) return
  opened = owners
  readAt = broughtIn()
  trouble.value = undefined
  removed.value = undefined
  for (const { url } of shown.value ?? []) URL.revokeObjectURL(url)
  shown.value = undefined
  await attempt(async () => {
    const read = await listPhotos(owners)
    if (opened === owners) shown.value = read.map(withUrl)
  })
}

async function put(photo: Photo): Promise<void> {
  await putPhoto(photo)
  if (opened.includes(photo.owner)) shown.value = [...(shown.value ?? []), withUrl(photo)]
}

/** Keeps a photo with a test; it is shown when it is on disk. */
export function keepPhoto(owner: string, evidence: string, file: Blob): Promise<void> {
  return attempt(async () => {
    await put(newPhoto(owner, evidence, await scaledPhoto(file)))
    void askToKeepStorage()
  })
}

/** Takes a photo out; `undoRemovePhoto` brings it back. */
export function removePhoto(photo: ShownPhoto): Promise<void> {
  return attempt(async () => {
    await takeOut(photo)
    const { url, ...rest } = photo
    URL.revokeObjectURL(url)
    removed.value = rest
    shown.value = (shown.value ?? []).filter(({ id }) => id !== photo.id)
  })
}

/** Brings back the photo that was taken out last. */
export function undoRemovePhoto(): Promise<void> {
  return attempt(async () => {
    const photo = removed.value
    if (photo === undefined) return
    await put(photo)
    removed.value = undefined
  })
}
