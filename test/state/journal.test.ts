// @vitest-environment happy-dom
/** A window that ends before the database has written: what was typed is there at the next start. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newLine } from '../../src/store/line.ts'
import { restoreSteps } from '../../src/store/restore-steps.ts'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

const LINE = { ...newLine('contact 23'), id: 'line-23' }
const TRIAGE = { title: 'Needle swings on COM 2', answers: { wrong: 'reading' }, guideVersion: 1, line: LINE }

async function start() {
  vi.resetModules()
  const [log, queue, session] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/session.ts'),
  ])
  await Promise.all([log.loadComplaints(), session.resumeSession()])
  return { ...log, ...queue, ...session }
}

/** From now on no write reaches the disk, as if the window were gone before its turn. */
function stopWriting(): void {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('gone', 'QuotaExceededError')
  })
}

/** Copies of what is not on disk. */
const unsaved = (): string[] => Object.keys(localStorage).filter((key) => key.startsWith('stillpin-unsaved'))

beforeEach(async () => {
  localStorage.clear()
  await freshStore()
})
afterEach(() => vi.restoreAllMocks())

describe('what was typed just before the window closed', () => {
  it('is written at the next start: a new complaint, its note, its title, its aircraft, the triage', async () => {
    const before = await start()
    stopWriting()
    const made = before.createFromTriage(TRIAGE)
    before.rename(made.id, 'Needle swings, ship 4')
    before.writeNote(made.id, 'µΩ 7.3 %\nsecond line')
    before.writeText(made.id, 'aircraft', 'Lantern Two, ship 4')
    before.setAnswers({ wrong: 'data' }, 1)
    await before.settled()
    vi.restoreAllMocks()

    const after = await start()
    expect(after.complaints.value).toMatchObject([
      { title: 'Needle swings, ship 4', note: 'µΩ 7.3 %\nsecond line', aircraft: 'Lantern Two, ship 4' },
    ])
    expect(after.triage.value.answers).toEqual({ wrong: 'data' })
    await after.settled()
    expect(unsaved()).toEqual([])
  })

  it('brings a deletion and its undo to their end', async () => {
    const before = await start()
    const made = before.createFromTriage(TRIAGE)
    await before.settled()
    stopWriting()
    before.remove(made.id)
    before.undoRemove()
    await before.settled()
    vi.restoreAllMocks()
    const after = await start()
    expect(after.complaints.value).toHaveLength(1)
  })

  it('is on the list, and stays typed, when the device is full at the next start too', async () => {
    const before = await start()
    const old = before.createFromTriage({ ...TRIAGE, title: 'kept while there was room' })
    before.addLine(old.id, { ...newLine('contact 24'), id: 'line-24' })
    await before.settled()
    stopWriting()
    const made = before.createFromTriage({ ...TRIAGE, title: 'made while full' })
    before.writeNote(made.id, 'typed while full')
    before.rename(old.id, 'renamed while full')
    before.writeLineFact(old.id, 'line-24', 'markedF', { text: '3n3', origin: { by: 'user' } })
    before.removeLine(old.id, 'line-23')
    before.writeScratchFact('noiseHz', { text: '9 MHz', origin: { by: 'user' } })
    before.setAnswers({ wrong: 'data' }, 1)
    await before.settled()

    const full = await start()
    expect(full.saveState.value).toBe('failed')
    const seen = [...(full.complaints.value ?? [])].sort((a, b) => a.title.localeCompare(b.title))
    expect(seen).toMatchObject([
      { title: 'made while full', note: 'typed while full' },
      { title: 'renamed while full', lines: [{ name: 'contact 24', facts: { markedF: { text: '3n3' } } }] },
    ])
    expect(full.triage.value.answers).toEqual({ wrong: 'data' })
    expect(full.scratch.value.facts).toMatchObject({ noiseHz: { text: '9 MHz' } })
    full.writeNote(made.id, 'typed while full, and after', 'typed while full')
    await full.settled()
    vi.restoreAllMocks()

    const after = await start()
    expect(after.complaints.value?.find(({ id }) => id === made.id)).toMatchObject({
      note: 'typed while full, and after',
    })
    expect(after.complaints.value?.find(({ id }) => id === old.id)).toMatchObject({
      title: 'renamed while full',
      lines: [{ name: 'contact 24', facts: { markedF: { text: '3n3' } } }],
    })
    expect(after.complaints.value?.map(({ rivals }) => rivals)).toEqual([undefined, undefined])
    await after.settled()
    expect(unsaved()).toEqual([])
  })

  it('becomes a complaint of its own when the one it was typed into is gone', async () => {
    const before = await start()
    const made = before.createFromTriage(TRIAGE)
    await before.settled()
    stopWriting()
    before.writeNote(made.id, 'late words', '')
    await before.settled()
    vi.restoreAllMocks()
    const { inOneGo } = await import('../../src/store/db.ts')
    await inOneGo(['complaints', 'lines'], async (desk) => {
      await desk.remove('complaints', made.id)
      await desk.removeOwned('lines', made.id)
    })
    expect((await start()).complaints.value).toMatchObject([{ title: 'Recovered', note: 'late words' }])
  })

  it('never goes over something newer that was stored since', async () => {
    const before = await start()
    const made = before.createFromTriage(TRIAGE)
    await before.settled()
    stopWriting()
    before.writeNote(made.id, 'older')
    await before.settled()
    vi.restoreAllMocks()
    const { changeComplaint } = await import('../../src/store/complaints.ts')
    await changeComplaint({ do: 'change', id: made.id, patch: { note: 'newer' }, at: '2999-01-01T00:00:00.000Z' })
    const after = await start()
    expect(after.complaints.value?.[0]?.note).toBe('newer')
    expect(after.complaints.value?.[0]?.rivals).toMatchObject([{ field: 'note', text: 'older' }])
  })

  it('keeps both aircraft of two windows, and takes one late', async () => {
    const before = await start()
    const made = before.createFromTriage(TRIAGE)
    before.writeText(made.id, 'aircraft', 'ship 3', '')
    await before.settled()
    stopWriting()
    before.writeText(made.id, 'aircraft', 'ship 8', 'ship 2')
    await before.settled()
    vi.restoreAllMocks()
    const after = await start()
    const [kept] = after.complaints.value ?? []
    expect([kept?.aircraft, kept?.rivals]).toMatchObject(['ship 8', [{ field: 'aircraft', text: 'ship 3' }]])
    await after.settled()
    stopWriting()
    after.takeText(made.id, 'aircraft', 'ship 3', ['ship 8'])
    await after.settled()
    vi.restoreAllMocks()
    const [last] = (await start()).complaints.value ?? []
    expect([last?.aircraft, last?.rivals, last?.note]).toEqual(['ship 3', undefined, ''])
  })

  it('leaves nothing behind once it is on disk', async () => {
    const app = await start()
    app.createFromTriage(TRIAGE)
    expect(Object.keys(localStorage).some((key) => key.startsWith('stillpin-unsaved:'))).toBe(true)
    await app.settled()
    expect(unsaved()).toEqual([])
  })

  it('is read back through the gate, whatever else was put there', () => {
    expect(restoreSteps('no list')).toEqual([])
    expect(restoreSteps([null, 7, { do: 'erase' }, { do: 'change', id: 3, at: 'x', patch: {} }])).toEqual([])
    expect(restoreSteps([{ do: 'change', id: 'a', at: 'x', patch: { title: 9, note: 'n' } }])).toEqual([
      { do: 'change', id: 'a', at: 'x', patch: { title: '', note: 'n' }, base: {} },
    ])
  })

  it('costs nothing where that storage is refused', async () => {
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
      throw new DOMException('refused', 'SecurityError')
    })
    const app = await start()
    const made = app.createFromTriage(TRIAGE)
    await app.settled()
    expect(app.complaints.value).toEqual([made])
  })
})

describe('erasing everything', () => {
  it('leaves no database and no text, and no window writes any of it again', async () => {
    const other = await start()
    const here = await start()
    const made = here.createFromTriage(TRIAGE)
    await here.settled()
    await vi.waitFor(() => expect(other.complaints.value).toHaveLength(1))
    localStorage.setItem('stillpin-theme', 'night')
    localStorage.setItem('another-app', 'its own')
    const { eraseEverything } = await import('../../src/state/erase.ts')
    await eraseEverything()
    await vi.waitFor(() => expect(other.erasedElsewhere.value).toBe(true))
    other.writeNote(made.id, 'typed after')
    await other.settled()
    expect(Object.keys(localStorage)).toEqual(['another-app'])
    expect(await indexedDB.databases()).toEqual([])
    expect((await start()).complaints.value).toEqual([])
  })
})
