/** On a phone every table is a list of cards: each cell says its column, and nothing of it stands outside the screen. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { heading, settled } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'
import { workedHash } from './support/worked-checks.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true, serviceWorkers: 'block' })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

/** Every table of the page, unfolded: how many, and what of them is clipped or does not say its column. */
const tables = () =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true
    const found = [...document.querySelectorAll('.scroll-x')].filter((one) => one.getClientRects().length > 0)
    const clipped = found.filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.ariaLabel)
    const outside = found.flatMap((one) =>
      [...one.querySelectorAll('td, th')]
        .filter((cell) => cell.getBoundingClientRect().right > innerWidth + 1)
        .map((cell) => cell.textContent),
    )
    const nameless = found.flatMap((one) =>
      [...one.querySelectorAll('tbody td:not(.use, :empty)')]
        .filter((cell) => !cell.hasAttribute('data-label'))
        .map((cell) => cell.textContent),
    )
    const isPageWider = document.documentElement.scrollWidth > innerWidth
    return { count: found.length, clipped, outside, nameless, isPageWider }
  })

const whole = { clipped: [], outside: [], nameless: [], isPageWider: false }

describe('a table on a phone', () => {
  const places: readonly (readonly [string, string])[] = [
    ['the strip of the window', workedHash('window')],
    ['the ladder of a surge', workedHash('surge')],
    ...FIELD_NOTES.filter(({ table }) => table).map(({ id, title }) => [title, `#/notes/${id}`] as const),
  ]
  it.each(places)('is not clipped: %s', async (_name, hash) => {
    await page.goto(visit.at(hash))
    await heading(page).waitFor()
    if (hash.startsWith('#/check')) await settled(page)
    await page.locator('.scroll-x').first().waitFor({ state: 'attached' })
    const { count, ...faults } = await tables()
    expect(count).toBeGreaterThan(0)
    expect(faults).toEqual(whole)
  })
})
