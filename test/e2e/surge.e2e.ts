/** From the tree to the ladder: damage after a storm, the pulse already laid into the surge check, faults named in words. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import golden from '../golden/surge-decks.json' with { type: 'json' }
import {
  answerAll,
  CLEAR,
  field,
  heading,
  output,
  settled,
  si,
  stepsOf,
  textOf,
  titleOf,
  unfold,
} from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const type = async (key: string, text: string) => {
  await unfold(page, key)
  await field(page, key).first().fill(text)
}

it('walks from a storm to the ladder, where a clamp above what the input withstands is a named fault', async () => {
  await page.goto(visit.at('#/ask'))
  await heading(page).waitFor()
  await page.getByRole('link', { name: 'Start', exact: true }).tap()
  await answerAll(page, stepsOf({ ...CLEAR, wrong: 'broken', damage: 'storm', when: 'storm', 'strike-marks': 'found' }))
  await page.getByRole('heading', { level: 1, name: titleOf('suppressor-strike') }).waitFor()
  await page
    .getByRole('link', { name: /^Surge/ })
    .first()
    .tap()
  await heading(page).waitFor()
  await settled(page)
  expect(await textOf(page, 'waveform')).toBe('wf4')

  // Circuit R4a, ngspice-39: 87.865 V behind a 51.941 V clamp.
  for (const [key, text] of [
    ['level', '3'],
    ['breakdownV', '34.4'],
    ['dynamicOhm', '0.3323263'],
    ['capacitanceF', '100n'],
    ['inductanceH', '10u'],
    ['dcrOhm', '0.05'],
    ['loadOhm', '10k'],
    ['withstandV', '60'],
    ['capacitorWithstandV', '100'],
  ] as const)
    await type(key, text)
  await unfold(page, 'topology')
  await page.locator('form label:has(input[name="topology"][value="LC"])').tap()
  await page.waitForFunction(
    () => Number(document.querySelector('output#loadPeakV')?.getAttribute('data-si')) > 80,
    undefined,
    { polling: 100 },
  )
  await settled(page)
  const deck = golden.circuits.find(({ id }) => id === 'R4a')?.expected
  expect(Math.abs((await si(page, 'loadPeakV')) / (deck?.loadV ?? 0) - 1)).toBeLessThan(0.005)
  expect(Math.abs((await si(page, 'suppressorPeakV')) / (deck?.clampV ?? 0) - 1)).toBeLessThan(0.005)
  expect(await output(page, 'verdict').getAttribute('data-verdict')).toBe('fails')
  const ladder = page.getByRole('img', { name: /what comes|above|withstands/i }).first()
  await ladder.waitFor()
  await page
    .getByText(/is above the 60\sV/u)
    .first()
    .waitFor()
}, 90_000)

it('shows only the long surges of the supply that was chosen, and none out of order beside a yes', async () => {
  const part = 'level=1&standoffV=51&ratedPulseW=30000&withstandV=900&suppressorF=5p&suppressorLeadH=0&ambientC=25'
  const at = async (more: string) => {
    await page.goto(visit.at(`#/check/surge?${part}&lineKind=power-28-vdc${more}`))
    await heading(page).waitFor()
    // once there is an answer, its parts out of sight are on their way
    const verdict = await output(page, 'verdict').getAttribute('data-verdict')
    await settled(page)
    return { verdict, text: (await page.locator('main').textContent()) ?? '' }
  }
  const unsaid = await at('')
  expect(unsaid.verdict).toBe('unknown')
  expect(unsaid.text).toContain('Choose what the supply is built to')
  const mild = await at('&supplyCategory=do160-a')
  expect(mild.verdict).toBe('ok')
  expect(mild.text).not.toContain('DO-160 abnormal Z')
  expect(mild.text).not.toMatch(/is above the \d+/)
  const harsh = await at('&supplyCategory=do160-z')
  expect(harsh.verdict).toBe('fails')
  expect(harsh.text).toMatch(/DO-160 abnormal Z 80\sV is above the/u)
}, 90_000)
