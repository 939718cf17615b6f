import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { PLACES } from './support/places.ts'
import { heading } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit

beforeAll(async () => {
  site = await openSite()
  visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block', forcedColors: 'active' })
  await visit.page.goto(visit.at(''))
  await heading(visit.page).waitFor()
})
afterAll(async () => {
  expect(await site.leave()).toEqual(CLEAN)
  await site.close()
})

/** What is selected on the screen, and which of its colours are not those of the system for that. */
const selected = (page: Page) =>
  page.evaluate(() => {
    const probe = document.createElement('i')
    probe.style.cssText = 'forced-color-adjust: none; background: Highlight; color: HighlightText'
    document.body.append(probe)
    const wanted = { ground: getComputedStyle(probe).backgroundColor, ink: getComputedStyle(probe).color }
    probe.remove()
    const all = [
      ...document.querySelectorAll('a[aria-current], button[aria-pressed="true"], input[type="radio"]:checked + span'),
    ].filter((one) => one.checkVisibility())
    const wrong = all.flatMap((one) => {
      const ground = getComputedStyle(one).backgroundColor
      const inks = [one, ...one.querySelectorAll('*')].map((part) => getComputedStyle(part).color)
      const isRight = ground === wanted.ground && inks.every((ink) => ink === wanted.ink)
      return isRight ? [] : [`${one.textContent?.trim().slice(0, 40)}: ${inks.join()} on ${ground}`]
    })
    return { count: all.length, wrong, differ: wanted.ground !== wanted.ink }
  })

it.each(PLACES)(
  'with a palette of the system, $name shows what is selected in its two colours for that',
  async ({ go }) => {
    await go(visit.page)
    const { count, wrong, differ } = await selected(visit.page)
    expect(differ).toBe(true)
    expect(count).toBeGreaterThan(0)
    expect(wrong).toEqual([])
  },
)

it('with a palette of the system, the main button of a check is of the two colours for buttons', async () => {
  await PLACES.find(({ name }) => name === 'check filter')?.go(visit.page)
  const strong = visit.page.locator('.button.strong:visible').first()
  const [own, wanted] = await strong.evaluate((one) => {
    const probe = document.createElement('i')
    probe.style.cssText = 'forced-color-adjust: none; background: ButtonText; color: ButtonFace'
    document.body.append(probe)
    const of = (part: Element) => {
      const { backgroundColor, color, forcedColorAdjust } = getComputedStyle(part)
      return [backgroundColor, color, forcedColorAdjust]
    }
    const both = [of(one), of(probe)] as const
    probe.remove()
    return both
  })
  expect(own).toEqual(wanted)
})
