/** Writes that wait while the storage does not answer, and what the other windows are told of them. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

async function start() {
  vi.resetModules()
  const [log, queue, disk, db] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/store/complaints.ts'),
    import('../../src/store/db.ts'),
  ])
  await log.loadComplaints()
  return { ...log, ...queue, ...disk, ...db }
}

/** Keeps every other transaction on complaints waiting until it is let go. */
async function holdStorage(name: string): Promise<() => void> {
  const db = await new Promise<IDBDatabase>((done, failed) => {
    const opening = indexedDB.open(name)
    opening.onsuccess = () => done(opening.result)
    opening.onerror = () => failed(opening.error)
  })
  let isHeld = true
  const store = db.transaction('complaints', 'readwrite').objectStore('complaints')
  const goOn = (): void => {
    if (isHeld) store.count().onsuccess = goOn
    else db.close()
  }
  goOn()
  return () => {
    isHeld = false
  }
}

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

it('a key typed while the storage was silent makes no rival of the key that came onto the disk late', async () => {
  const app = await start()
  const { id } = app.add({ ...newComplaint({ title: 'Buzz' }), note: 'a' })
  await app.settled()
  const letGo = await holdStorage(app.DB_NAME)
  app.writeNote(id, 'ab', 'a')
  await vi.waitFor(() => expect(app.saveState.value).toBe('failed'), { timeout: 4000 })
  app.writeNote(id, 'abc', 'ab')
  app.writeNote(id, 'abcd', 'abc')
  letGo()
  await vi.waitFor(() => expect(app.saveState.value).toBe('saved'))
  const { note, rivals } = (await app.getComplaint(id)) ?? {}
  expect([note, rivals]).toEqual(['abcd', undefined])
})

it('tells the other windows once of keys that were written as one', async () => {
  const app = await start()
  const { id } = app.add(newComplaint({ title: 'Buzz' }))
  await app.settled()
  const told = vi.spyOn(BroadcastChannel.prototype, 'postMessage')
  let note = ''
  for (const letter of 'only in rain') {
    app.writeNote(id, note + letter, note)
    note += letter
  }
  await app.settled()
  await vi.waitFor(async () => expect((await app.getComplaint(id))?.note).toBe(note))
  // of the first key, which went out at once, and of the others
  const news = { is: 'changed', id, lineId: undefined }
  expect(told.mock.calls).toEqual([[news], [news]])
})
