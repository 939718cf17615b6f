/** Wrong numbers and unearned yeses that were seen on screens, each as its screen says it now. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { appText, heading, output, settled, si } from './support/screen.ts'
import { CLEAN, openSite, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ serviceWorkers: 'block' })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const open = async (check: string, facts: Readonly<Record<string, string>>) => {
  const query = Object.entries(facts).map(([key, text]) => `${key}=${encodeURIComponent(text)}`)
  await page.goto(visit.at(`#/check/${check}?${query.join('&')}`))
  await heading(page).waitFor()
  await settled(page)
}
const verdict = () => output(page, 'verdict').getAttribute('data-verdict')
const BARE = { suppressorF: '0', existingF: '0' }

it('a bit rate is in bits a second, not in hertz', async () => {
  await open('loading', { ...BARE, lineKind: 'can', capacitanceF: '10n', bitRateHz: '500 kbit/s' })
  const said = await appText(page)
  // 0.1/(ln 4 · 60 Ω · 5 nF) = 240 kbit/s
  expect(said).toMatch(/At 240.kbit\/s or slower/u)
  expect(said).not.toContain('240 kHz')
})

it('volts out of order on a power line are a failure at the head, not only under the ladder', async () => {
  await open('power', { workingRmsV: '115', supplyHz: '400', capacitanceF: '20n', wiringH: '1u' })
  expect(await verdict()).toBe('fails')
  expect(await appText(page)).toMatch(/is above the 322.V/u)
})

it('an ARINC 429 receiver has one figure under its two names, converted per leg once', async () => {
  await open('loading', { ...BARE, lineKind: 'arinc-429-high', capacitanceF: '470p' })
  const said = await appText(page)
  expect(said).toMatch(/50 pF between the lines: as each leg to chassis twice that, 100.pF/u)
  expect(said).toContain('50 pF from each line to ground')
})

it('100BASE-TX stands 24 pF a leg, over the cable range its document names', async () => {
  await open('loading', { ...BARE, lineKind: 'ethernet-100base-tx', capacitanceF: '25p' })
  expect(await si(page, 'mostCapacitanceF')).toBeCloseTo(24.2e-12, 13)
  expect(await verdict()).toBe('fails')
})

it('40 dBm against 60 dBµV is no “no filter is needed”: it asks for the impedance, and in 50 Ω 87 dB are missing', async () => {
  await open('need', { measuredDb: '40 dBm', limitDb: '60 dBuV', marginDb: '0' })
  expect(await appText(page)).toMatch(/In 50 Ω 40.dBm is 147.dBµV/u)
  await open('need', { measuredDb: '40 dBm', limitDb: '60 dBuV', marginDb: '0', impedanceOhm: '50' })
  expect(await si(page, 'neededDb')).toBeCloseTo(86.99, 2)
})

it('a filter that meets its need and rings elsewhere is not ok', async () => {
  await open('filter', {
    topology: 'LC',
    capacitanceF: '1u',
    inductanceH: '10u',
    sourceOhm: '0.1',
    loadOhm: '100',
    frequencyHz: '1M',
    neededDb: '30',
  })
  expect(await verdict()).toBe('fails')
  expect(await appText(page)).toContain('but it amplifies by')
})
