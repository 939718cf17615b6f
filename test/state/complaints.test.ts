import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newLine } from '../../src/store/line.ts'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

const LINE = { ...newLine('contact 19'), id: 'line-19' }
const TRIAGE = { title: 'Squeal on ICS 2', answers: { rhythm: 'with-engine' }, guideVersion: 2, line: LINE }

/** The models as a start of the app finds them: nothing in memory, the storage as it was left. */
async function start() {
  vi.resetModules()
  const [log, queue, session, disk] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/session.ts'),
    import('../../src/store/complaints.ts'),
  ])
  await Promise.all([log.loadComplaints(), session.resumeSession()])
  return { ...log, ...queue, ...session, getComplaint: disk.getComplaint }
}

/** Makes every write fail as on a full device, until `restoreAllMocks`. */
function fillStorage(): void {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError')
  })
}

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

describe('the Log', () => {
  it('shows a new complaint at once and has it on disk a moment later', async () => {
    const app = await start()
    const made = app.createFromTriage(TRIAGE)
    expect(app.complaints.value).toEqual([made])
    expect(app.saveState.value).toBe('saving')
    await app.settled()
    expect(app.saveState.value).toBe('saved')
    expect(await app.getComplaint(made.id)).toEqual(made)
  })

  it('survives a kill after every step', async () => {
    const first = await start()
    const made = first.createFromCheck({
      title: '10 nF?',
      check: 'loading',
      line: LINE,
    })
    first.rename(made.id, '10 nF on the bus?')
    first.writeNote(made.id, 'asked in the')
    first.writeNote(made.id, 'asked in the meeting')
    first.addCheck(made.id, { check: 'window', address: '#/check/window?noiseHz=9M' })
    first.addCheck(made.id, { check: 'window', address: '#/check/window?noiseHz=9M' })
    await first.settled()
    const second = await start()
    expect(second.complaints.value).toEqual(first.complaints.value)
    expect(second.complaints.value).toMatchObject([
      {
        title: '10 nF on the bus?',
        note: 'asked in the meeting',
        checks: [{ check: 'loading' }, { check: 'window', address: '#/check/window?noiseHz=9M' }],
      },
    ])
  })

  it('moves a changed complaint to the front, as the next start lists it', async () => {
    const app = await start()
    const a = app.createFromTriage({ ...TRIAGE, title: 'a' })
    await new Promise((done) => setTimeout(done, 3))
    app.createFromTriage({ ...TRIAGE, title: 'b' })
    expect(app.complaints.value?.map(({ title }) => title)).toEqual(['b', 'a'])
    await new Promise((done) => setTimeout(done, 3))
    app.writeNote(a.id, 'n')
    expect(app.complaints.value?.map(({ title }) => title)).toEqual(['a', 'b'])
    await app.settled()
    expect((await start()).complaints.value?.map(({ title }) => title)).toEqual(['a', 'b'])
  })

  it('opens a complaint and follows its changes', async () => {
    const app = await start()
    const { id } = app.createFromTriage(TRIAGE)
    app.openComplaint(id)
    app.rename(id, 'Whistle')
    expect(app.opened.value?.title).toBe('Whistle')
    app.openComplaint('no-such-complaint')
    expect(app.opened.value).toBeUndefined()
  })

  it('deletes with undo, also right after', async () => {
    const app = await start()
    const { id } = app.createFromTriage(TRIAGE)
    app.remove(id)
    expect([app.complaints.value, app.lastDeleted.value?.id]).toEqual([[], id])
    app.undoRemove()
    await app.settled()
    expect(app.lastDeleted.value).toBeUndefined()
    expect((await start()).complaints.value?.map((one) => one.id)).toEqual([id])
    app.remove(id)
    await app.settled()
    expect((await start()).complaints.value).toEqual([])
  })

  it('keeps everything on the screen when the device is full, says so, and saves in order once there is room', async () => {
    const app = await start()
    const { id } = app.createFromTriage(TRIAGE)
    await app.settled()
    fillStorage()
    app.writeNote(id, 'first')
    await app.settled()
    app.writeNote(id, 'first and second')
    app.rename(id, 'Renamed while full')
    await app.settled()
    expect(app.saveState.value).toBe('failed')
    expect(app.storeNotice.value).toContain('full')
    expect(app.complaints.value).toMatchObject([{ note: 'first and second', title: 'Renamed while full' }])
    vi.restoreAllMocks()
    await app.retrySave()
    expect([app.saveState.value, app.storeNotice.value]).toEqual(['saved', undefined])
    expect(await app.getComplaint(id)).toMatchObject({ note: 'first and second', title: 'Renamed while full' })
  })

  it('shows what another window saved, and does not lose what is being typed here', async () => {
    const here = await start()
    const other = await start()
    const { id } = other.createFromTriage(TRIAGE)
    await vi.waitFor(() => expect(here.complaints.value).toMatchObject([{ id }]))
    other.rename(id, 'Renamed in the other window')
    here.writeNote(id, 'typed here')
    await vi.waitFor(() => {
      for (const app of [here, other])
        expect(app.complaints.value).toMatchObject([{ title: 'Renamed in the other window', note: 'typed here' }])
    })
  })

  it('works without any storage, and says that nothing is kept', async () => {
    vi.stubGlobal('indexedDB', undefined)
    const app = await start()
    const { id } = app.createFromTriage(TRIAGE)
    app.writeNote(id, 'still here')
    await app.settled()
    vi.unstubAllGlobals()
    expect(app.complaints.value).toMatchObject([{ note: 'still here' }])
    expect(app.storeNotice.value).toContain('not')
  })

  it('loads the example once', async () => {
    const app = await start()
    const { addDemo } = await import('../../src/state/demo.ts')
    const demo = addDemo()
    expect(addDemo().id).toBe(demo.id)
    expect(app.complaints.value).toMatchObject([{ isDemo: true }])
    const { connectorsOf } = await import('../../src/state/connectors.ts')
    await vi.waitFor(() => expect(connectorsOf(demo.id).value).toHaveLength(1))
    const [box] = connectorsOf(demo.id).value ?? []
    const lines = new Set(app.complaints.value?.[0]?.lines.map(({ id }) => id))
    expect(box?.contacts.every(({ lineId }) => lineId === undefined || lines.has(lineId))).toBe(true)
    app.remove(demo.id)
    await app.settled()
    expect((await start()).complaints.value).toEqual([])
  })
})

describe('the triage under way', () => {
  it('is resumed at the same answers after a kill, and goes on saving into its complaint', async () => {
    const app = await start()
    app.setAnswers({ gate: 'none-of-these' }, 2)
    const { id } = app.createFromTriage({ ...TRIAGE, answers: app.triage.value.answers, line: app.triage.value.line })
    app.attachComplaint(id)
    app.setAnswers({ gate: 'none-of-these', rhythm: 'with-radio' }, 2)
    app.setTriageLine({ ...app.triage.value.line, gate: 'clear' })
    await app.settled()
    const again = await start()
    expect(again.triage.value).toEqual(app.triage.value)
    expect(again.triage.value.complaintId).toBe(id)
    expect(again.complaints.value).toMatchObject([{ answers: { rhythm: 'with-radio' }, lines: [{ gate: 'clear' }] }])
    expect(again.complaints.value?.[0]?.lines).toHaveLength(1)
  })

  it('is not overwritten when somebody answers before the storage has', async () => {
    const first = await start()
    first.setAnswers({ gate: 'old' }, 2)
    await first.settled()
    vi.resetModules()
    const session = await import('../../src/state/session.ts')
    const resuming = session.resumeSession()
    session.setAnswers({ gate: 'new' }, 2)
    await resuming
    expect(session.triage.value.answers).toEqual({ gate: 'new' })
  })

  it('starts over without touching the complaint', async () => {
    const app = await start()
    const made = app.createFromTriage(TRIAGE)
    app.resumeComplaint(made)
    expect(app.triage.value).toMatchObject({
      answers: TRIAGE.answers,
      line: { id: LINE.id, name: LINE.name },
      complaintId: made.id,
    })
    app.restartTriage()
    app.setAnswers({ gate: 'none-of-these' }, 2)
    await app.settled()
    expect(await app.getComplaint(made.id)).toEqual(made)
    expect(app.triage.value.complaintId).toBeUndefined()
  })

  it('keeps the scratch line of the quick checks', async () => {
    const app = await start()
    app.writeScratchFact('markedF', { text: '4n7', origin: { by: 'user' } })
    await app.settled()
    expect((await start()).scratch.value).toEqual(app.scratch.value)
  })
})

describe('the save queue', () => {
  it('writes only the newest of what waits under one name, and tells every caller', async () => {
    const { enqueue, settled } = await start()
    const written: string[] = []
    const write = (text: string) => enqueue(async () => void written.push(text), 'note')
    await Promise.all([write('a'), write('ab'), write('abc'), settled()])
    expect(written).toEqual(['a', 'abc'])
  })

  it('does not let a later write pass one that failed', async () => {
    const { enqueue, retrySave, saveState, settled } = await start()
    const written: string[] = []
    let isBroken = true
    void enqueue(async () => {
      if (isBroken) throw new Error('no')
      written.push('first')
    })
    void enqueue(async () => void written.push('second'))
    await settled()
    expect([written, saveState.value]).toEqual([[], 'failed'])
    isBroken = false
    await retrySave()
    expect([written, saveState.value]).toEqual([['first', 'second'], 'saved'])
  })
})

describe('a line of a complaint', () => {
  const typed = (text: string) => ({ text, origin: { by: 'user' } as const })

  it('keeps each fact typed, comes with a check, and comes back after it was taken out', async () => {
    const app = await start()
    const { id } = app.createFromTriage(TRIAGE)
    app.writeLineFact(id, LINE.id, 'markedF', typed('4n7'))
    app.writeLineFact(id, LINE.id, 'noiseHz', typed('9 MHz'))
    app.writeLineFact(id, LINE.id, 'markedF', undefined)
    app.changeLine(id, LINE.id, { name: 'contact 21' })
    app.addLine(id, { ...newLine('contact 22'), id: 'line-22' })
    app.addCheck(id, { check: 'window', lineId: 'line-22' })
    app.addCheck(id, { check: 'window', lineId: 'line-22' })
    app.removeLine(id, LINE.id)
    expect(app.complaints.value?.[0]?.lines.map(({ name }) => name)).toEqual(['contact 22'])
    expect(app.lastDeleted.value).toMatchObject({ id, name: 'contact 21' })
    app.undoRemove()
    await app.settled()
    const [kept] = (await start()).complaints.value ?? []
    expect(kept?.checks).toEqual([{ check: 'window', lineId: 'line-22' }])
    const back = kept?.lines.find((line) => line.id === LINE.id)
    expect([back?.name, back?.facts]).toEqual(['contact 21', { noiseHz: typed('9 MHz') }])
  })
})

describe('what is under way and kept nowhere else', () => {
  const typed = (text: string) => ({ text, origin: { by: 'user' } as const })

  it('makes room for another scratch line and comes back', async () => {
    const app = await start()
    app.writeScratchFact('markedF', typed('4n7'))
    const first = app.scratch.value
    app.openScratch({ ...newLine(), facts: { noiseHz: typed('3 MHz') } })
    expect(app.scratchBefore.value?.facts).toEqual(first.facts)
    app.undoScratch()
    expect(app.scratch.value.facts).toEqual(first.facts)
    expect(app.scratchBefore.value?.facts).toEqual({ noiseHz: typed('3 MHz') })
    app.restartScratch()
    expect(app.scratch.value.facts).toEqual({})
  })

  it('makes room for another triage and comes back', async () => {
    const app = await start()
    app.setAnswers({ gate: 'none-of-these' }, 2)
    app.restartTriage()
    expect(app.triage.value.answers).toEqual({})
    app.undoTriage()
    expect(app.triage.value.answers).toEqual({ gate: 'none-of-these' })
    expect(app.triageBefore.value).toBeUndefined()
  })
})

describe('two windows on one text', () => {
  const typed = (text: string) => ({ text, origin: { by: 'user' } as const })
  const noteOf = (app: Awaited<ReturnType<typeof start>>) => {
    const [one] = app.complaints.value ?? []
    return [one?.note, one?.rivals?.map(({ text }) => text) ?? []]
  }

  it('takes over what another window wrote, and types on from there', async () => {
    const here = await start()
    const { id } = here.createFromTriage(TRIAGE)
    await here.settled()
    const other = await start()
    here.writeNote(id, 'bond', '')
    await vi.waitFor(() => expect(noteOf(other)).toEqual(['bond', []]))
    other.writeNote(id, 'bond strap', 'bond')
    await vi.waitFor(() => expect(noteOf(here)).toEqual(['bond strap', []]))
  })

  it('keeps and shows both notes, key after key, until one is taken; other parts are not touched', async () => {
    const here = await start()
    const { id } = here.createFromTriage({ ...TRIAGE, title: 'T' })
    await here.settled()
    const other = await start()
    here.writeNote(id, 'left strap green', '')
    await vi.waitFor(() => expect(noteOf(other)[0]).toBe('left strap green'))
    // the other field was typed in before that came: its text stands on the empty one
    other.writeNote(id, 'r', '')
    other.writeNote(id, 'right', 'r')
    await vi.waitFor(() => expect(noteOf(here)).toEqual(['right', ['left strap green']]))
    here.writeNote(id, 'left strap green, cleaned', 'left strap green')
    await vi.waitFor(() => {
      for (const app of [here, other]) expect(noteOf(app)).toEqual(['left strap green, cleaned', ['right']])
    })
    expect(noteOf(await start())).toEqual(['left strap green, cleaned', ['right']])
    here.takeText(id, 'note', 'right', ['left strap green, cleaned'])
    await vi.waitFor(() => {
      for (const app of [here, other]) expect(noteOf(app)).toEqual(['right', []])
    })
  })

  it('keeps both names of a line, key after key and at the next start, until one is taken', async () => {
    const here = await start()
    const { id } = here.createFromTriage(TRIAGE)
    await here.settled()
    const other = await start()
    const named = (app: typeof here) => {
      const line = app.complaints.value?.[0]?.lines[0]
      return [line?.name, line?.rivals?.map(({ fact, text }) => [fact, text]) ?? []]
    }
    here.changeLine(id, LINE.id, { name: 'bus B' }, LINE.name)
    await vi.waitFor(() => expect(named(other)).toEqual(['bus B', []]))
    // the other field was typed in before that came
    other.changeLine(id, LINE.id, { name: 'p' }, LINE.name)
    other.changeLine(id, LINE.id, { name: 'pi' }, 'p')
    other.changeLine(id, LINE.id, { name: 'pitot' }, 'pi')
    const both = ['pitot', [['name', 'bus B']]]
    await vi.waitFor(() => expect([here, other].map(named)).toEqual([both, both]))
    expect(named(await start())).toEqual(both)
    here.takeLineText(id, LINE.id, 'name', 'bus B', ['pitot'])
    await vi.waitFor(() =>
      expect([here, other].map(named)).toEqual([
        ['bus B', []],
        ['bus B', []],
      ]),
    )
  })

  it('keeps both texts of a fact, and never lets an emptied field take away what was not read', async () => {
    const here = await start()
    const { id } = here.createFromTriage(TRIAGE)
    await here.settled()
    const other = await start()
    const line = (app: typeof here) => app.complaints.value?.[0]?.lines[0]
    here.writeLineFact(id, LINE.id, 'markedF', typed('4n7'), '')
    await vi.waitFor(() => expect(line(other)?.facts.markedF?.text).toBe('4n7'))
    other.writeLineFact(id, LINE.id, 'markedF', typed('10n'), '')
    await vi.waitFor(() => expect(line(here)?.rivals).toMatchObject([{ fact: 'markedF', text: '4n7' }]))
    other.writeLineFact(id, LINE.id, 'noiseHz', typed('9M'), '')
    here.writeLineFact(id, LINE.id, 'markedF', undefined, '4n7')
    await vi.waitFor(() => {
      expect(line(here)).toMatchObject({ facts: { markedF: { text: '10n' }, noiseHz: { text: '9M' } } })
      expect(line(other)?.rivals).toBeUndefined()
    })
  })

  it('keeps a scratch line and a triage that another window replaces', async () => {
    const here = await start()
    const other = await start()
    here.writeScratchFact('markedF', typed('4n7'))
    here.setAnswers({ gate: 'here' }, 2)
    await here.settled()
    other.openScratch({ ...newLine(), facts: { noiseHz: typed('9M') } })
    other.setAnswers({ gate: 'other' }, 2)
    await other.settled()
    await vi.waitFor(() => {
      expect(other.scratchBefore.value?.facts).toEqual({ markedF: typed('4n7') })
      expect(other.triageBefore.value?.answers).toEqual({ gate: 'here' })
    })
    const later = await start()
    later.undoTriage()
    later.undoScratch()
    expect([later.triage.value.answers, later.scratch.value.facts]).toEqual([
      { gate: 'here' },
      { markedF: typed('4n7') },
    ])
    await later.settled()
    const last = await start()
    expect([last.triage.value.answers, last.triageBefore.value?.answers]).toEqual([{ gate: 'here' }, { gate: 'other' }])
  })
})

describe('a record that is not there any more', () => {
  it('is written whole when something is typed into it', async () => {
    const app = await start()
    const { id } = app.createFromTriage(TRIAGE)
    app.addLine(id, { ...newLine('contact 20'), id: 'line-20' })
    await app.settled()
    const db = await import('../../src/store/db.ts')
    await db.inOneGo(['lines'], (desk) => desk.remove('lines', [id, 'line-20']))
    app.writeLineFact(id, 'line-20', 'markedF', { text: '3n3', origin: { by: 'user' } })
    await app.settled()
    expect((await app.getComplaint(id))?.lines[1]).toMatchObject({
      name: 'contact 20',
      facts: { markedF: { text: '3n3' } },
    })
    await db.inOneGo(['complaints', 'lines'], async (desk) => {
      await desk.remove('complaints', id)
      await desk.removeOwned('lines', id)
    })
    app.writeNote(id, 'still typing')
    await app.settled()
    expect(await app.getComplaint(id)).toMatchObject({
      title: TRIAGE.title,
      note: 'still typing',
      lines: [{ name: 'contact 19' }, { name: 'contact 20', facts: { markedF: { text: '3n3' } } }],
    })
    expect([app.saveState.value, app.storeNotice.value]).toEqual(['saved', undefined])
  })
})

describe('a storage that never answers', () => {
  it('is waited for two seconds; the app goes on in memory, says so, and saves once it answers', async () => {
    const before = await start()
    before.createFromTriage({ ...TRIAGE, title: 'kept before' })
    await before.settled()
    const { closeStore, DB_NAME, DB_VERSION } = await import('../../src/store/db.ts')
    const holder = await new Promise<IDBDatabase>((done) => {
      const request = indexedDB.open(DB_NAME, DB_VERSION)
      request.onsuccess = () => done(request.result)
    })
    closeStore()
    // an upgrade that waits for the holder: every other opening waits behind it
    const upgrade = indexedDB.open(DB_NAME, DB_VERSION + 1)
    upgrade.onupgradeneeded = () => upgrade.transaction?.abort()

    const app = await start()
    expect(app.storeNotice.value).toContain('does not answer')
    const { id } = app.createFromTriage({ ...TRIAGE, title: 'made in memory' })
    app.writeNote(id, 'typed in memory')
    await app.settled()
    expect(app.complaints.value).toMatchObject([{ title: 'made in memory', note: 'typed in memory' }])
    expect(app.saveState.value).toBe('failed')
    holder.close()
    await vi.waitFor(() => expect(app.complaints.value).toHaveLength(2), { timeout: 5000 })
    await vi.waitFor(() => expect([app.saveState.value, app.storeNotice.value]).toEqual(['saved', undefined]))
    expect((await start()).complaints.value?.map(({ title }) => title)).toEqual(['made in memory', 'kept before'])
  })
})
