// @vitest-environment happy-dom
/** Connectors of a complaint: shown at once, on disk a moment later, in step with the lines, and back after a kill. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Connector, Contact } from '../../src/calc/connector/types.ts'
import { keptConnector, newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { freshStore } from '../store/fresh-store.ts'
import { tidyAt } from '../store/tidy-at.ts'
import { importLog } from './log-modules.ts'

const LINE = { ...newLine('bus A'), id: 'line-a' }
const TRIAGE = { title: 'Buzz in the intercom', answers: {}, guideVersion: 1, line: LINE }
const CONTACTS: readonly Contact[] = [
  { id: '1', type: 'line', lineId: 'line-a', leg: 'a', texts: { wire: 'W1' } },
  { id: '2', type: 'spare', texts: {} },
]
const J1: Connector = { ...newConnector('J1'), id: 'j1', contacts: CONTACTS }

/** The models as a start of the app finds them: nothing in memory, the storage as it was left. */
async function start() {
  vi.resetModules()
  const [log, queue, connectors, disk, tidy] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/connectors.ts'),
    import('../../src/store/connector-steps.ts'),
    import('../../src/store/tidy.ts'),
  ])
  await log.loadComplaints()
  const seen = async (id: string) => {
    await vi.waitFor(() => expect(connectors.connectorsOf(id).value).toBeDefined())
    return connectors.connectorsOf(id).value ?? []
  }
  return { ...log, ...queue, ...connectors, ...disk, ...tidy, seen }
}

async function withConnector() {
  const app = await start()
  const { id } = app.createFromTriage(TRIAGE)
  await app.seen(id)
  app.addConnector(id, J1)
  await app.settled()
  return { app, id }
}

/** From now on no write reaches the disk. */
function stopWriting(): void {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('gone', 'QuotaExceededError')
  })
}

const written: string[] = []
function watchWrites(): void {
  written.length = 0
  const put = IDBObjectStore.prototype.put
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    written.push(this.name)
    return put.apply(this, args)
  })
}

beforeEach(() => {
  localStorage.clear()
  freshStore()
})
afterEach(() => vi.restoreAllMocks())

describe('the connectors of a complaint', () => {
  it('are shown at once, stand on disk a moment later, and are there at the next start', async () => {
    const { app, id } = await withConnector()
    app.addConnector(id, { ...newConnector('J2'), id: 'a2' })
    app.writeConnectorText(id, 'j1', 'name', 'J1 front')
    app.writeConnectorText(id, 'j1', 'bondOhm', '2.5 m')
    app.writeContactText(id, 'j1', '1', 'wire', 'W101')
    const shown = app.connectorsOf(id).value
    expect(shown?.map(({ name }) => name)).toEqual(['J1 front', 'J2'])
    expect(shown?.[0]).toMatchObject({ shared: { bondOhm: '2.5 m' }, contacts: [{ texts: { wire: 'W101' } }, {}] })
    await app.settled()
    expect(await (await start()).seen(id)).toEqual(shown)
  })

  it('write their own record at a key, and a fact of a line that line only', async () => {
    const { app, id } = await withConnector()
    watchWrites()
    app.writeContactText(id, 'j1', '1', 'remark', 'twisted')
    await app.settled()
    app.writeLineFact(id, 'line-a', 'noiseHz', { text: '9 MHz', origin: { by: 'user' } })
    await app.settled()
    expect(written).toEqual(['connectors', 'lines'])
  })

  it('change with lines in one step, in one transaction, and back as one', async () => {
    const { app, id } = await withConnector()
    const before = [app.connectorsOf(id).value?.[0], app.complaints.value?.[0]?.lines] as const
    const lines = [
      { ...LINE, name: 'bus A, both', facts: { lineKind: { text: 'can', origin: { by: 'user' } } } },
      { ...newLine('discrete'), id: 'line-d' },
    ] as const
    const contacts: readonly Contact[] = [
      CONTACTS[0] as Contact,
      { id: '2', type: 'line', lineId: 'line-d', texts: {} },
    ]
    const transactions = vi.spyOn(IDBDatabase.prototype, 'transaction')
    app.changeConnector(id, 'j1', { contacts, shape: 'rectangular' }, lines)
    expect(app.connectorsOf(id).value?.[0]).toMatchObject({ contacts, shape: 'rectangular' })
    expect(app.complaints.value?.[0]?.lines).toMatchObject([{ name: 'bus A, both' }, { id: 'line-d' }])
    await app.settled()
    expect(transactions.mock.calls.filter(([, mode]) => mode === 'readwrite')).toEqual([
      [['connectors', 'lines'], 'readwrite', { durability: 'strict' }],
    ])
    const changed = [app.connectorsOf(id).value, app.complaints.value]
    const again = await start()
    expect([await again.seen(id), again.complaints.value]).toEqual(changed)

    app.writeContactText(id, 'j1', '1', 'remark', 'typed since')
    app.undoChange(id, 'j1')
    const [connector, after] = [app.connectorsOf(id).value?.[0], app.complaints.value?.[0]?.lines]
    expect(connector?.shape).toBe('ring')
    expect(connector?.contacts).toEqual([{ ...CONTACTS[0], texts: { wire: 'W1', remark: 'typed since' } }, CONTACTS[1]])
    expect(after?.map(({ id: lineId, name, facts }) => [lineId, name, facts])).toEqual(
      before[1]?.map(({ id: lineId, name, facts }) => [lineId, name, facts]),
    )
    await app.settled()
    const last = await start()
    expect([await last.seen(id), last.complaints.value]).toEqual([app.connectorsOf(id).value, app.complaints.value])
    expect(app.lastChangeOf('j1')).toBeDefined()
    app.undoChange(id, 'j1')
    expect([app.connectorsOf(id).value, app.lastChangeOf('j1')]).toEqual([[], undefined])
  })

  it('leave nothing of a step on disk that fails half way', async () => {
    const { app, id } = await withConnector()
    const put = IDBObjectStore.prototype.put
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if (this.name === 'lines') throw new DOMException('full', 'QuotaExceededError')
      return put.apply(this, args)
    })
    app.changeConnector(id, 'j1', { shape: 'rectangular' }, [{ ...newLine('x'), id: 'line-x' }])
    await app.settled()
    expect(app.saveState.value).toBe('failed')
    vi.restoreAllMocks()
    expect((await app.readConnectors(id))[0]?.shape).toBe('ring')
    await app.retrySave()
    expect((await app.readConnectors(id))[0]?.shape).toBe('rectangular')
  })

  it('are taken out with an undo, at once and after a reload', async () => {
    const { app, id } = await withConnector()
    app.removeConnector(id, 'j1')
    expect([app.connectorsOf(id).value, app.lastDeleted.value?.name]).toEqual([[], 'J1'])
    app.undoRemove()
    expect(app.connectorsOf(id).value).toMatchObject([{ id: 'j1' }])
    app.removeConnector(id, 'j1')
    await app.settled()
    const again = await start()
    expect(await again.seen(id)).toEqual([])
    const [gone] = again.removedConnectorsOf(id).value
    again.bringBack(id, gone?.id ?? '')
    await again.settled()
    expect(await (await start()).seen(id)).toMatchObject([{ id: 'j1', contacts: CONTACTS }])
  })

  it('go for good a day after they were taken out, or with their complaint', async () => {
    const { app, id } = await withConnector()
    app.addConnector(id, { ...newConnector('J2'), id: 'j2' })
    app.removeConnector(id, 'j2')
    await app.settled()
    const tomorrow = Date.now() + 25 * 3_600_000
    await app.tidyLog()
    expect(await app.readConnectors(id)).toHaveLength(2)
    await tidyAt(tomorrow)
    expect((await app.readConnectors(id)).map((one) => one.id)).toEqual(['j1'])
    app.remove(id)
    await app.settled()
    await tidyAt(tomorrow)
    expect(await app.readConnectors(id)).toEqual([])
  })

  it('of a complaint that is not there any more come back with one', async () => {
    const { app } = await withConnector()
    await app.performConnectorStep({ do: 'addConnector', connector: keptConnector(J1, 'orphan', 0) })
    const again = await start()
    expect(again.complaints.value?.map(({ id, title }) => [id, title])).toContainEqual(['orphan', 'Recovered'])
    expect(await again.seen('orphan')).toMatchObject([{ id: 'j1' }])
  })

  it('follow what another window does, and keep both texts typed on one', async () => {
    const { app: here, id } = await withConnector()
    const other = await start()
    await other.seen(id)
    other.changeConnector(id, 'j1', { shape: 'rectangular' }, [{ ...newLine('discrete'), id: 'line-d' }])
    await vi.waitFor(() => {
      expect(here.connectorsOf(id).value?.[0]?.shape).toBe('rectangular')
      expect(here.complaints.value?.[0]?.lines).toHaveLength(2)
    })
    here.writeContactText(id, 'j1', '1', 'wire', 'W2', 'W1')
    other.writeContactText(id, 'j1', '1', 'wire', 'W3', 'W1')
    await vi.waitFor(() => {
      for (const app of [here, other]) {
        const [one] = app.connectorsOf(id).value ?? []
        expect([one?.contacts[0]?.texts.wire, ...(one?.rivals ?? []).map(({ text }) => text)].sort()).toEqual([
          'W2',
          'W3',
        ])
      }
    })
    other.takeConnectorText(id, 'j1', { contact: '1', field: 'wire' }, 'W2', ['W3'])
    await vi.waitFor(() => expect(here.connectorsOf(id).value?.[0]?.rivals).toBeUndefined())
  })

  it('keep on the screen what could not be written, and write it at the next start', async () => {
    const { app, id } = await withConnector()
    stopWriting()
    app.addConnector(id, { ...newConnector('J2'), id: 'j2' }, [{ ...newLine('added'), id: 'line-b' }])
    app.changeConnector(id, 'j1', { contacts: CONTACTS.slice(0, 1) }, [{ ...LINE, name: 'bus B' }])
    app.writeContactText(id, 'j1', '1', 'wire', 'W1'.repeat(3))
    app.writeConnectorText(id, 'j2', 'half', 'plug')
    app.takeConnectorText(id, 'j1', { field: 'name' }, 'J7', ['J1'])
    app.removeConnector(id, 'j2')
    app.bringBack(id, 'j2')
    await app.settled()
    const shown = app.connectorsOf(id).value
    expect(shown).toMatchObject([
      { name: 'J7', contacts: [{ texts: { wire: 'W1W1W1' } }] },
      { texts: { half: 'plug' } },
    ])

    const full = await start()
    expect(await full.seen(id)).toEqual(shown)
    expect(full.complaints.value?.[0]?.lines.map(({ name }) => name)).toEqual(['bus B', 'added'])
    vi.restoreAllMocks()
    const after = await start()
    await after.settled()
    expect(await after.readConnectors(id)).toEqual(shown)
    expect(Object.keys(localStorage).filter((key) => key.startsWith('stillpin-unsaved'))).toEqual([])
  })

  it('are made anew for a text typed late into one that is gone', async () => {
    const { app, id } = await withConnector()
    stopWriting()
    app.writeContactText(id, 'j1', '1', 'wire', 'late')
    await app.settled()
    vi.restoreAllMocks()
    const { inOneGo } = await import('../../src/store/db.ts')
    await inOneGo(['connectors'], (desk) => desk.removeOwned('connectors', id))
    expect(await (await start()).seen(id)).toMatchObject([
      { name: 'recovered', contacts: [{ id: '1', texts: { wire: 'late' } }] },
    ])
  })

  it('work without any storage', async () => {
    vi.stubGlobal('indexedDB', undefined)
    const app = await start()
    const { id } = app.createDesign('New box')
    await app.seen(id)
    app.addConnector(id, J1)
    await app.settled()
    vi.unstubAllGlobals()
    expect(app.complaints.value).toMatchObject([{ title: 'New box', purpose: 'design' }])
    expect(app.connectorsOf(id).value).toMatchObject([{ name: 'J1' }])
  })
})
