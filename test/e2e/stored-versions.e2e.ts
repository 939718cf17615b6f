/** The app opens what every earlier version of it has stored in a real browser, and meets what a newer one has stored. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { DB_NAME, DB_VERSION } from '../../src/store/db.ts'
import v1 from '../store/fixtures/v1.json' with { type: 'json' }
import v2 from '../store/fixtures/v2.json' with { type: 'json' }
import v3 from '../store/fixtures/v3.json' with { type: 'json' }
import v4 from '../store/fixtures/v4.json' with { type: 'json' }
import v5 from '../store/fixtures/v5.json' with { type: 'json' }
import { CLEAN, openSite, type Site } from './support/site.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

type Stores = Readonly<
  Record<string, { readonly keyPath: string | string[] | null; readonly records: object | readonly object[] }>
>

/** Stores it as that version did; `version` other than its own: as a newer one would have left it. */
const seed = (page: Page, stores: Stores, version: number) =>
  page.evaluate(
    ([name, wanted, all]) =>
      new Promise<void>((done, failed) => {
        const request = indexedDB.open(name, wanted)
        const withBytes = (record: object) =>
          'bytes' in record
            ? { ...record, bytes: Uint8Array.from(atob(String(record.bytes)), (sign) => sign.charCodeAt(0)).buffer }
            : record
        request.onupgradeneeded = () => {
          for (const [storeName, { keyPath, records }] of Object.entries(all)) {
            const store = request.result.createObjectStore(storeName, keyPath === null ? {} : { keyPath })
            if (Array.isArray(records)) for (const record of records) store.put(withBytes(record))
            else for (const [key, record] of Object.entries(records)) store.put(record, key)
          }
        }
        request.onsuccess = () => {
          request.result.close()
          done()
        }
        request.onerror = () => failed(request.error)
      }),
    [DB_NAME, version, stores] as const,
  )

/** A page of this origin that runs nothing of the app; the browser asks for its icon, which is not the matter. */
async function atPlainPage(page: Page, at: (hash: string) => string): Promise<void> {
  await page.route('**/favicon.ico', (route) => route.fulfill({ status: 204 }))
  await page.goto(at('licences.txt'))
}

const versionNow = (page: Page) =>
  page.evaluate(async (name) => (await indexedDB.databases()).find((one) => one.name === name)?.version, DB_NAME)

const TITLES = {
  1: 'Hum in the left headset',
  2: 'Hum in the left headset',
  3: 'Squeal with the second radio',
  4: 'Filter row for the nose bay box',
  5: 'Filter row for the nose bay box',
} as const

it.each([
  [1, v1.stores],
  [2, v2.stores],
  [3, v3.stores],
  [4, v4.stores],
  [5, v5.stores],
] as const)(
  'what version %i stored is all there, can be typed in, and is there again without a network',
  {
    timeout: 60_000,
  },
  async (version, stores) => {
    const { page, at, goDark } = await site.visit()
    await atPlainPage(page, at)
    await seed(page, stores, version)
    await page.goto(at('#/log'))
    const row = page.getByRole('link', { name: new RegExp(`^${TITLES[version]}`) })
    await row.waitFor()
    expect(await page.getByRole('list', { name: 'Complaints' }).getByRole('listitem').count()).toBe(
      stores.complaints.records.filter((one) => !('deletedAt' in one)).length,
    )
    await row.click()
    const note = page.getByRole('textbox', { name: /note/i })
    const old = stores.complaints.records[0]?.note ?? ''
    await expect.poll(() => note.inputValue()).toBe(old)
    await note.fill(`${old} Seen again.`)
    await page.getByText('Ready: from now on').waitFor()
    await goDark()
    await page.reload()
    await expect.poll(() => note.inputValue()).toBe(`${old} Seen again.`)
    expect(await versionNow(page)).toBe(DB_VERSION)
  },
)

it('leaves what a newer version stored as it is, says so, and gives what can be read as a file', {
  timeout: 60_000,
}, async () => {
  const { page, at } = await site.visit({ serviceWorkers: 'block', acceptDownloads: true })
  await atPlainPage(page, at)
  await seed(page, { ...v5.stores, panels: { keyPath: 'id', records: [{ id: 'p-1' }] } }, DB_VERSION + 1)
  await page.goto(at('#/log'))
  await page.getByRole('alert').getByText('written by a newer version').waitFor()
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save what can be read' }).click()
  expect((await download).suggestedFilename()).toBe('rescued.stillpin.json')
  expect(await versionNow(page)).toBe(DB_VERSION + 1)
})
