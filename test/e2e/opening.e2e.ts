/** A place while it opens on a slow phone: what is read there stays where it stands while the rest of it comes. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { CLEAN, openSite, type Site } from './support/site.ts'
import { STORIES } from './support/stories.ts'

/** Of the score that calls a tenth good: no line of text moves for that. */
const MOST_SHIFT = 0.01
const SLOWER = 4

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => expect(await site.leave()).toEqual(CLEAN))

declare global {
  interface Window {
    /** what has moved since the page was asked for, and how much of the screen */
    shifts?: { readonly score: number; readonly moved: string }[]
  }
}

async function noteShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const shifts: NonNullable<Window['shifts']> = []
    window.shifts = shifts
    type Shift = PerformanceEntry & { readonly value: number; readonly sources: readonly { readonly node?: Node }[] }
    new PerformanceObserver((list) => {
      for (const { value, sources } of list.getEntries() as unknown as readonly Shift[]) {
        const named = sources.map(({ node }) => (node instanceof Element ? node.className : node?.textContent) ?? '')
        shifts.push({ score: value, moved: named.join(', ') })
      }
    }).observe({ type: 'layout-shift', buffered: true })
  })
}

/** The story of a check that says most. */
const hashOf = (check: string): string => {
  const told = STORIES.filter(({ hash }) => hash.startsWith(`#/check/${check}?`))
  const story = told.toSorted((a, b) => b.hash.length - a.hash.length)[0]
  if (story === undefined) throw new Error(`no story opens ${check}`)
  return story.hash
}

for (const [name, hash, ready] of [
  ['the Log', '#/log', '.empty'],
  ['a window', hashOf('window'), '.answer[aria-busy="false"]'],
  ['a surge', hashOf('surge'), '.answer[aria-busy="false"]'],
] as const)
  it(`moves nothing while ${name} opens`, async () => {
    const { page, at } = await site.visit({ serviceWorkers: 'block', viewport: { width: 412, height: 915 } })
    // the fonts are here from the visit before
    await page.goto(at('#/ask'))
    await page.evaluate(() => document.fonts.ready)
    await page.goto('about:blank')
    await noteShifts(page)
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
    await page.goto(at(hash))
    await page.locator(ready).first().waitFor()
    await page.locator('[aria-busy="true"], .loading').first().waitFor({ state: 'detached' })
    // reported when the frame after is drawn
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
    const shifts = await page.evaluate(() => window.shifts ?? [])
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
    const total = shifts.reduce((sum, { score }) => sum + score, 0)
    expect(total, JSON.stringify(shifts)).toBeLessThanOrEqual(MOST_SHIFT)
  })
