/** From a trial to a closed complaint, on a phone: an assumption refuted, the window worked out anew, cured, everything back. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { field, openPlace } from './support/screen.ts'
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

const come = async () => {
  visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true, serviceWorkers: 'block' })
  page = visit.page
}
const open = (hash: string) => openPlace(page, visit.at(hash))
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })
const unfold = (name: string) => page.locator('summary', { hasText: name }).first().click()
const verdict = () => page.locator('#verdict').getAttribute('data-verdict')
const output = async (id: string) => Number(await page.locator(`#${id}`).getAttribute('data-si'))

describe('prove it on the aircraft', () => {
  it('trial, refuted impedance, clamp, new window, removed, closed as cured', async () => {
    await come()
    // 10 Ω and 10 Ω were supposed: the truth is 150 Ω and 50 Ω
    await open(
      '#/check/window?lineKind=discrete-28v&signalOhm=5k&frequencyHz=3M&neededDb=20&sourceOhm=10&loadOhm=10&topology=C',
    )
    await page.waitForFunction(() => document.querySelector('#leastCapacitanceF') !== null)
    const before = await output('leastCapacitanceF')
    await button('Keep in the log').click()
    await page.waitForFunction(() => /^#\/log\/.+\/.+\/window$/.test(location.hash))
    const [, , complaint = '', line = ''] = new URL(page.url()).hash.split('/')

    await open(`#/log/${complaint}/${line}/trial`)
    await button('Note bare, empty, bare').click()
    for (const value of ['1n', '10n', '47n']) {
      await page.getByLabel('Another value at hand').fill(value)
      await button('Add').click()
    }
    expect(await field(page, 'steps').inputValue()).toBe('bare; empty; 1n; 10n; 47n; empty; bare')
    // 37.5 Ω side by side: 10·log10(1 + (2π·3 MHz·C·37.5 Ω)²) = 1.8, 17.1 and 30.4 dB
    await field(page, 'noise').fill('60; 60; 58.2; 42.9; 29.6; 60; 60')
    await field(page, 'signal').fill(';;good;good;good')
    await field(page, 'noise').blur()
    await page.getByText('It refutes the impedances that were entered.').first().waitFor()

    await open(`#/log/${complaint}/${line}/loop`)
    await unfold('Clamp ferrite on the whole cable')
    await field(page, 'clampOhm').fill('100')
    // 20·log10(1 + 100/200)
    await field(page, 'fallDb').fill('3.52')
    await field(page, 'offDb').fill('0.2')
    await page.locator('#in-higherEnd input[value="source"]').check()
    await page.waitForFunction(() => Number(document.querySelector('#loadOhm')?.getAttribute('data-si')) > 0)

    await open(`#/log/${complaint}/${line}/window`)
    for (const key of ['sourceOhm', 'loadOhm'])
      await page
        .locator(`.field:has(#in-${key})`)
        .getByRole('button', { name: /from Loop$/ })
        .click()
    await page.waitForFunction(
      (old) => Number(document.querySelector('#leastCapacitanceF')?.getAttribute('data-si')) < old / 2,
      before,
    )
    expect(await verdict()).not.toBe('fails')

    await open(`#/log/${complaint}`)
    const closeOut = page.getByRole('region', { name: 'Close-out' })
    await closeOut.waitFor()
    await closeOut.getByRole('link', { name: 'Removed by whom, and when' }).waitFor()
    await unfold('Before, after, cause and cure')
    await page.getByLabel('Cause', { exact: true }).fill('supply lead picks up the converter')
    await page.getByLabel('Cure', { exact: true }).fill('filter contact of 4.7 nF')
    await page.getByLabel('Checked by').fill('B. Inspector')
    await unfold('Proof')
    await closeOut.getByRole('button', { name: 'three times, agreed' }).click()
    // each that is pressed is called “✓ done” from then on
    const undone = closeOut.getByRole('button', { name: 'done', exact: true })
    for (let left = await undone.count(); left > 0; left--) await undone.first().click()
    expect(await closeOut.getByRole('button', { name: 'Close as cured' }).isDisabled()).toBe(true)

    await open(`#/log/${complaint}/${line}/trial`)
    await field(page, 'removed').fill('A. Mechanic, 14:35')
    await field(page, 'removed').blur()
    await open(`#/log/${complaint}`)
    await page.getByRole('button', { name: 'Close as cured' }).click()
    await page.locator('[data-output="close-out"][data-status="cured"]').waitFor()
    await page.reload()
    await page.locator('[data-output="close-out"][data-status="cured"]').waitFor()
  })

  it('a barred line offers nothing to press, and a tone works without a microphone', async () => {
    await come()
    await open('#/check/trial?lineKind=fuel-quantity&steps=bare;1n;bare')
    await page.getByText('No trial on this line.').waitFor()
    expect(await verdict()).toBe('fails')
    await open('#/check/tone?toneHz=2400&pulses=6')
    await page.getByRole('button', { name: 'Listen with the microphone' }).waitFor()
    expect(await output('predictedHz')).toBe(2400)
  })
})
