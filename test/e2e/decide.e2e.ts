/** Deciding a connector on a phone: a proposal taken by one tap, parts brought down to few, and taken back. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { demoComplaint } from '../../src/store/demo.ts'
import { connectorOfSize } from '../support/connector-of-size.ts'
import { LEAST_TARGET_PX, sideways, smallTargets } from './support/look.ts'
import { putConnector } from './support/put-connector.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ serviceWorkers: 'block', viewport: PHONE })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

it('takes a proposal, brings the parts down to few, and takes that back', async () => {
  const { connector, lines } = connectorOfSize(15)
  await page.goto(visit.at('#/log'))
  await page.getByRole('button', { name: /demo/i }).waitFor()
  const hash = await putConnector(page, { complaint: { ...demoComplaint(), isDemo: false }, connector, lines })
  await page.goto('about:blank')
  await page.goto(visit.at(`${hash}/decide`))
  const standing = page.locator('[data-output="decided"]')
  await standing.filter({ hasText: 'all in one bond' }).waitFor({ timeout: 30_000 })

  await page.getByRole('button', { name: /^6 Intercom phones/ }).click()
  const contact = page.getByRole('region', { name: 'Contact 6' })
  await contact.getByRole('button', { name: 'Take 1.5\u00a0nF' }).click()
  await contact.getByText('1.5\u00a0nF, your choice: yes').waitFor({ timeout: 30_000 })
  await contact.getByLabel('Capacitance').fill('330p')
  await contact.getByText('330\u00a0pF, your choice: no').waitFor({ timeout: 30_000 })
  await contact.getByRole('button', { name: 'Back to the proposal' }).click()
  await contact.getByText('1.5\u00a0nF: yes').waitFor({ timeout: 30_000 })
  await contact.getByRole('button', { name: 'All contacts' }).click()

  const few = page.getByRole('region', { name: 'Few parts' })
  await few.getByRole('button', { name: 'Group the parts' }).click()
  const take = few.getByRole('button', { name: /^Take th/ })
  await take.waitFor({ timeout: 30_000 })
  await few.getByRole('heading', { name: /ceramics?, proved fewest/ }).waitFor()
  await take.click()
  await page.getByRole('button', { name: /^6 .*your choice/ }).waitFor({ timeout: 30_000 })
  await page.getByRole('button', { name: 'Undo the last change' }).click()
  await page.getByRole('button', { name: /^6 .*proposed/ }).waitFor({ timeout: 30_000 })
  // nothing wider than the phone, and every target large enough for a thumb
  expect((await sideways(page)).byPx).toBe(0)
  expect((await smallTargets(page, LEAST_TARGET_PX)).small).toEqual([])
}, 180_000)
