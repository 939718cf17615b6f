/** Places that have to be brought about: connectors, dialogs, pages of every kind in the book, files, notices. */
import type { Page } from 'playwright-core'
import { soundPageId } from '../../../src/guide/book/sounds/cards.ts'
import { demoComplaint } from '../../../src/store/demo.ts'
import { connectorOfSize } from '../../support/connector-of-size.ts'
import type { Place } from './places.ts'
import { putConnector } from './put-connector.ts'
import { follow, heading, settled } from './screen.ts'
import { workedHash } from './worked-checks.ts'

async function to(page: Page, hash: string, title: string | RegExp): Promise<void> {
  await follow(page, hash)
  await page.getByRole('heading', { level: 1, name: title }).waitFor()
}

const CONTACTS = 15

/** Puts a complaint with a connector on the device and opens a view of it; the page is loaded again. */
async function connector(page: Page, view: string, title: string): Promise<void> {
  if (!page.url().includes('/connector/')) {
    await to(page, '#/log', 'Log')
    await page.getByText('Bring in a file').waitFor()
    const { connector: one, lines } = connectorOfSize(CONTACTS)
    const hash = await putConnector(page, { complaint: { ...demoComplaint(), isDemo: false }, connector: one, lines })
    const [site = ''] = page.url().split('#')
    await page.goto('about:blank')
    await page.goto(`${site}${hash}`)
    await heading(page).waitFor()
  }
  const [home = ''] = new URL(page.url()).hash.match(/^#\/log\/[^/]+\/connector\/[^/]+/) ?? []
  await to(page, `${home}${view}`, title)
}

/** Opens the first page of a shelf by its row; its heading has the focus when it stands. */
async function firstOf(page: Page, shelf: string, title: string): Promise<void> {
  await to(page, `#/notes/${shelf}`, title)
  await page.locator('main .rows a').first().click()
  await page.locator('.book-page').waitFor()
  await page.waitForFunction(() => document.activeElement?.tagName === 'H1')
}

/** A page with a sound, and with words of the trade in its text. */
async function aSound(page: Page): Promise<void> {
  await to(page, `#/notes/${soundPageId('leakage-400')}`, /^Hum/)
  await page.getByRole('button', { name: 'Listen to it' }).first().waitFor()
}

const TRACE = 'Frequency (Hz),Level (dBµV)\n10000,50\n150000,105\n500000,52\n10000000,50\n'

export const FURTHER_PLACES: readonly Place[] = [
  {
    name: 'a list to choose a line from',
    go: async (page) => {
      await to(page, '#/check/window', 'Window')
      await page.locator('form button[name="lineKind"]').click()
      await page.getByRole('dialog').waitFor()
    },
  },
  {
    name: 'a trace that was opened',
    go: async (page) => {
      await to(
        page,
        '#/check/trace?limit=ce102-base&nominalV=115&bandwidthHz=10k&detector=peak&emission=narrowband',
        'Trace',
      )
      await settled(page)
      await page.setInputFiles('.trace-files input[type=file]', {
        name: 'lead.csv',
        mimeType: 'text/plain',
        buffer: Buffer.from(TRACE),
      })
      await page.locator('.trace-canvas canvas').waitFor()
      await page.locator('output#neededDb[data-si]').waitFor()
    },
  },
  {
    name: 'a trial that is recorded',
    go: async (page) => {
      await to(page, workedHash('trial'), 'Trial')
      await settled(page)
    },
  },
  {
    name: 'a search of the book',
    go: async (page) => {
      await to(page, '#/notes', 'Book')
      await page.getByRole('searchbox').fill('bond')
      await page.getByRole('list', { name: 'Found' }).getByRole('link').first().waitFor()
    },
  },
  ...(
    [
      ['the glossary', 'glossary', 'Glossary'],
      ['the shelf of drawings', 'drawings', 'Drawings'],
      ['a drawing', 'drawing-strip-explained', 'How to read the strip'],
      ['the page of a test', 'test-with-current-probe', 'The current probe'],
    ] as const
  ).map(([name, id, title]) => ({ name, go: (page: Page) => to(page, `#/notes/${id}`, title) })),
  { name: 'a sound', go: aSound },
  {
    name: 'a case',
    go: (page) => firstOf(page, 'cases', 'Cases'),
  },
  {
    name: 'a table of the book',
    go: (page) => firstOf(page, 'tables', 'Tables'),
  },
  {
    name: 'a word of the glossary, told in place',
    go: async (page) => {
      await aSound(page)
      await page.locator('main a.term:visible').first().click()
      await page.locator('.term-line').waitFor()
    },
  },
  {
    name: 'files in and out of the log',
    go: async (page) => {
      await to(page, '#/log', 'Log')
      await page.getByText('Bring in a file').click()
      await page.getByText('Nothing is changed before').waitFor()
    },
  },
  {
    name: 'the log with a deletion that can be undone',
    go: async (page) => {
      await to(page, '#/log', 'Log')
      await page
        .getByRole('button', { name: /^New design/ })
        .or(page.getByRole('button', { name: /demo/i }))
        .first()
        .click()
      await page.waitForFunction(() => /^#\/log\/./.test(location.hash))
      await to(page, '#/log', 'Log')
      await page
        .getByRole('button', { name: /^Delete / })
        .first()
        .click()
      await page.getByText('Deleted “').waitFor()
    },
  },
  { name: 'a connector', go: (page) => connector(page, '', 'J1') },
  {
    name: 'several contacts of a connector',
    go: async (page) => {
      await connector(page, '', 'J1')
      await page.getByRole('button', { name: 'Edit several' }).click()
      await page.getByRole('textbox', { name: 'Choose by name' }).fill('3-5')
      await page.getByRole('button', { name: 'Choose these' }).click()
    },
  },
  {
    name: 'a contact',
    go: async (page) => {
      await connector(page, '/contact/4', 'Contact 4')
      await page.locator('.picture.strip svg').first().waitFor({ timeout: 60_000 })
    },
  },
  {
    name: 'a pasted table',
    go: async (page) => {
      await connector(page, '/paste', 'Paste a table')
      await page
        .getByRole('textbox', { name: 'Table, pasted from a spreadsheet' })
        .fill('Pin\tFunction\tLine kind\tNeed (dB)\n1\tBus\t429\t20\n2\tLamp\tdimmer\tabc\n')
      await page
        .getByRole('region', { name: /^The word/ })
        .first()
        .waitFor()
    },
  },
  {
    name: 'what is decided of a connector',
    go: async (page) => {
      await connector(page, '/decide', 'Decide')
      await page.locator('[data-output="decided"]').filter({ hasText: 'all in one bond' }).waitFor({ timeout: 60_000 })
    },
  },
  {
    name: 'a contact that is decided',
    go: async (page) => {
      await connector(page, '/decide', 'Decide')
      await page.locator('[data-output="decided"]').filter({ hasText: 'all in one bond' }).waitFor({ timeout: 60_000 })
      await page.getByRole('button', { name: /^6 Intercom phones/ }).click()
      await page.getByRole('region', { name: 'Contact 6' }).waitFor()
    },
  },
  { name: 'the whole connector', go: (page) => connector(page, '/whole', 'The whole connector') },
  {
    name: 'the sheet of a connector',
    go: async (page) => {
      await connector(page, '/trade', 'Sheet, export and import')
      await page.getByRole('button', { name: 'Print the sheet' }).waitFor({ timeout: 60_000 })
    },
  },
]
