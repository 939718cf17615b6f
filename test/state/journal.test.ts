// @vitest-environment happy-dom
/** A window that ends before the database has written: what was typed is there at the next start. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newLine } from '../../src/store/complaint.ts'
import { restoreSteps } from '../../src/store/steps.ts'
import { freshStore } from '../store/fresh-store.ts'

const LINE = { ...newLine('contact 23'), id: 'line-23' }
const TRIAGE = { title: 'Needle swings on COM 2', answers: { wrong: 'reading' }, guideVersion: 1, line: LINE }

async function start() {
  vi.resetModules()
  const [log, queue, session] = await Promise.all([
    import('../../src/state/complaints.ts'),
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

beforeEach(async () => {
  localStorage.clear()
  await freshStore()
})
afterEach(() => vi.restoreAllMocks())

describe('what was typed just before the window closed', () => {
  it('is written at the next start: a new complaint, its note, its title, the triage', async () => {
    const before = await start()
    stopWriting()
    const made = before.createFromTriage(TRIAGE)
    before.rename(made.id, 'Needle swings, ship 4')
    before.writeNote(made.id, 'µΩ 7.3 %\nsecond line')
    before.setAnswers({ wrong: 'data' }, 1)
    vi.restoreAllMocks()

    const after = await start()
    expect(after.complaints.value).toMatchObject([{ title: 'Needle swings, ship 4', note: 'µΩ 7.3 %\nsecond line' }])
    expect(after.triage.value.answers).toEqual({ wrong: 'data' })
    await after.settled()
    expect(Object.keys(localStorage)).toEqual([])
  })

  it('brings a deletion and its undo to their end', async () => {
    const before = await start()
    const made = before.createFromTriage(TRIAGE)
    await before.settled()
    stopWriting()
    before.remove(made.id)
    before.undoRemove()
    vi.restoreAllMocks()
    const after = await start()
    expect(after.complaints.value).toHaveLength(1)
  })

  it('never goes over something newer that was stored since', async () => {
    const before = await start()
    const made = before.createFromTriage(TRIAGE)
    await before.settled()
    stopWriting()
    before.writeNote(made.id, 'older')
    vi.restoreAllMocks()
    const { changeComplaint } = await import('../../src/store/complaints.ts')
    await changeComplaint(made.id, { note: 'newer' }, '2999-01-01T00:00:00.000Z')
    const after = await start()
    expect(after.complaints.value?.[0]?.note).toBe('newer')
  })

  it('leaves nothing behind once it is on disk', async () => {
    const app = await start()
    app.createFromTriage(TRIAGE)
    expect(Object.keys(localStorage).some((key) => key.startsWith('stillpin-unsaved:'))).toBe(true)
    await app.settled()
    expect(Object.keys(localStorage)).toEqual([])
  })

  it('is read back through the gate, whatever else was put there', () => {
    expect(restoreSteps('no list')).toEqual([])
    expect(restoreSteps([null, 7, { do: 'erase' }, { do: 'change', id: 3, at: 'x', patch: {} }])).toEqual([])
    expect(restoreSteps([{ do: 'change', id: 'a', at: 'x', patch: { title: 9, note: 'n' } }])).toEqual([
      { do: 'change', id: 'a', at: 'x', patch: { title: '', note: 'n' } },
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
