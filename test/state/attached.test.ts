/** Photos and measured files out with a complaint and back in with it, in files of many megabytes too. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { fromBase64, toBase64 } from '../../src/store/exchange/base64.ts'
import { newLine } from '../../src/store/line.ts'
import { listPhotos, newPhoto, type Photo, putPhoto } from '../../src/store/photos.ts'
import { type KeptTrace, listTraces, newTrace, putTrace } from '../../src/store/traces.ts'
import { freshStore } from '../store/fresh-store.ts'
import { tidyAt } from '../store/tidy-at.ts'
import fc from '../support/property.ts'
import { chance } from '../torture/support/random.ts'
import { importLog } from './log-modules.ts'

const LINE = { ...newLine('bus A'), id: 'line-a' }

const by = chance(20_261_126)
const bytesOf = (count: number): ArrayBuffer => Uint8Array.from({ length: count }, () => by.whole(256)).buffer

const photoOf = (owner: string, count: number): Photo =>
  newPhoto(owner, 'strap-trial', { type: 'image/webp', widthPx: 1600, heightPx: 1200, bytes: bytesOf(count) })

const traceOf = (role: KeptTrace['role'], count: number, name = 'scan.csv'): KeptTrace =>
  newTrace(LINE.id, { kind: 'spectrum', role, name, unit: 'dBuV', rows: 401, bytes: bytesOf(count) })

async function start() {
  vi.resetModules()
  const [log, queue, exchange, out] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/exchange.ts'),
    import('../../src/state/export-file.ts'),
  ])
  await log.loadComplaints()
  return { ...log, ...queue, ...exchange, ...out }
}

/** A complaint with these photos (bytes of each) and a measured file before. */
async function made(sizes: readonly number[]) {
  const app = await start()
  const { id } = app.createFromTriage({ title: 'Buzz', answers: {}, guideVersion: 1, line: LINE })
  await app.settled()
  for (const size of sizes) await putPhoto(photoOf(id, size))
  await putTrace(traceOf('before', 5000))
  return { app, id }
}

const fileOf = async (app: Awaited<ReturnType<typeof start>>, id: string): Promise<string> =>
  (await app.exportComplaint(id))?.parts.join('') ?? ''

type Preview = Awaited<ReturnType<Awaited<ReturnType<typeof start>>['previewImport']>>
const messageOf = (preview: Preview): string => (preview.ok ? 'read' : preview.message)

const contents = async (id: string) => {
  const all = [...(await listPhotos([id])), ...(await listTraces(LINE.id))]
  return all.map(({ bytes, ...rest }) => ({ ...rest, bytes: toBase64(bytes) }))
}

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

describe('bytes as text', () => {
  it('come back as they were, and what is written otherwise is none', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
        const text = toBase64(new Uint8Array(bytes).buffer)
        expect(text).toBe(Buffer.from(bytes).toString('base64'))
        expect(new Uint8Array(fromBase64(text) ?? new ArrayBuffer(1))).toEqual(new Uint8Array(bytes))
      }),
    )
    for (const bad of ['A', 'AB==C', 'AB=A', 'A===', 'AB', 'AB\n=', 'AB==', '====', 'A*=='])
      expect(fromBase64(bad)).toBeUndefined()
    const large = bytesOf(200_000)
    expect(toBase64(large)).toBe(Buffer.from(large).toString('base64'))
  })
})

describe('a complaint with photos and measured files as a file', () => {
  it('goes out, comes into an empty device and goes out the same, bit for bit; taken back, nothing of it stays', async () => {
    const { app, id } = await made([300_000, 1, 2, 200_001, 1_500_000])
    const before = await contents(id)
    const file = await fileOf(app, id)
    expect(JSON.parse(file).attached).toHaveLength(6)
    expect(await app.countAttached(id)).toEqual({ photos: 5, traces: 1 })
    freshStore()
    const other = await start()
    const preview = await other.previewImport(file)
    expect(preview).toMatchObject({ planned: [{ is: 'new', beside: { photos: 5, traces: 1, blocked: 0 } }] })
    expect(await contents(id)).toEqual([])
    await other.performImport(preview, 'merge')
    expect(await contents(id)).toEqual(before)
    expect(await fileOf(other, id)).toBe(file)
    expect((await other.exportAll()).parts.join('')).toBe(file)
    expect(await other.previewImport(file)).toMatchObject({ planned: [{ is: 'same' }], attached: [] })
    await (await start()).undoImport()
    expect(await contents(id)).toEqual([])
  })

  it('goes out without them where that is wished, says so, and leaves them where they are when it comes in', async () => {
    const { app, id } = await made([500])
    const before = await contents(id)
    const file = await app.exportComplaint(id, { withAttached: false })
    expect(file?.parts.join('')).not.toContain('attached')
    expect(file?.left[0]).toBe('Photos and measured files are not in the file; they stay on this device.')
    app.rename(id, 'Hum')
    await app.settled()
    await app.performImport(await app.previewImport(file?.parts.join('') ?? ''), 'replace')
    expect(app.complaints.value).toMatchObject([{ title: 'Buzz' }])
    expect(await contents(id)).toEqual(before)
  })

  it('is read the same where somebody has laid it out otherwise', async () => {
    const { app, id } = await made([500, 700])
    const file = await fileOf(app, id)
    const before = await contents(id)
    for (const text of [JSON.stringify(JSON.parse(file)), file.replaceAll('\n', '\r\n')]) {
      freshStore()
      const other = await start()
      expect(messageOf(await other.previewImport(text))).toBe('read')
      await other.performImport(await other.previewImport(text), 'merge')
      expect(await contents(id)).toEqual(before)
    }
  })

  it('leaves the measured file that is here, or makes room for that of the file, as it is wished; both can be taken back', async () => {
    const { app, id } = await made([])
    const file = await fileOf(app, id)
    const own = traceOf('before', 800, 'own.csv')
    await putTrace(own)
    const names = async () => (await listTraces(LINE.id)).map(({ name }) => name)
    const preview = await app.previewImport(file)
    expect(preview).toMatchObject({ planned: [{ is: 'differs', differences: [], beside: { traces: 0, blocked: 1 } }] })
    await app.performImport(preview, 'merge')
    expect(await names()).toEqual(['own.csv'])
    await app.performImport(await app.previewImport(file), 'replace')
    expect(await names()).toEqual(['scan.csv'])
    await app.undoImport()
    expect(await names()).toEqual(['own.csv'])
  })

  it('is not taken back where a photo was put beside it since that would have no place any more', async () => {
    const { app, id } = await made([400])
    const file = await fileOf(app, id)
    freshStore()
    const other = await start()
    await other.performImport(await other.previewImport(file), 'merge')
    await putPhoto(photoOf(id, 300))
    expect(await other.undoImport()).toMatchObject({ words: expect.stringContaining('it stays as it is now: “Buzz”') })
    expect(other.complaints.value).toMatchObject([{ id }])
    expect(await listPhotos([id])).toHaveLength(2)
  })

  it('leaves a measured file of a line that a file took the place of, as long as that can be taken back', async () => {
    const { app, id } = await made([])
    const before = await contents(id)
    const form = JSON.parse((await app.exportComplaint(id, { withAttached: false }))?.parts.join('') ?? '')
    form.complaints[0].lines = []
    const preview = await app.previewImport(JSON.stringify(form))
    expect(messageOf(preview)).toBe('read')
    await app.performImport(preview, 'replace')
    expect(app.complaints.value).toMatchObject([{ lines: [] }])
    await tidyAt(Date.now() + 30 * 86_400_000)
    await app.undoImport()
    expect(app.complaints.value).toMatchObject([{ lines: [{ id: LINE.id }] }])
    expect(await contents(id)).toEqual(before)
  })

  it('is refused whole, by its line, where one of them does not fit or the file was cut off', async () => {
    const { app, id } = await made([400, 600])
    const file = await fileOf(app, id)
    const lines = file.split('\n')
    const at = lines.indexOf(' "attached": [') + 2
    const withLine = (change: (line: string) => string): string =>
      lines.map((line, index) => (index === at - 1 ? change(line) : line)).join('\n')
    const cases: readonly (readonly [string, RegExp])[] = [
      [withLine((line) => line.replace('"is":"photo"', '"is":"film"')), /attached\[0\]: .*photo, trace/],
      [withLine((line) => line.replace(/"owner":"[^"]*"/, '"owner":"nobody"')), /owner: no complaint or line of this/],
      [withLine((line) => line.replace(/"bytes":"..../, '"bytes":"....')), /bytes: bytes in base 64 are expected/],
      [withLine((line) => line.replace('image/webp', 'text/html')), /type: one of image\/webp, image\/jpeg/],
      [withLine((line) => line.slice(0, 90)), /no whole photo or measured file/],
      [file.slice(0, file.indexOf('\n ]\n}')), /ends before it is complete|no whole photo/],
      [`${file}{}`, /nothing more is expected here/],
    ]
    for (const [text, message] of cases) {
      const said = messageOf(await app.previewImport(text))
      expect(said).toMatch(message)
      expect(said).toMatch(/^Line \d+/)
    }
    expect(messageOf(await app.previewImport(cases[0]?.[0] ?? ''))).toContain(`Line ${at},`)
    expect(messageOf(await app.previewImport(JSON.stringify(JSON.parse(cases[1]?.[0] ?? ''))))).toMatch(
      /nobody|this id/,
    )
  })

  it('can be stopped on its way out and on its way in, and nothing is changed', async () => {
    const { app, id } = await made([900_000, 900_000, 900_000])
    const file = await fileOf(app, id)
    const stopping = new AbortController()
    const seen: number[] = []
    const onProgress = (doneFrac: number) => {
      seen.push(doneFrac)
      if (doneFrac > 0.4) stopping.abort()
    }
    await expect(app.exportComplaint(id, { onProgress, signal: stopping.signal })).rejects.toThrow('stopped')
    expect(seen.at(-1)).toBeLessThan(0.8)
    freshStore()
    const other = await start()
    const again = new AbortController()
    const tell = (doneFrac: number) => doneFrac > 0.4 && again.abort()
    await expect(other.previewImport(file, { onProgress: tell, signal: again.signal })).rejects.toThrow('stopped')
    expect(other.complaints.value).toEqual([])
  })

  it('is all of it on the disk or nothing: no room for a photo takes the complaint back too', async () => {
    const { app, id } = await made([400])
    const file = await fileOf(app, id)
    freshStore()
    const other = await start()
    const preview = await other.previewImport(file)
    const put = IDBObjectStore.prototype.put
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...given) {
      if (this.name === 'photos') throw new DOMException('full', 'QuotaExceededError')
      return put.apply(this, given)
    })
    expect(await other.performImport(preview, 'merge')).toMatchObject({ ok: false })
    vi.restoreAllMocks()
    expect((await start()).complaints.value).toEqual([])
  })
})
