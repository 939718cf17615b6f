/** Long answers come from a worker: the same digits, under the policy of the page, without a network, and without a worker too. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { field, heading, settled, si } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: PHONE })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

/** A ringing transient into a filter, over all its tolerances: seconds of work. */
const RINGING =
  '#/check/surge?waveform=wf3&level=3&breakdownV=34.4&dynamicOhm=0.33&capacitanceF=100n&inductanceH=10u&topology=LC&loadOhm=10k&withstandV=60'
const KEYS = ['loadPeakV', 'worstLoadPeakV', 'energyJ', 'connectorPeakV'] as const

const workers = () => page.workers().map((one) => one.url())

async function figures(): Promise<Readonly<Record<string, number>>> {
  await heading(page).waitFor()
  await settled(page)
  const found: Record<string, number> = {}
  for (const key of KEYS) found[key] = await si(page, key)
  return found
}

it('works a surge out in a worker, to the digits it has without one, also where the network is gone', async () => {
  await page.goto(visit.at(RINGING))
  const inWorker = await figures()
  expect(workers()).toEqual([expect.stringMatching(/\/assets\/work-surge-[\w-]+\.js$/)])
  expect(Object.values(inWorker).every((value) => value > 0)).toBe(true)

  await page.evaluate(() => navigator.serviceWorker.ready)
  await visit.goDark()
  await page.reload()
  expect(await figures()).toEqual(inWorker)
  expect(workers()).toHaveLength(1)

  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'Worker'))
  await page.reload()
  expect(await figures()).toEqual(inWorker)
  expect(workers()).toEqual([])
})

it('answers here where the script of the worker is not there any more', async () => {
  await visit.context.route(/\/assets\/work-/, (route) => route.fulfill({ status: 404, body: '' }))
  await page.goto(visit.at(RINGING))
  expect((await figures())['loadPeakV']).toBeGreaterThan(0)
  visit.faults.errors.splice(0, visit.faults.errors.length)
})

it('keeps the field alive while it works, and ends with the answer to the last key', async () => {
  await page.goto(visit.at(RINGING))
  await figures()
  const level = field(page, 'withstandV').first()
  await level.fill('')
  await level.pressSequentially('61.25', { delay: 20 })
  expect(await level.inputValue()).toBe('61.25')
  const last = await figures()
  await page.goto(visit.at('#/check'))
  await page.goto(visit.at(`${RINGING.replace('withstandV=60', 'withstandV=61.25')}`))
  expect(await figures()).toEqual(last)
})
