// @vitest-environment happy-dom
/** A window is killed before it has written, and a clock was wrong then or since: nothing is lost, of it and of others. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { restoreSteps } from '../../src/store/restore-steps.ts'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

const NOON = Date.parse('2026-06-01T12:00:00.000Z')
const LINE = { ...newLine('bus A'), id: 'line-a' }
const TRIAGE = { title: 'Needle swings', answers: { wrong: 'reading' }, guideVersion: 1, line: LINE }
const TRIAL = {
  ...{ id: 't1', at: '2026-05-31T12:00:00.000Z', steps: 'bare; 10n; bare', places: '', noise: '; gone; same' },
  ...{ signal: '; good;', repeats: '', times: '', removed: '' },
}
const EVENT = { at: '2026-05-31T12:00:00.000Z', evidence: 'wrong', option: 'data' }

async function start() {
  vi.resetModules()
  const [log, queue, connectors] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/connectors.ts'),
  ])
  await log.loadComplaints()
  const seen = async (id: string) => {
    await vi.waitFor(() => expect(connectors.connectorsOf(id).value).toBeDefined())
    return connectors.connectorsOf(id).value ?? []
  }
  return { ...log, ...queue, ...connectors, seen }
}

const DAY_MS = 86_400_000

/** A complaint with a connector, written at noon; from then on the clock is wrong by days and nothing reaches the disk. */
async function setBack(days = 1) {
  const app = await start()
  const { id } = app.createFromTriage(TRIAGE)
  await app.seen(id)
  app.addConnector(id, { ...newConnector('J1'), id: 'j1', shape: 'ring' })
  await app.settled()
  vi.setSystemTime(NOON - days * DAY_MS)
  const write = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('gone', 'QuotaExceededError')
  })
  /** the next start, with a disk that writes again */
  const next = async () => {
    await app.settled()
    write.mockRestore()
    const after = await start()
    await after.settled()
    return after
  }
  return { app, id, next }
}

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['Date'], now: NOON })
  localStorage.clear()
  await freshStore()
})
afterEach(() => {
  vi.restoreAllMocks()
  vi.useRealTimers()
})

describe('what a killed window left behind by a clock that was set back', () => {
  it('is carried out: answers, events, tables, a name and a gate of a line, several changes of one record', async () => {
    const { app, id, next } = await setBack()
    app.change(id, { answers: { wrong: 'data' }, events: [EVENT] })
    app.change(id, { tables: { shields: [{ cable: 'W12' }] } })
    app.changeLine(id, 'line-a', { name: 'bus B' })
    app.changeLine(id, 'line-a', { gate: 'clear' })
    const [kept] = (await next()).complaints.value ?? []
    expect(kept).toMatchObject({
      answers: { wrong: 'data' },
      events: [EVENT],
      tables: { shields: [{ cable: 'W12' }] },
      lines: [{ name: 'bus B', gate: 'clear' }],
    })
  })

  it('is carried out: the shape of a connector and a line that is changed with it', async () => {
    const { app, id, next } = await setBack()
    app.changeConnector(id, 'j1', { shape: 'rectangular' }, [{ ...LINE, name: 'bus B' }])
    const after = await next()
    expect([await after.seen(id), after.complaints.value?.[0]?.lines]).toMatchObject([
      [{ shape: 'rectangular' }],
      [{ name: 'bus B' }],
    ])
  })

  it('is carried out: a line, a connector and a complaint that are taken out', async () => {
    const { app, id, next } = await setBack()
    app.removeLine(id, 'line-a')
    app.removeConnector(id, 'j1')
    const after = await next()
    expect([after.complaints.value?.[0]?.lines, await after.seen(id)]).toEqual([[], []])
    const again = await start()
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('gone', 'QuotaExceededError')
    })
    again.remove(id)
    await again.settled()
    vi.restoreAllMocks()
    expect((await start()).complaints.value).toEqual([])
  })

  it('leaves what another window has written since, under the same clock', async () => {
    const { app, id, next } = await setBack()
    const other = await start()
    app.change(id, { answers: { wrong: 'data' } })
    app.changeLine(id, 'line-a', { name: 'bus B' })
    await app.settled()
    vi.restoreAllMocks()
    other.change(id, { answers: { wrong: 'picture' } })
    other.changeLine(id, 'line-a', { name: 'bus C' })
    await other.settled()
    const [kept] = (await next()).complaints.value ?? []
    expect(kept).toMatchObject({
      answers: { wrong: 'picture' },
      lines: [{ name: 'bus C', rivals: [{ fact: 'name', text: 'bus B' }] }],
    })
  })

  it.each([
    ['typed by a clock a day ahead, written elsewhere by the right one', -1, 0],
    ['typed by the right clock, written elsewhere by one set back', 0, 1],
    ['typed by one set back, written elsewhere by one a day ahead', 1, -1],
  ])('%s: what was written stands, and what it lacks comes to it', async (_is, typedBack, writtenBack) => {
    const { app, id, next } = await setBack(typedBack)
    const other = await start()
    await other.seen(id)
    app.change(id, { answers: { wrong: 'data', rhythm: 'with-engine' }, events: [EVENT] })
    app.change(id, { checks: [{ check: 'window', lineId: 'line-a' }], tables: { shields: [{ cable: 'W12' }] } })
    app.changeLine(id, 'line-a', { name: 'bus B' })
    app.changeLine(id, 'line-a', { trials: [TRIAL] })
    app.changeLine(id, 'line-a', { gate: 'barred' })
    app.changeConnector(id, 'j1', { shape: 'rectangular', adjacent: [{ a: '1', b: '2', text: '3 mm' }] })
    app.changeConnector(id, 'j1', { suppressors: [{ id: 's1', contacts: ['1'] }] })
    await app.settled()
    vi.restoreAllMocks()
    vi.setSystemTime(NOON - writtenBack * DAY_MS)
    other.change(id, { answers: { wrong: 'picture' } })
    other.changeLine(id, 'line-a', { name: 'bus C', gate: 'clear' })
    other.writeConnectorText(id, 'j1', 'name', 'J2')
    await other.settled()
    const after = await next()
    const [kept] = after.complaints.value ?? []
    expect(kept).toMatchObject({
      answers: { wrong: 'picture', rhythm: 'with-engine' },
      events: [EVENT],
      checks: [{ check: 'window', lineId: 'line-a' }],
      tables: { shields: [{ cable: 'W12' }] },
      lines: [{ name: 'bus C', rivals: [{ fact: 'name', text: 'bus B' }], gate: 'barred', trials: [TRIAL] }],
    })
    expect(await after.seen(id)).toMatchObject([
      { name: 'J2', shape: 'ring', adjacent: [{ text: '3 mm' }], suppressors: [{ id: 's1' }] },
    ])
  })

  it.each([
    ['ahead', -1, 0],
    ['right, and the other set back', 0, 1],
  ])('takes nothing out that was changed since, by a clock that was %s', async (_is, typedBack, writtenBack) => {
    const { app, id, next } = await setBack(typedBack)
    const other = await start()
    await other.seen(id)
    app.removeLine(id, 'line-a')
    app.removeConnector(id, 'j1')
    app.remove(id)
    await app.settled()
    vi.restoreAllMocks()
    vi.setSystemTime(NOON - writtenBack * DAY_MS)
    other.writeNote(id, 'only in wet weather')
    other.changeLine(id, 'line-a', { name: 'bus C' })
    other.writeConnectorText(id, 'j1', 'name', 'J2')
    await other.settled()
    const after = await next()
    expect(after.complaints.value).toMatchObject([{ note: 'only in wet weather', lines: [{ name: 'bus C' }] }])
    expect(await after.seen(id)).toMatchObject([{ name: 'J2' }])
  })

  it('counts several keys as one change where they are written as one', async () => {
    const { app, id, next } = await setBack(-1)
    const other = await start()
    for (const note of ['on', 'onl', 'only', 'only in wet weather']) app.writeNote(id, note)
    app.change(id, { answers: { wrong: 'data' } })
    await app.settled()
    vi.restoreAllMocks()
    vi.setSystemTime(NOON)
    other.change(id, { answers: { wrong: 'picture' } })
    await other.settled()
    const [kept] = (await next()).complaints.value ?? []
    expect(kept).toMatchObject({ note: 'only in wet weather', answers: { wrong: 'picture' } })
  })

  it('is read back with what it was made on, and no time that is none', () => {
    const step = { do: 'delete', id: 'a', at: '2026-05-31T12:00:00.000Z' }
    const seen = '2026-06-01T12:00:00.000Z'
    expect(
      restoreSteps([
        { ...step, seen, on: 4, turn: 5 },
        { ...step, seen: 'noon', on: -1, turn: 0.5 },
      ]),
    ).toEqual([{ ...step, seen, on: 4, turn: 5 }, step])
  })
})
