// @vitest-environment happy-dom
/** A window is killed before it has written, and its clock was behind what it wrote on: nothing of it is lost. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { restoreSteps } from '../../src/store/restore-steps.ts'
import { freshStore } from '../store/fresh-store.ts'

const NOON = Date.parse('2026-06-01T12:00:00.000Z')
const LINE = { ...newLine('bus A'), id: 'line-a' }
const TRIAGE = { title: 'Needle swings', answers: { wrong: 'reading' }, guideVersion: 1, line: LINE }
const EVENT = { at: '2026-05-31T12:00:00.000Z', evidence: 'wrong', option: 'data' }

async function start() {
  vi.resetModules()
  const [log, queue, connectors] = await Promise.all([
    import('../../src/state/complaints.ts'),
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

/** A complaint with a connector, written at noon; from then on the clock is a day behind and nothing reaches the disk. */
async function setBack() {
  const app = await start()
  const { id } = app.createFromTriage(TRIAGE)
  await app.seen(id)
  app.addConnector(id, { ...newConnector('J1'), id: 'j1', shape: 'ring' })
  await app.settled()
  vi.setSystemTime(NOON - 86_400_000)
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
    expect(kept).toMatchObject({ answers: { wrong: 'picture' }, lines: [{ name: 'bus C' }] })
  })

  it('is read back with what it was made on, and no time that is none', () => {
    const step = { do: 'delete', id: 'a', at: '2026-05-31T12:00:00.000Z' }
    const seen = '2026-06-01T12:00:00.000Z'
    expect(
      restoreSteps([
        { ...step, seen },
        { ...step, seen: 'noon' },
      ]),
    ).toEqual([{ ...step, seen }, step])
  })
})
