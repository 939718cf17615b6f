// @vitest-environment happy-dom
/** A long note, typed in and killed at any moment: what was typed is there at the next start. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

const LONG = 'Buzz with the generator on, none on battery.\n'.repeat(1000)
const TYPED = 'µV'

const windows: Window[] = []

/** The marks of the windows that are open. */
let held: string[] = []
const locks = {
  request: (name: string, hold: () => Promise<unknown>) => {
    held.push(name)
    return hold()
  },
  query: async () => ({ held: held.map((name) => ({ name })) }),
}

/** Every window ends at once; the small storage comes back as it was before. */
function kill(): void {
  held = []
  localStorage.clear()
}

/** A window of the app. */
async function start(isLong = true): Promise<Window> {
  vi.resetModules()
  const [log, queue] = await Promise.all([importLog(), import('../../src/state/save-queue.ts')])
  await log.loadComplaints()
  if (isLong) await import('../../src/state/long-text.ts')
  const app = { ...log, ...queue }
  windows.push(app)
  return app
}

type Window = Awaited<ReturnType<typeof importLog>> & typeof import('../../src/state/save-queue.ts')

async function withNote(app: Window, note = LONG): Promise<string> {
  const { newComplaint } = await import('../../src/store/new-complaint.ts')
  const { id } = app.add({ ...newComplaint({ title: 'A long story' }), note })
  await app.settled()
  return id
}

/** Types at the end, key by key. */
function type(app: Window, id: string, text: string): string {
  let note = app.complaints.value?.find((one) => one.id === id)?.note ?? ''
  for (const letter of text) {
    app.writeNote(id, note + letter, note)
    note += letter
  }
  return note
}

const read = async (name: string): Promise<unknown> => {
  const { readOne } = await import('../../src/store/db.ts')
  return readOne('meta', name)
}

/** What is on the disk of the notes being typed, apart from the texts they began with. */
async function journals(): Promise<readonly string[]> {
  const { readKeys } = await import('../../src/store/db.ts')
  const names = (await readKeys('meta')).map(String).filter((name) => /^typing:[^:]+$/.test(name))
  const all = await Promise.all(names.map(read))
  return all.map((one) => (one as { readonly lines: string }).lines)
}

const notes = (app: Window) => app.complaints.value?.map(({ note, rivals }) => [note, rivals?.map(({ text }) => text)])

/** Until every key is on the disk as what it changed. */
const onDisk = (keys: number) =>
  vi.waitFor(async () => expect((await journals()).map((lines) => lines.split('\n').length - 1)).toEqual([keys]))

/** From now on the disk does not take these; gives how many it was asked to take. */
function refuse(isRefused: (store: IDBObjectStore, value: unknown) => boolean): () => number {
  const put = IDBObjectStore.prototype.put
  let refused = 0
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, value: unknown, key) {
    if (isRefused(this, value)) {
      refused++
      throw new DOMException('full', 'QuotaExceededError')
    }
    return key === undefined ? put.call(this, value) : put.call(this, value, key)
  })
  return () => refused
}

/** What the journal on the disk was made to hold, one after the other, from now on. */
function watchJournal(): () => readonly string[] {
  const put = vi.spyOn(IDBObjectStore.prototype, 'put')
  return () =>
    put.mock.calls.flatMap(([value, key]) => (/^typing:[^:]+$/.test(String(key)) ? [String(value.lines)] : []))
}

/** Another window reads this note and types on it. */
async function fromOtherWindow(id: string, base: string, note: string): Promise<void> {
  const { changeComplaint, getComplaint } = await import('../../src/store/complaints.ts')
  const { madeOn } = await import('../../src/store/edits.ts')
  const step = { do: 'change', id, patch: { note }, base: { note: base }, at: new Date().toISOString() } as const
  await changeComplaint(madeOn(step, await getComplaint(id)))
}

beforeEach(async () => {
  kill()
  vi.stubGlobal('navigator', Object.create(navigator, { locks: { value: locks, configurable: true } }))
  await freshStore()
})
afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
  for (const app of windows.splice(0)) app.stopSaving()
})

describe('a long note that is typed', () => {
  it('is on the disk key by key, without being written whole, and whole when it is asked for', async () => {
    const app = await start()
    const id = await withNote(app)
    const put = vi.spyOn(IDBObjectStore.prototype, 'put')
    const note = type(app, id, TYPED)
    await onDisk(TYPED.length)
    expect(put.mock.contexts.map((store) => (store as IDBObjectStore).name)).not.toContain('complaints')
    expect((await journals())[0]?.length).toBeLessThan(1000)
    expect(Object.entries(localStorage).flatMap(([, text]) => (String(text).length > 1000 ? [text] : []))).toEqual([])
    await app.settled()
    expect(put.mock.contexts.map((store) => (store as IDBObjectStore).name)).toContain('complaints')
    await vi.waitFor(async () => expect(await journals()).toEqual(['']))
    const { getComplaint } = await import('../../src/store/complaints.ts')
    expect((await getComplaint(id))?.note).toBe(note)
  })

  it('is there after the browser was killed, which leaves the small storage as it was', async () => {
    const app = await start()
    const note = type(app, await withNote(app), TYPED)
    await onDisk(TYPED.length)
    kill()
    const after = await start(false)
    expect(notes(after)).toEqual([[note, undefined]])
    await after.settled()
    await vi.waitFor(async () => expect(await journals()).toEqual([]))
  })

  it('is there after the window was closed before the database had any of it', async () => {
    const app = await start()
    const id = await withNote(app)
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    const note = type(app, id, TYPED)
    // of two keys, and of the record
    await vi.waitFor(() => expect(put.mock.calls.length).toBeGreaterThanOrEqual(3))
    await app.settled()
    vi.restoreAllMocks()
    held = []
    expect(await journals()).toEqual([])
    expect(Object.keys(localStorage).filter((name) => name.startsWith('stillpin-typing:'))).toHaveLength(1)
    const after = await start(false)
    expect(notes(after)).toEqual([[note, undefined]])
  })

  it('stands beside what another window wrote meanwhile', async () => {
    const app = await start()
    const id = await withNote(app)
    const note = type(app, id, TYPED)
    await onDisk(TYPED.length)
    kill()
    const { changeComplaint } = await import('../../src/store/complaints.ts')
    const other = `${LONG}of the other window`
    const at = '2999-01-01T00:00:00.000Z'
    await changeComplaint({ do: 'change', id, patch: { note: other }, base: { note: LONG }, at })
    expect(notes(await start(false))).toEqual([[other, [note]]])
  })

  it('of a window that is open is left to that window', async () => {
    const app = await start()
    const id = await withNote(app)
    const note = type(app, id, TYPED)
    await onDisk(TYPED.length)
    const other = await start(false)
    expect(notes(other)).toEqual([[LONG, undefined]])
    expect((await journals())[0]).not.toBe('')
    await app.settled()
    await vi.waitFor(() => expect(notes(other)).toEqual([[note, undefined]]))
  })

  it('that an earlier version had left whole in the small storage is written too', async () => {
    const app = await start(false)
    const id = await withNote(app)
    const step = { do: 'change', id, at: new Date().toISOString(), patch: { note: `${LONG}!` }, base: { note: LONG } }
    localStorage.setItem('stillpin-unsaved:old', JSON.stringify([step]))
    const after = await start(false)
    expect(notes(after)).toEqual([[`${LONG}!`, undefined]])
    await after.settled()
    expect(localStorage.getItem('stillpin-unsaved:old')).toBeNull()
  })

  it('goes on from where it was written last, with one text on the disk to begin with', async () => {
    const app = await start()
    const id = await withNote(app)
    type(app, id, 'one')
    await onDisk(3)
    await app.settled()
    const put = vi.spyOn(IDBObjectStore.prototype, 'put')
    const note = type(app, id, 'two')
    await onDisk(6)
    expect(put.mock.calls.filter(([, key]) => String(key).endsWith(':text'))).toEqual([])
    kill()
    expect(notes(await start(false))).toEqual([[note, undefined]])
  })
  it('is written whole at every key where the windows do not know of each other', async () => {
    vi.stubGlobal('navigator', Object.create(navigator, { locks: { value: undefined } }))
    const app = await start()
    const id = await withNote(app)
    type(app, id, 'one')
    const besideIt = await start(false)
    await besideIt.settled()
    const note = type(app, id, 'two')
    await app.settled()
    kill()
    expect(notes(await start(false))).toEqual([[note, undefined]])
  })

  it('that was killed the moment it was written whole does not come again beside what was written since', async () => {
    const app = await start()
    const id = await withNote(app)
    const note = type(app, id, TYPED)
    await onDisk(TYPED.length)
    const refused = refuse((store) => [...store.transaction.objectStoreNames].join() === 'meta')
    await app.settled()
    await vi.waitFor(() => expect(refused()).toBeGreaterThan(0))
    kill()
    vi.restoreAllMocks()
    await fromOtherWindow(id, note, `${note} and the other window`)
    expect(notes(await start(false))).toEqual([[`${note} and the other window`, undefined]])
  })

  it('that is written whole is in no journal after it', async () => {
    const app = await start()
    const id = await withNote(app)
    const held = watchJournal()
    type(app, id, TYPED)
    await app.settled()
    await vi.waitFor(async () => expect(await journals()).toEqual(['']))
    expect(held().slice(held().indexOf(''))).not.toContainEqual(expect.stringMatching(/./))
  })

  it.each([
    ['a title', ''],
    ['another long note', TYPED],
  ])('stays in the journal while %s is written before it', async (_what, typed) => {
    const app = await start()
    const [id, other] = [await withNote(app), await withNote(app, `${LONG}of another complaint`)]
    const isNewNote = (value: unknown) => (value as { readonly note?: string }).note?.endsWith('complaint!') === true
    const refused = refuse((store, value) => store.name === 'complaints' && isNewNote(value))
    const held = watchJournal()
    app.writeText(id, 'title', 'One', 'A long story')
    app.writeText(id, 'aircraft', 'Another', '')
    type(app, id, typed)
    const note = type(app, other, '!')
    await app.settled()
    await vi.waitFor(() => expect(refused()).toBeGreaterThan(0))
    // with the record that is refused, and taken back with it
    expect(held().filter((lines) => lines === '')).toEqual([''])
    kill()
    vi.restoreAllMocks()
    expect(notes(await start(false))).toContainEqual([note, undefined])
  })

  it('that two windows find at their start is written by one of them', async () => {
    const app = await start()
    const id = await withNote(app)
    const note = type(app, id, TYPED)
    await onDisk(TYPED.length)
    kill()
    const { takeTyped } = await import('../../src/store/restore-long-text.ts')
    const { restoreSteps } = await import('../../src/store/restore-steps.ts')
    const found = [await takeTyped('typing:'), await takeTyped('typing:')].flat()
    const [first, second] = found.map(({ raw, writeOf }) => ({ steps: restoreSteps(raw), writeOf }))
    for (const step of first?.steps ?? []) await first?.writeOf(first.steps)(step, true)
    expect(await journals()).toEqual([])
    await fromOtherWindow(id, note, `${note}!`)
    for (const step of second?.steps ?? []) await second?.writeOf(second.steps)(step, true)
    expect(notes(await start(false))).toEqual([[`${note}!`, undefined]])
  })

  it('is written after ten seconds, though no gap between the keys lets a timer through', async () => {
    const app = await start()
    const id = await withNote(app)
    const clock = vi.spyOn(performance, 'now')
    for (const ms of [1000, 5000, 10_999]) {
      clock.mockReturnValue(ms)
      type(app, id, 'a')
    }
    expect(app.saveState.value).not.toBe('saving')
    clock.mockReturnValue(11_000)
    type(app, id, 'a')
    expect(app.saveState.value).toBe('saving')
    await app.settled()
  })

  it('that waits at the next start is not copied into the small storage', async () => {
    const app = await start()
    const note = type(app, await withNote(app), TYPED)
    await onDisk(TYPED.length)
    kill()
    const refused = refuse((store) => store.name === 'complaints')
    const after = await start(false)
    await after.settled()
    expect([refused(), after.saveState.value]).toEqual([1, 'failed'])
    expect(Object.keys(localStorage).filter((name) => name.includes('unsaved'))).toEqual([])
    vi.restoreAllMocks()
    void after.retrySave()
    await after.settled()
    kill()
    expect(notes(await start(false))).toEqual([[note, undefined]])
  })

  it('is tried once on a full device, not at every key, until it is asked for', async () => {
    const app = await start()
    const id = await withNote(app)
    const tried: string[] = []
    refuse((store) => tried.push([...store.transaction.objectStoreNames].join()) > 0)
    const states: string[] = []
    const typeOne = async (): Promise<void> => {
      type(app, id, 'a')
      const before = tried.length
      await vi.waitFor(() => expect(tried.length).toBeGreaterThan(before))
      await vi.waitFor(() => expect(app.saveState.value).toBe('failed'))
    }
    await typeOne()
    const stop = app.saveState.subscribe((state) => states.push(state))
    await typeOne()
    await typeOne()
    stop()
    expect([states, tried.filter((names) => names !== 'meta').length]).toEqual([['failed'], 1])
    vi.restoreAllMocks()
    void app.retrySave()
    expect(app.saveState.value).toBe('saving')
    await app.settled()
    expect(app.saveState.value).toBe('saved')
  })

  it.each([
    ['it is tried again', (app: Window) => void app.retrySave()],
    ['the storage answers again', async () => (await import('../../src/store/trouble.ts')).reportTrouble(undefined)],
  ])('that waits alone after a failure is written as soon as %s', async (_what, retry) => {
    const app = await start()
    const id = await withNote(app)
    refuse(() => true)
    type(app, id, 'a')
    await vi.waitFor(() => expect(app.saveState.value).toBe('failed'))
    vi.restoreAllMocks()
    await retry(app)
    expect(app.saveState.value).toBe('saving')
  })

  it('into which much was put is written at once, and no key after that writes it again', async () => {
    const app = await start()
    const id = await withNote(app)
    const before = app.complaints.value?.[0]?.note ?? ''
    const pasted = `${LONG}${LONG}!${before}`
    app.writeNote(id, pasted, before)
    expect(app.saveState.value).toBe('saving')
    await vi.waitFor(async () => expect(await journals()).toEqual(['']))
    const note = type(app, id, TYPED)
    await vi.waitFor(async () => expect((await journals()).map((lines) => lines.length > 0)).toEqual([true]))
    expect((await journals())[0]?.length).toBeLessThan(1000)
    await onDisk(TYPED.length)
    kill()
    expect(notes(await start(false))).toEqual([[note, undefined]])
  })
})
