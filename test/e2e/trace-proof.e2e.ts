/** A stored trace as proof of a cure: held against its limit row by row, beside the one before, and no longer when a fact changes. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { field, heading } from './support/screen.ts'
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

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })
const unfold = (name: string) => page.locator('summary', { hasText: name }).first().click()
const sweep = (toHz: number, at150k: number) =>
  `Frequency (Hz),Level (dBµV)\n${[
    ...Array.from({ length: 1000 }, (_, i) => [10_000 * (toHz / 10_000) ** (i / 999), 40] as const),
    [150_000, at150k] as const,
  ]
    .sort(([a], [b]) => a - b)
    .map((row) => row.join(','))
    .join('\n')}\n`

const choose = async (name: string, text: string) => {
  await page.setInputFiles('input[type=file]', { name, mimeType: 'text/plain', buffer: Buffer.from(text) })
  await page.locator('.trace-list', { hasText: name }).waitFor()
}

describe('a measured trace as proof', () => {
  it('says what is missing until it is under the limit over its whole span, then what came off', async () => {
    visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true, serviceWorkers: 'block' })
    page = visit.page
    await page.goto(visit.at('#/check/trace?limit=ce102-base&bandwidthHz=10k&detector=peak&traceUnit=dbuv'))
    await heading(page).waitFor()
    await button('Keep in the log').click()
    await page.waitForFunction(() => /^#\/log\/.+\/.+\/trace$/.test(location.hash))
    const [, , complaint = '', line = ''] = new URL(page.url()).hash.split('/')
    const at = async (hash: string) => {
      await page.goto(visit.at(hash))
      await heading(page).waitFor()
    }
    await choose('bare.csv', sweep(10e6, 105))
    await page.getByLabel('After, with the filter').check()
    await choose('short.csv', sweep(5e6, 50))

    await at(`#/log/${complaint}`)
    const closeOut = page.getByRole('region', { name: 'Close-out' })
    await unfold('Before, after, cause and cure')
    await page.getByLabel('Before', { exact: true }).fill('105 dBµV at 150 kHz')
    await page.getByLabel('After', { exact: true }).fill('50 dBµV')
    await page.getByLabel('Cause', { exact: true }).fill('converter')
    await page.getByLabel('Cure', { exact: true }).fill('filter')
    await page.getByLabel('Checked by').fill('B. Inspector')
    await unfold('Proof')
    await closeOut.getByRole('button', { name: /^bare\.csv/ }).click()
    await closeOut.getByRole('button', { name: /^short\.csv/ }).click()
    await closeOut.getByText('Say whether it was taken in the bandwidth').waitFor()
    await closeOut.getByRole('button', { name: 'as in the trace check' }).click()
    await closeOut.getByText(/reads 10\skHz to 5\sMHz and .*CE102.* reaches from 10\skHz to 10\sMHz/u).waitFor()

    await at(`#/log/${complaint}/${line}/trace`)
    await page.locator('.trace-list', { hasText: 'short.csv' }).waitFor()
    await page.getByLabel('After, with the filter').check()
    await choose('after.csv', sweep(10e6, 50))
    await at(`#/log/${complaint}`)
    await unfold('Proof')
    await closeOut.getByRole('button', { name: /^after\.csv/ }).click()
    await closeOut.getByText(/under MIL-STD-461 CE102.* over its whole span, by 20\sdB and more/u).waitFor()
    await closeOut.getByText(/34\.6\sdB over at 150\skHz, 55\sdB came off/u).waitFor()
    const undone = closeOut.getByRole('button', { name: 'done', exact: true })
    for (let left = await undone.count(); left > 0; left--) await undone.first().click()
    await button('Close as cured').click()
    await page.locator('[data-output="close-out"][data-status="cured"]').waitFor()
    await page.reload()
    await page.locator('[data-output="close-out"][data-status="cured"]').waitFor()

    // another bandwidth is entered: the proof does not hold any more, and the complaint is open
    await at(`#/log/${complaint}/${line}/trace`)
    await field(page, 'bandwidthHz').fill('1 kHz')
    await field(page, 'bandwidthHz').blur()
    await at(`#/log/${complaint}`)
    await page.locator('[data-output="close-out"][data-status="open"]').waitFor()
    await unfold('Proof')
    await closeOut.getByText('a narrower one can read less').waitFor()
  })
})
