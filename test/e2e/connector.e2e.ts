/** A connector on a phone and on a desk: pasted, looked at, changed, decided, taken back; rubbish at every door. */
import type { Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { waitForOffline } from './support/browser.ts'
import { answerButton, CLEAR, heading, shown } from './support/screen.ts'
import { CLEAN, DESK, openSite, PHONE, type Site, type Visit } from './support/site.ts'

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

/** An invented audio box, 15 ways: two words nobody knows, three pairs by their names, one barred line. */
const TABLE = [
  'Pin\tFunction\tLine kind\tFrequency (MHz)\tNeed (dB)\tNoise source\tNoise load',
  '1\t28 V in\t28V\t0,15\t30\t1;10;50\t50',
  '2\t28 V return\treturn\t\t\t\t',
  '3\tMic high\tmic\t118;137\t20\t150\t150',
  '4\tMic low\tmic\t118;137\t20\t150\t150',
  '5\tBus 1 A\t429\t118\t20\t75\t12k',
  '6\tBus 1 B\t429\t118\t20\t75\t12k',
  '7\tCAN H\tCAN\t118\t20\t60\t1k',
  '8\tCAN L\tCAN\t118\t20\t60\t1k',
  '9\tspare\t\t\t\t\t',
  '10\tShield\tground\t\t\t\t',
  '11\tPTT\tPTT\t118\t20\t1k\t10k',
  '12\tLamp\tdimmer\t118\t20\t\t',
  '13\tProbe\tfuel probe\t\t\t\t',
  '14\tTX+\tRS-422\t118\t20\t100\t100',
  '15\tTX-\tRS-422\t118\t20\t100\t100',
].join('\n')

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })
const link = (name: string | RegExp) => page.getByRole('link', { name, exact: true })
const region = (name: string) => page.getByRole('region', { name, exact: true })
const table = () => page.getByRole('textbox', { name: 'Table, pasted from a spreadsheet' })
const contacts = () => page.getByRole('list', { name: 'Contacts', exact: true })
/** So many and no more, once they stand there. */
const expectContacts = async (count: number) => {
  const rows = contacts().getByRole('listitem')
  await rows.nth(count - 1).waitFor()
  expect(await rows.count()).toBe(count)
}
const views = (name: string) =>
  page.getByRole('navigation', { name: 'Views of the connector' }).getByRole('link', { name })
const putAway = async () => {
  const bar = button('Put this notice away')
  if ((await bar.count()) > 0) await bar.first().click()
}

/** A design with one connector that has no contacts yet. */
async function beginConnector(): Promise<void> {
  await page.goto(visit.at('#/log'))
  await button('New design, without a complaint').click()
  await button('Add a connector').click()
  await link('Paste a table').waitFor()
}

const tell = (word: string) => page.getByRole('region', { name: `The word ${word}`, exact: true })

async function pasteIt(): Promise<void> {
  await link('Paste a table').click()
  await table().fill(TABLE)
  await tell('429')
    .getByRole('button', { name: /^ARINC 429, high speed/ })
    .click()
  await tell('dimmer').getByRole('button', { name: 'leave the kind open' }).click()
  await region('What changes').getByText('15 new.').waitFor()
}

/** Nothing stands beside the screen, and nothing to be touched is too small. */
async function expectInReach(): Promise<void> {
  const { beyond, small } = await page.evaluate(() => {
    const targets = [
      ...document.querySelectorAll<HTMLElement>('main a, main button, main select, main input:not(.unseen)'),
    ]
    const seen = targets.filter((one) => one.checkVisibility() && one.closest('.unseen') === null)
    return {
      beyond: document.documentElement.scrollWidth - innerWidth,
      small: seen
        .filter((one) => {
          const { height } = (one.closest('label, .row-button') ?? one).getBoundingClientRect()
          return height < 24
        })
        .map((one) => one.outerHTML.slice(0, 80)),
    }
  })
  expect(beyond).toBeLessThanOrEqual(0)
  expect(small).toEqual([])
}

describe.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('on %s, without a network', (_where, viewport) => {
  it('is pasted, changed, undone, deleted and brought back', async () => {
    visit = await site.visit({ viewport })
    page = visit.page
    await page.goto(visit.at(''))
    await heading(page).waitFor()
    await waitForOffline(page)
    await visit.goDark()
    await beginConnector()
    await putAway()
    await pasteIt()
    await expectInReach()
    await button('Take over').click()
    await expectContacts(15)
    // the schedule says what may be said of each: a sign and a word
    await page.locator('ul[aria-label="Contacts"] [data-mark="barred"]').waitFor()
    await page.getByText('Working out every contact').waitFor({ state: 'detached' })
    expect(await page.locator('ul[aria-label="Contacts"] [data-mark="open"]').count()).toBe(0)
    await expectInReach()

    // several at once, by a span and on the face
    await button('Edit several').click()
    await page.getByRole('textbox', { name: 'Choose by name' }).fill('3-4')
    await button('Choose these').click()
    await region('Edit several').getByText('2 chosen.').waitFor()
    await page.getByRole('option', { name: /^11, PTT/ }).click({ force: true })
    await region('Edit several').getByText('3 chosen.').waitFor()
    await page.getByRole('option', { name: /^11, PTT/ }).click({ force: true })
    await region('Edit several').getByText('2 chosen.').waitFor()
    await page.getByRole('textbox', { name: 'Noise frequency' }).fill('121,5 MHz')
    await button('Say it of all chosen').click()
    await region('Edit several').getByText('2 contacts changed.').waitFor()
    await button('Done').click()
    await contacts()
      .getByRole('link', { name: /^3 Mic high/ })
      .click()
    await page.getByText('Facts of the line', { exact: true }).click()
    expect(await page.locator('form [name="frequencyHz"]').first().inputValue()).toBe('121,5 MHz')
    await page.getByRole('navigation', { name: 'Neighbours in the list' }).getByRole('link', { name: /Next/ }).click()
    await heading(page).getByText('Contact 4').waitFor()
    await page.getByRole('link', { name: 'J1', exact: true }).click()
    await button('Undo the last change').click()
    await contacts()
      .getByRole('link', { name: /^3 Mic high/ })
      .click()
    await page.getByText('Facts of the line', { exact: true }).click()
    expect(await page.locator('form [name="frequencyHz"]').first().inputValue()).toBe('118 MHz;137 MHz')
    await page.getByRole('link', { name: 'J1', exact: true }).click()

    // deleted and brought back, as it was
    await page.getByText('What it is, more contacts, delete').click()
    await button('Delete the connector').click()
    await region('Connectors').waitFor()
    expect(await region('Connectors').getByRole('link').count()).toBe(0)
    await button('Undo').click()
    await region('Connectors').getByRole('link', { name: /^J1/ }).click()
    await expectContacts(15)
    await page.reload()
    await contacts()
      .getByRole('link', { name: /^15 TX-/ })
      .waitFor()
  })
})

describe.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('on %s, away and back', (_where, viewport) => {
  it('is proposed, grouped, looked at whole, leaves as a file, is deleted, and comes back from the file as it was', async () => {
    visit = await site.visit({ viewport, serviceWorkers: 'block', acceptDownloads: true })
    page = visit.page
    await beginConnector()
    await pasteIt()
    await button('Take over').click()
    const rows = async () => {
      // the view is fetched when it is first gone to
      await contacts().getByRole('link').first().waitFor()
      await page.getByText('Working out every contact').waitFor({ state: 'detached' })
      return contacts().getByRole('link').allTextContents()
    }
    await contacts().getByRole('link').first().waitFor()
    // no part is advised before the safety question is answered; then it is proposed, taken, and brought down to few
    await button(/^None of these, checked/).click()
    await region('Safety question').waitFor({ state: 'detached' })
    await views('Decide').click()
    await page.getByText('Working out every contact').waitFor({ state: 'detached' })
    await button(/^Take the .* clean yes$/).click()
    await page.getByText('Working out every contact').waitFor({ state: 'detached' })
    await button('Group the parts').click()
    await button(/^Take (this part|these \d+ parts) for all of them$/).click()
    await views('Contacts').click()
    const before = await rows()
    expect(before).toHaveLength(15)
    await views('Whole').click()
    await heading(page).getByText('The whole connector').waitFor()
    await expectInReach()
    await views('Sheet').click()
    await region('The sheet')
      .getByText(/^15 contacts: /)
      .waitFor()
    await expectInReach()
    const coming = page.waitForEvent('download')
    await button('Save complaint (JSON)').click()
    const file = await (await coming).path()
    await page.goto(visit.at('#/log'))
    await button('Delete New design').click()
    await button('Put this notice away').click()
    expect(await page.getByRole('link', { name: /^New design/ }).count()).toBe(0)
    await page.getByText('Bring in a file, or save all as one').click()
    await page.setInputFiles('main input[type="file"]', file)
    await region('What would change').getByText('one connector').waitFor()
    await button('Bring it in').click()
    await page.getByRole('link', { name: /^New design/ }).click()
    await region('Connectors').getByRole('link', { name: /^J1/ }).click()
    expect(await rows()).toEqual(before)
  })
})

describe('rubbish', () => {
  it('gets a sentence and takes nothing over', async () => {
    visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    page = visit.page
    await beginConnector()
    await page.getByRole('textbox', { name: 'How many' }).fill('lots')
    await button('Make the contacts').click()
    await page.getByRole('alert').getByText('1 to 256 contacts').waitFor()
    await link('Paste a table').click()
    const rubbish = [
      ['"never closed', 'never closed'],
      ['pin;load\n1;lots', 'Line 2, column “Noise load impedance”'],
      ['pin;load\n1;5\n1;6', 'stands on line 2 and on line 3'],
      ['pin;pair with\n1;1', 'no pair with itself'],
      [`pin\n${Array.from({ length: 300 }, (_, i) => i).join('\n')}`, '256 are the most'],
      ['\t\t\t', 'There is no table'],
    ] as const
    for (const [text, said] of rubbish) {
      await table().fill(text)
      if (text.trim() !== '') await page.getByRole('alert').getByText(said).first().waitFor()
      expect(await button('Take over').count()).toBe(0)
      expect(await table().inputValue()).toBe(text)
    }
    await page.setInputFiles('input[type="file"]', {
      name: 'book.xlsx',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from('PK\u0003\u0004 nothing a table'),
    })
    await page.getByText('“book.xlsx” is a whole spreadsheet').waitFor()
    await page.setInputFiles('input[type="file"]', {
      name: 'old.csv',
      mimeType: 'text/csv',
      // as an older spreadsheet saves it: one byte a sign
      buffer: Buffer.from('pin;function;existing\r\n1;R\u00fcckleitung;4,7 \u00b5F\r\n', 'latin1'),
    })
    await region('What changes').getByText('Rückleitung').waitFor()
    await region('What changes').getByText('4,7 µF').waitFor()
    for (const path of ['', '/paste', '/decide', '/whole', '/trade', '/contact/9']) {
      const here = await page.evaluate(() => location.hash.replace(/\/paste$/, ''))
      await page.goto(visit.at(`${here.replace(/(connector\/)[^/]+.*/, '$1')}nobody${path}`))
      await page.getByRole('heading', { name: 'No such connector' }).waitFor()
    }
  })
})

describe('128 and 256 contacts', () => {
  it.each([128, 256])(
    '%d are in reach on a phone: a list of which a part is in the page, a face to zoom',
    async (count) => {
      visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block', hasTouch: true })
      page = visit.page
      await beginConnector()
      await page.getByRole('textbox', { name: 'How many' }).fill(String(count))
      await button(`Make ${count} contacts`).click()
      await contacts().getByRole('listitem').first().waitFor()
      const inPage = () => contacts().getByRole('listitem').count()
      expect(await inPage()).toBeLessThan(80)
      // in steps of a screen, as a thumb goes: whatever is on the screen is filled
      for (let screens = 0; screens < 30; screens++) {
        const isEnd = await page.evaluate(() => {
          scrollBy(0, innerHeight)
          return new Promise<boolean>((resolve) =>
            requestAnimationFrame(() =>
              requestAnimationFrame(() => resolve(scrollY + innerHeight >= document.documentElement.scrollHeight - 2)),
            ),
          )
        })
        const holes = await page.evaluate(() => {
          const rows = [...document.querySelectorAll('ul[aria-label="Contacts"] > li')]
          const list = document.querySelector('ul[aria-label="Contacts"]')?.getBoundingClientRect()
          const [first, last] = [rows[0]?.getBoundingClientRect(), rows.at(-1)?.getBoundingClientRect()]
          if (!list || !first || !last) return 'no list'
          const [from, to] = [Math.max(0, list.top), Math.min(innerHeight, list.bottom)]
          return from < to && (first.top > from + 1 || last.bottom < to - 1) ? `${first.top} to ${last.bottom}` : ''
        })
        expect(holes).toBe('')
        expect(await inPage()).toBeLessThan(80)
        if (isEnd) break
      }
      await contacts()
        .getByRole('link', { name: new RegExp(`^${count}\\b`) })
        .waitFor()
      await page.evaluate(() => scrollTo(0, 0))
      const names = page.locator('.face-name')
      expect(await names.count()).toBe(0)
      for (let i = 0; i < 4; i++) if (await button('Zoom in').isEnabled()) await button('Zoom in').click()
      await names.nth(count - 1).waitFor()
      expect(await names.count()).toBe(count)
      const px = await names.first().evaluate((one) => one.getBoundingClientRect().height)
      expect(px).toBeGreaterThan(14)
      // one that is seen is opened by a tap on it
      const seen = await page.getByRole('listbox').evaluate((frame) => {
        const { left, top, right, bottom } = frame.getBoundingClientRect()
        for (const option of frame.querySelectorAll('[role="option"]')) {
          const own = option.getBoundingClientRect()
          if (own.left > left && own.top > top && own.right < right && own.bottom < bottom)
            return { name: option.getAttribute('aria-label') ?? '', x: own.left + own.width / 2, y: own.top + 12 }
        }
        throw new Error('No contact is seen.')
      })
      await page.touchscreen.tap(seen.x, seen.y)
      await heading(page)
        .getByText(`Contact ${seen.name.split(',')[0]}`, { exact: true })
        .waitFor()
    },
  )
})

/** A tap is a link, a button, a choice, or a field put under the cursor; what is typed into it is not counted. */
const MOST_TAPS = 40

/** What is known of the complaint; everything else is not known. */
const KNOWN: Readonly<Record<string, string>> = { ...CLEAR, wrong: 'noise', volume: 'gone', when: 'always' }

describe('from a buzz in the intercom to the sheet of its connector', () => {
  it('takes forty taps at most', async () => {
    visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    page = visit.page
    let taps = 0
    const tap = async (target: Locator) => {
      await target.click()
      taps += 1
    }
    await page.goto(visit.at('#/'))
    const search = page.getByRole('searchbox', { name: 'What do you see or hear, or want to know?' })
    await tap(search)
    await search.fill('there is a buzz in the intercom')
    await tap(page.getByRole('list', { name: 'Found' }).getByRole('button').first())
    const here = () => decodeURIComponent(new URL(page.url()).hash.replace('#/ask/', ''))
    await page.waitForFunction(() => location.hash.startsWith('#/ask/'))
    while ((await button('Keep in the log').count()) === 0) {
      const id = here()
      await shown(page, id)
      await tap(answerButton(page, id, KNOWN[id] ?? 'dont-know'))
      await page.waitForFunction((before) => !location.hash.endsWith(`/${before}`), id)
      await shown(page, here())
    }
    await tap(button('Keep in the log'))
    await tap(page.getByRole('link', { name: /^Kept/ }))
    await tap(button('Add a connector'))
    await tap(link('Paste a table'))
    await tap(table())
    await table().fill(TABLE)
    await tap(tell('429').getByRole('button', { name: /^ARINC 429, high speed/ }))
    await tap(tell('dimmer').getByRole('button', { name: 'leave the kind open' }))
    await tap(button('Take over'))
    await tap(views('Decide'))
    await heading(page).getByText('Decide').waitFor()
    await tap(views('Sheet'))
    await region('The sheet')
      .getByText(/^15 contacts: /)
      .waitFor()
    expect(taps).toBeLessThanOrEqual(MOST_TAPS)
    expect(taps).toBeGreaterThan(15)
  })
})
