/** What is typed stays: in two windows at once, on a full device, without storage, past a triage that starts afresh; and goes when asked. */
import type { BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { guideDigest } from '../../src/store/guide-store.ts'
import { waitForOffline } from './support/browser.ts'
import { answerAll, answerButton, CLEAR_GATE, field, heading, openPlace, shown, titleOf } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const come = async (options: BrowserContextOptions = {}, before?: () => void) => {
  visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block', ...options })
  if (before !== undefined) await visit.context.addInitScript(before)
  page = visit.page
}
const open = (hash: string, on = page) => openPlace(on, visit.at(hash))
const button = (name: string | RegExp, on = page) => on.getByRole('button', { name, exact: true })
const box = (name: string, on = page) => on.getByRole('textbox', { name, exact: true })
const notices = (on = page) => on.getByRole('region', { name: 'Notices' })
const bar = (words: string | RegExp, on = page) => notices(on).getByText(words)
/** Puts the notices away: they stand over the lowest part of a small screen. */
const putAway = () => notices().getByRole('button', { name: 'Put this notice away' }).first().click()

/** Keeps a check, and gives the address of its complaint. */
const keepCheck = async () => {
  await open('#/check/need')
  await field(page, 'measuredDb').fill('61')
  await button('Keep in the log').click()
  await page.waitForFunction(() => /^#\/log\/.+\/.+\/need$/.test(location.hash))
  return new URL(page.url()).hash.split('/').slice(0, 3).join('/')
}

const shows = (on: Page, name: string, text: string) =>
  on.waitForFunction(([id, wanted]) => document.querySelector<HTMLInputElement>(`#${id}`)?.value === wanted, [
    name,
    text,
  ] as const)

describe('two windows on one text', () => {
  it('take over what the other wrote while their field is untouched, and keep both when both were typed in', async () => {
    await come()
    const hash = await keepCheck()
    const other = await visit.context.newPage()
    await open(hash)
    await open(hash, other)
    await box('Note').pressSequentially('bond')
    await shows(other, 'note', 'bond')
    await box('Note', other).pressSequentially(' strap')
    await box('Note', other).blur()
    // untouched no longer, the first window keeps what it shows, and writes its own beside
    await box('Note').pressSequentially('ing', { delay: 20 })
    await shows(other, 'note', 'bonding')
    for (const on of [page, other]) await on.getByText('Another window holds another note').waitFor()
    await other.getByText('bond strap', { exact: true }).waitFor()
    await other.getByRole('button', { name: 'Take this one' }).click()
    // still typed in, the field shows what was typed there, and the other text beside it
    await page.getByText('bond strap', { exact: true }).waitFor()
    await box('Note').blur()
    await page.getByText('Another window holds another note').waitFor({ state: 'detached' })
    for (const on of [page, other]) await shows(on, 'note', 'bond strap')
    await open(hash, other)
    expect(await box('Note', other).inputValue()).toBe('bond strap')
  })
})

describe('a triage that is kept nowhere else', () => {
  it('comes back after “Start afresh”, and after another window went over it', async () => {
    await come()
    const other = await visit.context.newPage()
    await open('#/ask/gate-danger', other)
    await shown(other, 'gate-danger')
    await open('#/ask/gate-danger')
    await answerAll(page, [...CLEAR_GATE, ['wrong', 'noise']])
    await shown(page, 'volume')
    await open('#/ask')
    await button('Start afresh').click()
    await bar(/^The triage before this one \(3 answers\)/).waitFor()
    await button('Go back to it').click()
    await page.getByText('3 answers so far').waitFor()

    // the other window stood at the first question all the time
    await answerButton(other, 'gate-danger', 'none').click()
    await bar(/^The triage before this one \(3 answers\)/, other).waitFor()
    await button('Go back to it', other).click()
    await other.getByText('3 answers so far').waitFor()
    await open('#/ask', other)
    await other.getByText('3 answers so far').waitFor()
    await button('Go back to the triage before, which was not kept', other).waitFor()
  })
})

describe('a full device', () => {
  it('keeps a complaint made while full over a reload, and writes it once there is room', async () => {
    await come({}, () => {
      const put = IDBObjectStore.prototype.put
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: Parameters<IDBObjectStore['put']>) {
        if (localStorage.getItem('test-full') !== null) throw new DOMException('no room', 'QuotaExceededError')
        return put.apply(this, args)
      }
    })
    await open('#/ask')
    await page.evaluate(() => localStorage.setItem('test-full', 'yes'))
    const hash = await keepCheck()
    await open(hash)
    await box('Title').fill('Made while full')
    await bar(/storage of this device is full/).waitFor()
    await page.reload()
    await heading(page).waitFor()
    expect(await box('Title').inputValue()).toBe('Made while full')
    await bar(/storage of this device is full/).waitFor()
    await box('Note').fill('and typed after the reload')
    await page.evaluate(() => localStorage.removeItem('test-full'))
    await button('Try again').click()
    await bar(/storage of this device is full/).waitFor({ state: 'detached' })
    expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('unsaved')))).toEqual([])
    await open('#/log')
    await page.getByRole('link', { name: /^Made while full/ }).click()
    await shows(page, 'note', 'and typed after the reload')
  })
})

describe('a browser without storage', () => {
  it('works where every storage throws at the mention of it', async () => {
    await come({}, () => {
      const refused = () => {
        throw new DOMException('The operation is insecure.', 'SecurityError')
      }
      for (const name of ['localStorage', 'sessionStorage', 'indexedDB', 'caches'])
        Object.defineProperty(window, name, { get: refused })
      for (const name of ['storage', 'serviceWorker']) Object.defineProperty(navigator, name, { get: refused })
      Object.defineProperty(window, 'BroadcastChannel', {
        value: class {
          constructor() {
            refused()
          }
        },
      })
    })
    await open('#/ask')
    await bar(/does not let the app keep anything/).waitFor()
    await putAway()
    await page.getByRole('link', { name: 'Start', exact: true }).click()
    await answerAll(page, CLEAR_GATE)
    await shown(page, 'wrong')
    const hash = await keepCheck()
    await page.evaluate((wanted) => {
      location.hash = wanted
    }, hash)
    await box('Note').fill('only here')
    await button(/^About/).click()
    await page.getByRole('dialog').getByText('Version', { exact: true }).waitFor()
  })

  it('waits no longer than two seconds for one that never answers, and says so', async () => {
    await come({}, () => {
      const { open } = IDBFactory.prototype
      IDBFactory.prototype.open = function (this: IDBFactory, ...args: Parameters<IDBFactory['open']>) {
        const request = open.apply(this, args)
        request.addEventListener = () => undefined
        return request
      }
    })
    await open('#/ask/gate-danger')
    await shown(page, 'gate-danger')
    await bar(/does not answer/).waitFor()
    await putAway()
    const hash = await keepCheck()
    await page.evaluate((wanted) => {
      location.hash = wanted
    }, hash)
    await box('Note').waitFor()
  })
})

describe('a stored guide that is damaged', () => {
  it('gives way to the one that came with the app, with a notice', async () => {
    await come()
    await open('#/ask/gate-danger')
    await shown(page, 'gate-danger')
    const guide = {
      version: 1,
      edition: 'damaged',
      start: 'gate-danger',
      nodes: [{ is: 'question', id: 'gate-danger' }],
    }
    await page.evaluate(
      (record) =>
        new Promise<void>((done, failed) => {
          const request = indexedDB.open('stillpin')
          request.onerror = () => failed(request.error)
          request.onsuccess = () => {
            const tx = request.result.transaction('guide', 'readwrite')
            tx.objectStore('guide').put(record, 'current')
            tx.oncomplete = () => {
              request.result.close()
              done()
            }
          }
        }),
      { guide, digest: guideDigest(guide) },
    )
    await page.reload()
    await page.getByRole('heading', { level: 1, name: titleOf('gate-danger') }).waitFor()
    await bar(/stored guide was damaged/).waitFor()
  })
})

describe('erasing everything on this device', () => {
  it('asks first, leaves nothing, tells the other window, and starts nothing again unasked', async () => {
    await come({ serviceWorkers: 'allow' })
    const hash = await keepCheck()
    await waitForOffline(page)
    const other = await visit.context.newPage()
    await open(hash, other)
    await button(/^About/).click()
    const dialog = page.getByRole('dialog', { name: 'Stillpin' })
    await dialog.getByRole('radio', { name: 'Night red' }).check()
    await dialog.getByRole('button', { name: 'Erase everything on this device' }).click()
    await dialog.getByText(/one complaint, what is under way/).waitFor()
    await dialog.getByRole('button', { name: 'Keep it' }).click()
    await dialog.getByRole('button', { name: 'Erase everything on this device' }).click()
    await dialog.getByRole('button', { name: 'Erase it all' }).click()
    await dialog.getByText(/^Erased\. Nothing of Stillpin is left/).waitFor()
    const left = () =>
      page.evaluate(async () => ({
        databases: (await indexedDB.databases()).length,
        texts: Object.keys(localStorage),
        caches: await caches.keys(),
        workers: (await navigator.serviceWorker.getRegistrations()).length,
      }))
    expect(await left()).toEqual({ databases: 0, texts: [], caches: [], workers: 0 })
    await bar(/erased in another window/, other).waitFor()
    await box('Note', other).fill('typed after')
    await other.close()
    expect((await left()).texts).toEqual([])
    await dialog.getByRole('button', { name: 'Start anew' }).click()
    await page.waitForFunction(() => location.hash === '')
    await open('#/log')
    await page.getByText('Nothing kept yet.').waitFor()
  })
})
