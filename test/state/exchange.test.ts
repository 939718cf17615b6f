/** Complaints out of the Log and back into it, as the screens ask for it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

const LINE = { ...newLine('bus A'), id: 'line-a', gate: 'clear' as const }
const TRIAGE = { title: 'Buzz in the intercom!', answers: {}, guideVersion: 1, line: LINE }

async function start() {
  vi.resetModules()
  const [log, queue, connectors, exchange, out] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/connectors.ts'),
    import('../../src/state/exchange.ts'),
    import('../../src/state/export-file.ts'),
  ])
  await log.loadComplaints()
  return { ...log, ...queue, ...connectors, ...exchange, ...out }
}

const textOf = (file: { readonly parts: readonly string[] } | undefined): string => file?.parts.join('') ?? ''

async function withConnector() {
  const app = await start()
  const { id } = app.createFromTriage(TRIAGE)
  app.addConnector(id, { ...newConnector('J1'), id: 'j1', contacts: [{ id: '1', type: 'spare', texts: {} }] })
  await app.settled()
  return { app, id }
}

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

describe('a complaint as a file', () => {
  it('goes out, is deleted, comes back and is the same, bit for bit', async () => {
    const { app, id } = await withConnector()
    const file = await app.exportComplaint(id)
    expect(file?.name).toBe('buzz-in-the-intercom.stillpin.json')
    expect(file?.left.join(' ')).toMatch(/^The answers to the safety questions/)
    freshStore()
    const other = await start()
    const preview = await other.previewImport(new File([textOf(file)], 'x.json'))
    expect(preview).toMatchObject({ ok: true, planned: [{ is: 'new', differences: [] }] })
    expect(other.complaints.value).toEqual([])
    expect(await other.performImport(preview, 'merge')).toEqual({ ok: true, words: 'One complaint brought in.' })
    expect(other.complaints.value).toMatchObject([{ id, title: TRIAGE.title, lines: [{ gate: 'unknown' }] }])
    expect(await other.exportComplaint(id)).toEqual(file)
    expect(await other.previewImport(textOf(file))).toMatchObject({ planned: [{ is: 'same' }] })
    expect(await other.exportAll()).toMatchObject({ parts: file?.parts })
    expect(await other.exportComplaint('nobody')).toBeUndefined()
  })

  it('shows what would change, changes it in every window, and takes it back after a reload', async () => {
    const { app, id } = await withConnector()
    const second = await start()
    const file = JSON.parse(textOf(await app.exportComplaint(id)))
    file.complaints[0].title = 'Hum'
    file.complaints[0].connectors[0].name = 'P1'
    const preview = await app.previewImport(JSON.stringify(file))
    expect(preview).toMatchObject({
      planned: [
        {
          is: 'differs',
          differences: [
            { place: 'title', here: TRIAGE.title, there: 'Hum' },
            { here: 'J1', there: 'P1' },
          ],
        },
      ],
    })
    second.connectorsOf(id)
    await app.performImport(preview, 'replace')
    await vi.waitFor(() => {
      for (const one of [app, second]) {
        expect(one.complaints.value).toMatchObject([{ title: 'Hum' }])
        expect(one.connectorsOf(id).value).toMatchObject([{ name: 'P1' }])
      }
    })
    const after = await start()
    await after.readTakenIn()
    expect(after.takenIn.value?.before).toHaveLength(1)
    expect(await after.undoImport()).toEqual({ ok: true, words: 'One complaint taken back.' })
    expect(after.complaints.value).toMatchObject([{ title: TRIAGE.title, lines: [{ gate: 'clear' }] }])
    expect(after.takenIn.value).toBeUndefined()
  })

  it('says what stays because it was changed since', async () => {
    const { app, id } = await withConnector()
    const text = textOf(await app.exportComplaint(id)).replace('in the intercom', 'in both ears')
    await app.performImport(await app.previewImport(text), 'merge')
    app.writeNote(id, 'typed since')
    await app.settled()
    expect(await app.undoImport()).toEqual({
      ok: true,
      words: 'No complaint taken back. Changed since, so it stays as it is now: “Buzz in both ears!”.',
    })
  })

  it('is refused with a sentence, and so is one the storage has no room for; nothing is changed', async () => {
    const { app, id } = await withConnector()
    expect(await app.previewImport('{"format": 1}')).toMatchObject({
      ok: false,
      message: expect.stringMatching(/^Line 1/),
    })
    expect(await app.previewImport('{"format":"stillpin-complaints","version":1,"complaints":[]}')).toEqual({
      ok: false,
      message: 'The file is in order, and holds no complaint.',
    })
    const text = textOf(await app.exportComplaint(id)).replace('in the intercom', 'in both ears')
    const preview = await app.previewImport(text)
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    expect(await app.performImport(preview, 'replace')).toMatchObject({
      ok: false,
      message: expect.stringMatching(/^Nothing was changed\. .*full/),
    })
    app.writeNote(id, 'not saved')
    await app.settled()
    expect(await app.performImport(preview, 'replace')).toMatchObject({
      message: expect.stringContaining('not saved yet'),
    })
    vi.restoreAllMocks()
    expect(app.complaints.value).toMatchObject([{ title: TRIAGE.title, note: 'not saved' }])
  })

  it('goes out of an app without storage too', async () => {
    vi.stubGlobal('indexedDB', undefined)
    const { app, id } = await withConnector()
    const file = await app.exportComplaint(id)
    const preview = await app.previewImport(textOf(file))
    vi.unstubAllGlobals()
    expect(textOf(file)).toContain('"J1"')
    expect(preview).toMatchObject({ planned: [{ is: 'same' }] })
  })
})
