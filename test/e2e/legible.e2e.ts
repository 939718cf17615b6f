import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { cutText, weakText } from './support/legible.ts'
import { openFolds, sideways } from './support/look.ts'
import { PLACES } from './support/places.ts'
import { field, heading, settled } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'
import { workedHash } from './support/worked-checks.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())

describe('letters twice as large, on a phone', () => {
  let visit: Visit
  let page: Page

  beforeAll(async () => {
    visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    page = visit.page
    await page.goto(visit.at(''))
    await heading(page).waitFor()
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%'
    })
  })
  afterAll(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it.each(PLACES)('$name loses nothing', async ({ go }) => {
    await go(page)
    const seen: Record<string, unknown> = {}
    const note = async (what: string) => {
      const { byPx, outside } = await sideways(page)
      if (byPx > 0) seen[`${what}: sideways by ${byPx} px`] = outside
      const cut = await cutText(page)
      if (cut.length > 0) seen[`${what}: cut`] = cut
    }
    await note('as it stands')
    await openFolds(page)
    await note('unfolded')
    if ((await page.getByRole('dialog').count()) > 0) await page.keyboard.press('Escape')
    expect(seen).toEqual({})
  })
})

describe('letters of pictures', () => {
  afterEach(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it('grow with the others, and stay on the picture', async () => {
    const { page, at } = await site.visit({ viewport: { width: 820, height: 900 }, serviceWorkers: 'block' })
    await page.goto(at(workedHash('window')))
    await settled(page)
    const label = page.locator('.picture.strip svg .row-label').first()
    const height = async () => (await label.boundingBox())?.height ?? 0
    const before = await height()
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%'
    })
    await page.waitForFunction(
      (least) => (document.querySelector('.picture.strip svg .row-label')?.getBoundingClientRect().height ?? 0) > least,
      1.8 * before,
    )
    expect((await sideways(page)).byPx).toBe(0)
  })
})

describe('figures', () => {
  afterEach(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it('stand in a face whose digits are all of one width and whose point is narrow', async () => {
    const { page, at } = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    await page.goto(at(workedHash('filter')))
    await settled(page)
    await page.evaluate(() => document.fonts.ready)
    for (const place of [field(page, 'capacitanceF').first(), page.locator('.lead .figure').first()]) {
      const widths = await place.evaluate((one) => {
        const { font, fontWeight, fontSize, fontFamily } = getComputedStyle(one)
        const drawing = new OffscreenCanvas(1, 1).getContext('2d')
        if (drawing === null) throw new Error('No canvas to measure with.')
        drawing.font = font || `${fontWeight} ${fontSize} ${fontFamily}`
        const width = (text: string) => Math.round(drawing.measureText(text).width * 100) / 100
        return { digits: [...'0123456789'].map(width), point: width('.'), comma: width(',') }
      })
      expect(new Set(widths.digits).size).toBe(1)
      expect(widths.point).toBeLessThan(0.55 * (widths.digits[0] ?? 0))
      expect(widths.comma).toBeLessThan(0.55 * (widths.digits[0] ?? 0))
    }
  })
})

describe('the measures', () => {
  it('see grey, thin and cut letters', async () => {
    const { page, at } = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    await page.goto(at('#/notes'))
    await heading(page).waitFor()
    await page.evaluate(() => {
      const grey = document.createElement('p')
      grey.style.cssText = 'background: white; color: #767676; font-size: 12px; font-weight: 400'
      grey.textContent = 'grey'
      const pale = document.createElement('p')
      pale.style.cssText = 'background: white; color: black; opacity: 0.3; font-size: 20px'
      pale.textContent = 'pale'
      const cut = document.createElement('p')
      cut.style.cssText = 'inline-size: 40px; overflow: hidden; white-space: nowrap'
      cut.textContent = 'a long line that is cut'
      document.querySelector('main')?.append(grey, pale, cut)
    })
    const weak = (await weakText(page, { leastRatio: 7, smallBelowPx: 16, leastWeight: 700 })).join()
    expect(weak).toMatch(/4\.54 : 1, grey/)
    expect(weak).toMatch(/12 px at weight 400, grey/)
    expect(weak).toMatch(/2\.\d\d : 1, pale/)
    expect((await cutText(page)).join()).toMatch(/a long line/)
    expect(await site.leave()).toEqual(CLEAN)
  })
})
