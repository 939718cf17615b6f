/** Photos on disk: of their owner, apart from every text, and gone with what they belong to. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { addComplaint, changeComplaint } from '../../src/store/complaints.ts'
import { closeStore, inOneGo, readAll } from '../../src/store/db.ts'
import { eraseStore } from '../../src/store/erase-store.ts'
import { newLine } from '../../src/store/line.ts'
import { emptyTriage, writeTriage } from '../../src/store/meta.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import {
  listPhotos,
  movePhotos,
  newPhoto,
  type Photo,
  putPhoto,
  removePhoto,
  restorePhoto,
} from '../../src/store/photos.ts'
import { watchStore } from '../../src/store/trouble.ts'
import { freshStore } from './fresh-store.ts'
import { tidyAt } from './tidy-at.ts'

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

const DAY_MS = 24 * 3_600_000
const photoOf = (owner: string, mark: number): Photo =>
  newPhoto(owner, 'bond', {
    type: 'image/jpeg',
    widthPx: 4,
    heightPx: 3,
    bytes: new Uint8Array([0xff, 0xd8, mark]).buffer,
  })
const marks = (photos: readonly Photo[]): readonly (number | undefined)[] =>
  photos.map(({ bytes }) => new Uint8Array(bytes)[2])

describe('photos on disk', () => {
  it('are read back byte for byte, only those of the owners asked for', async () => {
    await putPhoto(photoOf('a', 1))
    await putPhoto(photoOf('ab', 2))
    await putPhoto(photoOf('line', 3))
    expect(marks(await listPhotos(['a']))).toEqual([1])
    expect(marks(await listPhotos(['a', 'line'])).toSorted()).toEqual([1, 3])
  })

  it('go one by one, and come back as they were', async () => {
    const [first, second] = [photoOf('a', 1), photoOf('a', 2)]
    await putPhoto(first)
    await putPhoto(second)
    await removePhoto(first)
    expect(marks(await listPhotos(['a']))).toEqual([2])
    await putPhoto(first)
    expect(await listPhotos(['a'])).toEqual(expect.arrayContaining([first, second]))
  })

  it('follow a triage into its complaint', async () => {
    await putPhoto(photoOf('line', 1))
    await movePhotos('line', 'complaint')
    expect(marks(await listPhotos(['line']))).toEqual([])
    expect(marks(await listPhotos(['complaint']))).toEqual([1])
  })

  it('say that the storage is full to whoever adds one, and to nobody else; what is there stays', async () => {
    await putPhoto(photoOf('a', 1))
    const seen: unknown[] = []
    const stop = watchStore((trouble) => seen.push(trouble?.trouble))
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('too much', 'QuotaExceededError')
    })
    await expect(putPhoto(photoOf('a', 2))).rejects.toMatchObject({ trouble: 'full' })
    vi.restoreAllMocks()
    expect(seen).toEqual([])
    expect(marks(await listPhotos(['a']))).toEqual([1])
    stop()
  })

  it('that cannot be read are left where they are', async () => {
    expect(restorePhoto({ owner: 'a', id: 'b', bytes: 'text' })).toBeUndefined()
    expect(restorePhoto('no photo')).toBeUndefined()
    await inOneGo(['photos'], async (desk) => {
      await desk.put('photos', { owner: 'a', id: 'later', bytes: 7 })
    })
    expect(await listPhotos(['a'])).toEqual([])
    expect(await readAll('photos')).toHaveLength(1)
  })

  it('go with their complaint for good, a day after nothing holds them any more', async () => {
    const complaint = newComplaint({ title: 'Buzz', lines: [newLine('contact 2')] })
    await addComplaint(complaint)
    const triage = emptyTriage()
    await writeTriage(triage)
    for (const [at, owner] of [complaint.id, complaint.lines[0]?.id ?? '', triage.line.id, 'nobody'].entries())
      await putPhoto(photoOf(owner, at))
    const left = async () => marks((await readAll('photos')).flatMap((raw) => restorePhoto(raw) ?? [])).toSorted()
    await tidyAt(Date.now() + DAY_MS / 2)
    expect(await left()).toEqual([0, 1, 2, 3])
    await tidyAt(Date.now() + 2 * DAY_MS)
    expect(await left()).toEqual([0, 1, 2])
    await changeComplaint({ do: 'delete', id: complaint.id, at: new Date().toISOString() })
    await tidyAt(Date.now() + 3 * DAY_MS)
    expect(await left()).toEqual([2])
  })

  it('are erased with everything else', async () => {
    await putPhoto(photoOf('a', 1))
    await eraseStore()
    // this window opens nothing again: a late read must not leave an empty database behind
    await expect(listPhotos(['a'])).rejects.toThrow()
    expect(await indexedDB.databases()).toEqual([])
    // the next one does
    closeStore()
    expect(await listPhotos(['a'])).toEqual([])
  })
})
