/** A check on a phone: how far down everything is, what stands beside a field, and the keys its keyboard lacks. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { CHECKS } from '../../src/calc/registry.ts'
import { LEAST_TARGET_PX } from './support/look.ts'
import { field, output, settled, si } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site } from './support/site.ts'
import { STORIES } from './support/stories.ts'
import { workedHash } from './support/worked-checks.ts'

let site: Site
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => expect(await site.leave()).toEqual(CLEAN))

/** Opens a place in a window that is touched. */
async function open(hash: string): Promise<void> {
  const visit = await site.visit({ serviceWorkers: 'block', hasTouch: true, isMobile: true })
  page = visit.page
  await page.goto(visit.at(hash))
  await settled(page)
}

/** Top and bottom of what is seen of a part. */
const edges = (selector: string): Promise<{ topPx: number; bottomPx: number }> =>
  page
    .locator(selector)
    .first()
    .evaluate((one) => {
      const { top, bottom } = one.getBoundingClientRect()
      return { topPx: top, bottomPx: bottom }
    })

describe('the length of a check', () => {
  it.each(STORIES)('of $name stays within $mostScreens screens, the sentence above the first field', async (story) => {
    await open(story.hash)
    const screens = await page.evaluate(() => document.documentElement.scrollHeight / innerHeight)
    expect(screens).toBeLessThanOrEqual(story.mostScreens)
    const sentence = await edges('.answer .sentence')
    const first = await edges('form .field')
    const barPx = (await edges('.places')).topPx
    expect(sentence.bottomPx).toBeLessThan(first.topPx)
    expect(first.bottomPx).toBeLessThanOrEqual(barPx)
  })

  it.each(CHECKS.map(({ id }) => id))('of %s, empty, has its first field on the first screen too', async (id) => {
    await open(`#/check/${id}`)
    expect((await edges('form .field')).bottomPx).toBeLessThanOrEqual((await edges('.places')).topPx)
  })

  it('hides nothing for good: the reasons and every figure are one tap away', async () => {
    await open(STORIES[0]?.hash ?? '')
    expect(await page.getByText('The strip as a table').isVisible()).toBe(false)
    await page.getByText('Why, figures and working').click()
    await page.getByText('The strip as a table').waitFor()
    await page.locator('.evidence .figure-row').first().waitFor()
  })
})

describe('a field', () => {
  it('has its unit beside it, unless the text says it', async () => {
    await open('#/check/pair?capacitanceF=1.2n&capacitance2F=0.8 nF&legOhm=50&frequencyHz=1M')
    const units = await page
      .locator('form .measure')
      .evaluateAll((all) =>
        all.map((one) => [
          one.querySelector('input')?.name,
          [...one.querySelectorAll('.unit')]
            .filter((unit) => unit.checkVisibility({ visibilityProperty: true }))
            .join() && one.querySelector('.unit')?.textContent,
        ]),
      )
    expect(units.slice(0, 4)).toEqual([
      ['capacitanceF', 'F'],
      ['capacitance2F', ''],
      ['legOhm', 'Ω'],
      ['frequencyHz', 'Hz'],
    ])
  })

  it('is offered the prefixes its keyboard hides, which go in at the caret', async () => {
    await open(workedHash('pair'))
    await field(page, 'capacitanceF').tap()
    await field(page, 'capacitanceF').fill('22F')
    await field(page, 'capacitanceF').evaluate((one: HTMLInputElement) => one.setSelectionRange(2, 2))
    const keys = page.getByRole('toolbar', { name: 'Prefixes' }).getByRole('button')
    expect(await keys.allTextContents()).toEqual(['p', 'n', 'µ', 'm', 'k', 'M'])
    for (const box of await keys.evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON()))) {
      expect(box.width).toBeGreaterThanOrEqual(LEAST_TARGET_PX)
      expect(box.height).toBeGreaterThanOrEqual(LEAST_TARGET_PX)
      expect(box.bottom).toBeLessThanOrEqual(PHONE.height)
    }
    await keys.nth(1).tap()
    expect(await field(page, 'capacitanceF').inputValue()).toBe('22nF')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('capacitanceF')
    await output(page, 'differentialF').waitFor()
    // two capacitors in series: 22 nF · 0.8 nF / 22.8 nF
    expect(await si(page, 'differentialF')).toBeCloseTo((22e-9 * 0.8e-9) / 22.8e-9, 16)
    expect(await keys.nth(4).isDisabled()).toBe(true)
    await page.locator('h1').tap()
    await keys.first().waitFor({ state: 'detached' })
  })

  it('stands above a keyboard that lies over the page with them', async () => {
    await open(workedHash('pair'))
    await field(page, 'capacitanceF').tap()
    await page.evaluate(() => {
      const seen = window.visualViewport
      if (seen === null) throw new Error('no visual viewport')
      Object.defineProperty(seen, 'height', { get: () => 480 })
      seen.dispatchEvent(new Event('resize'))
    })
    expect((await edges('.prefix-keys')).bottomPx).toBeLessThanOrEqual(480)
  })

  it('is offered no prefixes where it is no quantity, or where there is a real keyboard', async () => {
    await open('#/check/surge')
    await field(page, 'level').tap()
    expect(await page.getByRole('toolbar', { name: 'Prefixes' }).count()).toBe(0)
    const visit = await site.visit({ serviceWorkers: 'block' })
    page = visit.page
    await page.goto(visit.at(workedHash('pair')))
    await field(page, 'capacitanceF').click()
    expect(await page.getByRole('toolbar', { name: 'Prefixes' }).count()).toBe(0)
  })

  it('takes several values with their units, and the semicolon is one of the keys', async () => {
    await open('#/check/window?lineKind=arinc-429-high')
    await field(page, 'sourceOhm').tap()
    await page.getByRole('button', { name: 'semicolon' }).waitFor()
    await field(page, 'frequencyHz').fill('118 MHz; 12 MHz')
    await field(page, 'frequencyHz').blur()
    expect(await field(page, 'frequencyHz').getAttribute('aria-invalid')).toBe('false')
  })

  it('shows two values with their units whole', async () => {
    await open('#/check/window?lineKind=arinc-429-high')
    const input = field(page, 'frequencyHz')
    await input.fill('118 MHz; 137 MHz')
    const { textPx, roomPx } = await input.evaluate((one) => ({ textPx: one.scrollWidth, roomPx: one.clientWidth }))
    expect(textPx).toBeLessThanOrEqual(roomPx)
  })

  it('reads the level in a category, as its help says', async () => {
    await open('#/check/surge?waveform=wf4&level=3&withstandV=100')
    const peakV = await si(page, 'loadPeakV')
    await field(page, 'level').fill('A3')
    await settled(page)
    expect(await si(page, 'loadPeakV')).toBe(peakV)
    await field(page, 'level').fill('A4G4L3')
    await settled(page)
    expect(await si(page, 'loadPeakV')).toBeGreaterThan(peakV)
  })

  it('shows a topology as the circuit it is', async () => {
    await open(workedHash('filter'))
    expect(await page.locator('form [role="radiogroup"] svg.topology').count()).toBe(6)
  })
})

describe('a row or a rung', () => {
  it('is entered by a tap and taken back by another: a supply, then a class, on a line without a suppressor', async () => {
    await open('#/check/surge?waveform=wf4&level=3&lineKind=power-28-vdc&withstandV=200')
    const table = page.locator('.evidence-pane .picture').first()
    // before any plot, on the first two screens
    expect((await edges('.evidence-pane .picture.table')).topPx).toBeLessThan(2 * PHONE.height - 200)
    await table.getByRole('button', { name: 'Use DO-160 section 16, category Z' }).tap()
    await table.getByText('Classes that would carry it').waitFor()
    await settled(page)
    await table.getByRole('button', { name: /^Use/ }).first().tap()
    await settled(page)
    expect(await field(page, 'ratedPulseW').inputValue()).toMatch(/W$/)
    expect(Number.parseFloat(await field(page, 'standoffV').inputValue())).toBeGreaterThan(80)
    expect(await output(page, 'verdict').getAttribute('data-verdict')).not.toBe('fails')
    await page.getByRole('button', { name: 'Undo: Stand-off' }).tap()
    await settled(page)
    expect(await field(page, 'ratedPulseW').inputValue()).toBe('')
    await page.getByRole('button', { name: 'Undo: Supply built to' }).tap()
    await table.getByText('what is its supply built to', { exact: false }).waitFor()
  })

  it('of a ladder enters its volts', async () => {
    await open(
      '#/check/surge?waveform=wf4&level=3&lineKind=power-28-vdc&supplyCategory=do160-z&withstandV=60&standoffV=40&ratedPulseW=1500&loadOhm=1k',
    )
    await page.getByText('Why, figures and working').tap()
    await page.locator('.rung[data-rung] .volts').first().tap()
    await settled(page)
    expect(await field(page, 'busMaxV').inputValue()).toMatch(/V$/)
  })

  it('of a table on a phone is a card in which nothing is cut off', async () => {
    await open(STORIES[2]?.hash ?? '')
    await page.getByText('Why, figures and working').tap()
    const table = page.locator('.picture.table').first()
    await table.locator('tr').nth(1).waitFor()
    const wide = await table.evaluate((one) => {
      const outer = one.getBoundingClientRect()
      return [...one.querySelectorAll('th, td')].filter((cell) => cell.getBoundingClientRect().right > outer.right + 1)
        .length
    })
    expect(wide).toBe(0)
    expect(await table.locator('td[data-label="At least"]').count()).toBeGreaterThan(3)
    await table.getByRole('button', { name: 'Use CL' }).tap()
    await settled(page)
    expect(await page.locator('form input[name="topology"]:checked').inputValue()).toBe('CL')
  })
})

describe('the list of checks', () => {
  it('has what was checked lately, by what was entered, and brings it back over a reload', async () => {
    await open('#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=10n')
    const most = await si(page, 'mostCapacitanceF')
    await page.getByRole('navigation').getByRole('link', { name: 'Check' }).tap()
    const lately = page.getByRole('region', { name: 'Checked lately' })
    await lately.getByText('10n', { exact: false }).waitFor()
    await page.reload()
    await lately.getByRole('link', { name: /^Loading.*CAN/ }).tap()
    await settled(page)
    expect(await si(page, 'mostCapacitanceF')).toBe(most)
  })
})
