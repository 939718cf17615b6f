import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { weakText } from './support/legible.ts'
import {
  axeBreaches,
  brightColours,
  brightPixels,
  LEAST_TARGET_PX,
  openFolds,
  sideways,
  smallTargets,
} from './support/look.ts'
import { PLACES } from './support/places.ts'
import { answerAll, heading, settled, shown, TO_A_FILTER } from './support/screen.ts'
import { CLEAN, openSite, type Site, type Visit } from './support/site.ts'
import { workedHash } from './support/worked-checks.ts'

const SIZES = [
  { width: 360, height: 800 },
  { width: 412, height: 915 },
  { width: 820, height: 1180 },
  { width: 1280, height: 800 },
] as const
/** The narrowest phone still in use; nothing may scroll sideways there either. */
const NARROW = { width: 320, height: 640 } as const

/** Links inside a sentence, which may be smaller than a target: the words of each. */
const IN_TEXT: readonly RegExp[] = []

const unlisted = (found: readonly string[]) => found.filter((link) => !IN_TEXT.some((known) => known.test(link)))

/** No grey under 7 : 1, and small letters bold. */
const IN_THE_SUN = { leastRatio: 7, smallBelowPx: 16, leastWeight: 700 } as const

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())

/** Only here: axe is put into the page, which our own policy forbids. */
const FOR_AXE = { bypassCSP: true, serviceWorkers: 'block' } as const

const THEMES = [
  { name: 'Day', value: 'day' },
  { name: 'Dark', value: 'dark' },
  { name: 'Night red', value: 'night' },
  { name: 'Glare', value: 'glare' },
] as const

/** Chooses a theme as people do, in About. */
async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: /^About/ }).click()
  await page.getByRole('radio', { name, exact: true }).check()
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
}

describe.each(THEMES)('in $name', ({ name, value }) => {
  let visit: Visit
  let page: Page

  beforeAll(async () => {
    visit = await site.visit(FOR_AXE)
    page = visit.page
    await page.goto(visit.at(''))
    await heading(page).waitFor()
    await choose(page, name)
    await page.locator(`html[data-theme="${value}"]`).waitFor()
  })
  afterAll(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it.each(PLACES)('$name can be read and touched at every size', async ({ go }) => {
    await page.setViewportSize(SIZES[0])
    await go(page)
    const seen: Record<string, unknown> = {}
    const note = (what: string, found: readonly string[]) => {
      if (found.length > 0) seen[what] = found
    }
    for (const size of [NARROW, ...SIZES]) {
      await page.setViewportSize(size)
      const { byPx, outside } = await sideways(page)
      note(`${size.width} px: scrolls sideways by ${byPx} px`, outside)
      const targets = await smallTargets(page, LEAST_TARGET_PX)
      note(`${size.width} px: targets below ${LEAST_TARGET_PX} px`, targets.small)
      note(`${size.width} px: links in running text that are not listed`, unlisted(targets.inText))
      if (size.width === 360 || size.width === 1280) note(`${size.width} px: axe`, await axeBreaches(page))
    }
    await page.setViewportSize(SIZES[0])
    await openFolds(page)
    const { byPx, outside } = await sideways(page)
    note(`unfolded: scrolls sideways by ${byPx} px`, outside)
    const targets = await smallTargets(page, LEAST_TARGET_PX)
    note(`unfolded: targets below ${LEAST_TARGET_PX} px`, targets.small)
    note('unfolded: links in running text that are not listed', unlisted(targets.inText))
    note('unfolded: axe', await axeBreaches(page))
    if (value === 'night') {
      note('not red', await brightColours(page))
      note('not red in the picture', await brightPixels(page))
    }
    if (value === 'glare') note('weak', await weakText(page, IN_THE_SUN))
    if ((await page.getByRole('dialog').count()) > 0) await page.keyboard.press('Escape')
    expect(seen).toEqual({})
  })
})

describe('the measures', () => {
  it('see a wide part, a small target, a missing name and a white spot', async () => {
    const { page, at } = await site.visit(FOR_AXE)
    await page.goto(at('#/notes'))
    await heading(page).waitFor()
    await choose(page, 'Night red')
    await page.evaluate(() => {
      const wide = document.createElement('div')
      wide.style.inlineSize = '700px'
      wide.textContent = 'wide'
      const small = document.createElement('button')
      small.style.cssText = 'inline-size: 31px; block-size: 31px; background: white; border: 0'
      document.querySelector('main')?.append(wide, small)
    })
    expect((await sideways(page)).byPx).toBeGreaterThan(300)
    expect((await smallTargets(page, LEAST_TARGET_PX)).small).toEqual([expect.stringMatching(/^31 × 31 <button>/)])
    expect((await axeBreaches(page)).join()).toMatch(/button-name/)
    expect((await brightColours(page)).join()).toMatch(/background rgb\(255, 255, 255\) of <button>/)
    expect((await brightPixels(page)).join()).toMatch(/rgb\(255, 255, 255\) at [^:]*: <button>/)
    expect(await site.leave()).toEqual(CLEAN)
  })
})

describe('at night', () => {
  it('what appears on focus is red too', async () => {
    const { page, at } = await site.visit({ serviceWorkers: 'block' })
    await page.goto(at('#/check/filter'))
    await heading(page).waitFor()
    await choose(page, 'Night red')
    await page.getByRole('button', { name: 'Skip to the content' }).focus()
    expect(await brightColours(page)).toEqual([])
    expect(await site.leave()).toEqual(CLEAN)
  })
})

describe('on paper', () => {
  let visit: Visit
  let page: Page

  beforeEach(async () => {
    visit = await site.visit({ serviceWorkers: 'block' })
    page = visit.page
  })
  afterEach(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  /**
   * What is printed: without what is only for the screen, with the statement, and it can be printed. `isOwn`: the screen
   * has a sheet of its own, which is laid out when a browser begins to print.
   */
  const sheet = async (isOwn: boolean) => {
    await page.emulateMedia({ media: 'print' })
    await page.waitForFunction((wanted) => {
      dispatchEvent(new Event('beforeprint'))
      return !wanted || document.querySelector('.paper') !== null
    }, isOwn)
    expect(await page.getByRole('navigation').count()).toBe(0)
    expect(await page.getByRole('main').getByRole('button', { name: 'Share' }).count()).toBe(0)
    expect(await page.getByText(SAFETY_TEXTS.screening.text).filter({ visible: true }).count()).toBe(1)
    expect((await sideways(page)).byPx).toBe(0)
  }
  const pictures = () => page.getByRole('figure').getByRole('img').count()
  const isPrinted = async () => {
    const paper = await page.pdf({ format: 'A4' })
    expect(paper.subarray(0, 5).toString()).toBe('%PDF-')
    expect(paper.length).toBeGreaterThan(10_000)
  }

  it('a check keeps its pictures and the screening statement, and drops the navigation', async () => {
    await page.goto(visit.at(workedHash('filter')))
    await settled(page)
    await sheet(true)
    expect(await pictures()).toBeGreaterThanOrEqual(1)
    await page.evaluate(() => dispatchEvent(new Event('afterprint')))
    await page.emulateMedia({ media: 'screen' })
    await page.goto(visit.at(workedHash('window')))
    await settled(page)
    await sheet(true)
    expect(await pictures()).toBeGreaterThanOrEqual(1)
    await isPrinted()
  })

  it('an outcome keeps its steps, its window and what was answered', async () => {
    await page.goto(visit.at('#/ask/gate-danger'))
    await answerAll(page, TO_A_FILTER)
    await shown(page, 'filter-victim-inline')
    await sheet(false)
    expect(await page.getByRole('region', { name: 'Do now' }).getByRole('listitem').count()).toBeGreaterThan(1)
    await isPrinted()
  })

  it('prints dark on light from every theme', async () => {
    await page.goto(visit.at('#/log'))
    await page.getByRole('button', { name: /demo/i }).click()
    await page.getByRole('textbox', { name: 'Note' }).waitFor()
    for (const { name, value } of THEMES) {
      await page.emulateMedia({ media: 'screen' })
      await choose(page, name)
      await page.locator(`html[data-theme="${value}"]`).waitFor()
      await page.emulateMedia({ media: 'print' })
      const [ink, paper] = await page.evaluate(() => {
        const style = getComputedStyle(document.body)
        return [style.color, getComputedStyle(document.documentElement).backgroundColor]
      })
      expect([ink, paper], value).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)'])
    }
  })
})
