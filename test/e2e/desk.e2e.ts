import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { axeBreaches, openFolds } from './support/look.ts'
import { field, heading, labelOf, output, settled, shown } from './support/screen.ts'
import { CLEAN, openSite, type Site } from './support/site.ts'
import { workedHash } from './support/worked-checks.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const visit = (width: number, height = 700) =>
  site.visit({ viewport: { width, height }, serviceWorkers: 'block', bypassCSP: true })

/** Panes on the screen, left to right then top to bottom: where each lies, and how far it can be scrolled. */
const panes = (page: Page) =>
  page.evaluate(() => {
    const found = ['.field-pane', '.answer-pane', '.detail-pane', '.evidence-pane', '.after-pane'].flatMap((name) => {
      const pane = document.querySelector<HTMLElement>(`main ${name}`)
      if (pane === null || pane.getClientRects().length === 0) return []
      const box = pane.getBoundingClientRect()
      const scrolls = /auto|scroll/.test(getComputedStyle(pane).overflowY)
      return [{ name, left: Math.round(box.left), top: Math.round(box.top), bottom: Math.round(box.bottom), scrolls }]
    })
    return { found, pageScrolls: document.documentElement.scrollHeight > innerHeight }
  })

it('has the glass of a chosen option inside its field, however long its words', async () => {
  const { page, at } = await visit(1280)
  await page.goto(at(`${workedHash('surge')}&supplyCategory=do160-a`))
  await settled(page)
  const glasses = await page.evaluate(() =>
    [...document.querySelectorAll('form .picker-button')].map((button) => {
      const [outer, inner] = [button, button.querySelector('.icon')].map((one) => one?.getBoundingClientRect())
      return { left: (outer?.right ?? 0) - (inner?.right ?? 0), words: button.textContent }
    }),
  )
  expect(glasses.length).toBeGreaterThan(1)
  for (const { left, words } of glasses) expect(left, words ?? '').toBeGreaterThan(8)
})

describe.each([
  { width: 900, columns: 2 },
  { width: 1100, columns: 3 },
  { width: 1440, columns: 3 },
])('a check on a desk of $width px', ({ width, columns }) => {
  it('stands side by side; each part scrolls by itself and nothing scrolls away', async () => {
    const { page, at } = await visit(width)
    await page.goto(at(workedHash('surge')))
    await settled(page)
    await openFolds(page)
    const { found, pageScrolls } = await panes(page)
    expect(pageScrolls).toBe(false)
    const scrolling = found.filter(({ scrolls }) => scrolls)
    expect(new Set(scrolling.map(({ left }) => left)).size).toBe(columns)
    for (const { name, bottom } of scrolling) expect(bottom, name).toBeLessThanOrEqual(700)
    const topOf = async () => (await page.locator('.answer .sentence').boundingBox())?.y
    const before = await topOf()
    await field(page, 'waveform').first().hover()
    await page.mouse.wheel(0, 600)
    await page.waitForFunction(() => (document.querySelector('main .field-pane')?.scrollTop ?? 0) > 200)
    expect(await topOf()).toBe(before)
    expect(await page.evaluate(() => scrollY)).toBe(0)
    expect(await axeBreaches(page)).toEqual([])
  })
})

describe('single keys', () => {
  it('a digit answers, Enter moves on, / searches', async () => {
    const { page, at } = await visit(1280)
    await page.goto(at('#/ask'))
    await page.locator('html[data-keys]').waitFor()
    await heading(page).click()
    await page.keyboard.press('Enter')
    await shown(page, 'gate-danger')
    const rows = await page.locator('.answer-row').allTextContents()
    await page.keyboard.press(String(rows.findIndex((words) => words.startsWith(labelOf('gate-danger', 'none'))) + 1))
    await shown(page, 'gate-lines')
    await page.keyboard.press('/')
    await page.waitForFunction(() => document.activeElement?.id === 'search')
    await page.keyboard.type('10 nF on CAN at 500 kbit/s')
    await page.getByRole('list', { name: 'Found' }).getByRole('link').first().click()
    await output(page, 'mostCapacitanceF').waitFor()
    expect(await field(page, 'capacitanceF').inputValue()).toBe('10 nF')
  })

  it('Enter goes from field to field, and a digit typed into one stays there', async () => {
    const { page, at } = await visit(1280)
    await page.goto(at('#/check/need'))
    await page.locator('html[data-keys]').waitFor()
    await field(page, 'measuredDb').focus()
    await page.keyboard.type('105')
    await page.keyboard.press('Enter')
    await page.keyboard.type('76')
    expect(await field(page, 'limitDb').inputValue()).toBe('76')
    expect(await output(page, 'neededDb').getAttribute('data-si')).toBe('35')
  })

  it('can be switched off, also for the next visit', async () => {
    const { page, at } = await visit(1280)
    await page.goto(at('#/ask/gate-danger'))
    await page.locator('html[data-keys]').waitFor()
    await page.getByRole('button', { name: /^About/ }).click()
    await page.getByRole('checkbox', { name: 'Single keys' }).uncheck()
    await page.keyboard.press('Escape')
    await page.reload()
    await shown(page, 'gate-danger')
    await page.locator('html:not([data-keys])').waitFor()
    await heading(page).click()
    await page.keyboard.press('2')
    await page.keyboard.press('/')
    await shown(page, 'gate-danger')
    expect(page.url()).toMatch(/gate-danger$/)
  })
})
