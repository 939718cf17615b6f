/** What is kept beside a test: a photo, scaled down in the browser, and a table filled in; offline, printed, deletable. */
import { deflateSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { answerAll, CLEAR, follow, heading, press, shown, stepsOf, titleOf } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true })
  page = visit.page
  await page.goto(visit.at('#/ask/bond'))
  await shown(page, 'bond')
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

function crc32(bytes: Buffer): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const crc = Buffer.alloc(4)
  crc.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, crc])
}

/** A grey PNG of a slope with noise on it; with noise alone nothing packs worse. */
function png(widthPx: number, heightPx: number, noise: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(widthPx, 0)
  header.writeUInt32BE(heightPx, 4)
  header.writeUInt8(8, 8)
  const rows = Buffer.alloc((widthPx + 1) * heightPx)
  let state = 1
  for (let at = 0; at < rows.length; at++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    const slope = ((at % (widthPx + 1)) / widthPx) * (255 - noise)
    rows[at] = at % (widthPx + 1) === 0 ? 0 : slope + ((state >>> 24) * noise) / 255
  }
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 1 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

const CAMERA = { name: 'strap.png', mimeType: 'image/png', buffer: png(2400, 1800, 3) }

const section = () => page.getByRole('region', { name: 'Photos', exact: true })
const picture = () => section().getByRole('img')
const choose = (file: typeof CAMERA) => page.getByLabel('Choose a photo').setInputFiles(file)

type StoredPhoto = { widthPx: number; heightPx: number; type: string; bytes: ArrayBuffer }

/** What the database holds: sides, type and bytes of each photo. */
const storedPhotos = () =>
  page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((done, failed) => {
      const request = indexedDB.open('stillpin')
      request.onsuccess = () => done(request.result)
      request.onerror = () => failed(request.error)
    })
    const all = await new Promise<StoredPhoto[]>((done) => {
      const request: IDBRequest<StoredPhoto[]> = db.transaction('photos').objectStore('photos').getAll()
      request.onsuccess = () => done(request.result)
    })
    db.close()
    return all.map(({ widthPx, heightPx, type, bytes }) => ({ widthPx, heightPx, type, size: bytes.byteLength }))
  })

/** Whether the browser could draw what it shows. */
const isDrawn = () =>
  picture()
    .first()
    .evaluate((image) => image instanceof HTMLImageElement && image.naturalWidth > 0)

async function keep(): Promise<void> {
  await follow(page, '#/ask/measure-open')
  await press(page.getByRole('button', { name: 'Keep in the log', exact: true }))
  await press(page.getByRole('link', { name: /^Kept/ }))
  await page.getByRole('textbox', { name: 'Title' }).waitFor()
}

describe('a photo with a test', () => {
  it('is scaled down, stands on the card, the complaint and the hand-over, and is there without a network', async () => {
    await choose(CAMERA)
    await picture().waitFor()
    const [photo] = await storedPhotos()
    expect(photo).toMatchObject({ widthPx: 1600, heightPx: 1200 })
    expect(photo?.type).toMatch(/^image\/(webp|jpeg)$/)
    expect(photo?.size).toBeLessThanOrEqual(300_000)
    expect(await isDrawn()).toBe(true)
    await choose({ ...CAMERA, name: 'worst.png', buffer: png(1800, 2400, 255) })
    await picture().nth(1).waitFor()
    const [, worst] = await storedPhotos().then((all) => all.toSorted((a, b) => b.widthPx - a.widthPx))
    expect(worst?.size).toBeLessThanOrEqual(300_000)
    expect((worst?.widthPx ?? 0) / (worst?.heightPx ?? 1)).toBeCloseTo(3 / 4, 2)
    await answerAll(page, [['bond', 'poor']], 'tap')
    await keep()
    await picture().first().waitFor()
    const handover = page.locator('details', { hasText: 'Hand-over for the next shift' })
    await handover.locator('summary').tap()
    const inHandover = handover.getByRole('img', { name: new RegExp(`^Photo: ${titleOf('bond').replace('?', '\\?')}`) })
    await inHandover.first().waitFor()
    await page.evaluate(() => navigator.serviceWorker.ready)
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
    await visit.goDark()
    await page.reload()
    await picture().first().waitFor()
    expect(await isDrawn()).toBe(true)
    expect(await storedPhotos()).toHaveLength(2)
  })

  it('is deleted by one tap, and comes back by another', async () => {
    await choose(CAMERA)
    await picture().waitFor()
    await section()
      .getByRole('button', { name: /^Delete/ })
      .tap()
    await section().getByText('Photo deleted.').waitFor()
    expect(await storedPhotos()).toEqual([])
    await section().getByRole('button', { name: 'Undo' }).tap()
    await picture().waitFor()
    expect(await storedPhotos()).toHaveLength(1)
  })

  it('is told of when the storage is full or the file is no picture; what was typed is kept', async () => {
    await page.getByRole('textbox', { name: /Reading/ }).fill('7.1')
    await choose({ ...CAMERA, name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') })
    await page
      .getByRole('alert')
      .getByText(/not a picture/)
      .waitFor()
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: Parameters<typeof put>) {
        if (this.name === 'photos') throw new DOMException('no room', 'QuotaExceededError')
        return put.apply(this, given)
      }
    })
    await choose(CAMERA)
    await page
      .getByRole('alert')
      .getByText(/storage of this device is full.*Everything typed is kept/)
      .waitFor()
    expect(await storedPhotos()).toEqual([])
    await answerAll(page, [['bond', 'poor']], 'tap')
    await keep()
    await page.reload()
    await page
      .getByRole('region', { name: 'Triage', exact: true })
      .getByText(/Above the limit/)
      .waitFor()
  })

  it('is erased with everything else', async () => {
    await choose(CAMERA)
    await picture().waitFor()
    await page.getByRole('button', { name: 'About', exact: false }).first().tap()
    await page.getByRole('button', { name: 'Erase everything on this device' }).tap()
    await page.getByRole('button', { name: 'Erase it all' }).tap()
    await page.getByText(/^Erased\./).waitFor()
    const names = await page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name))
    expect(names).toEqual([])
  })
})

describe('a table to fill in', () => {
  const events = () => page.getByRole('region', { name: 'Events in flight', exact: true }).first()

  it('takes events that come only in flight, as typed, through a closed window, on the hand-over and on paper', async () => {
    await follow(page, '#/ask/gate-danger')
    const steps = stepsOf({ ...CLEAR, wrong: 'reading', when: 'flight' })
    for (const step of steps) {
      await answerAll(page, [step], 'tap')
      if (step[0] === 'when') break
    }
    await follow(page, '#/ask/flight-table')
    await events().getByLabel('Place').first().fill('over the ridge')
    await events().getByLabel('What was heard or seen').first().fill('flag for 3 s')
    await events().getByLabel('Exposure').first().fill('10 min in cloud')
    await keep()
    await events()
      .getByText(/Event 1: over the ridge, flag for 3 s, 10 min in cloud/)
      .waitFor()
    await events().getByText('Event 2', { exact: true }).tap()
    await events().getByLabel('Phase of flight').nth(1).fill('descent')
    await page.close()
    page = await visit.context.newPage()
    await page.goto(visit.at('#/log'))
    await page.getByRole('link', { name: new RegExp(titleOf('measure-open')) }).tap()
    await events()
      .getByText(/Event 2: descent/)
      .waitFor()
    const handover = page.locator('details', { hasText: 'Hand-over for the next shift' })
    await handover.locator('summary').tap()
    await handover.getByRole('cell', { name: 'over the ridge' }).waitFor()
    await page.emulateMedia({ media: 'print' })
    await handover.getByRole('cell', { name: 'descent' }).waitFor()
    expect(await events().getByLabel('Place').first().isVisible()).toBe(false)
  })

  it('takes the breaker matrix on its note and on its card alike', async () => {
    const matrix = () => page.getByRole('region', { name: 'Breaker matrix', exact: true })
    await follow(page, '#/notes/breaker-matrix')
    await heading(page).waitFor()
    await page.locator('summary').filter({ hasText: 'Breaker matrix' }).click()
    await matrix().getByLabel('Switch or breaker', { exact: true }).fill('landing light')
    await matrix().getByLabel('On', { exact: true }).first().fill('2')
    await follow(page, '#/ask/battery')
    await matrix()
      .getByText(/Switch or breaker 1: landing light, 2/)
      .waitFor()
  })
})
