/** A whole connector out to a file, deleted, and back in from it, on a phone and a desk: the same file comes out again. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { CLEAN, DESK, openSite, PHONE, type Site, type Visit } from './support/site.ts'

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

const button = (name: string | RegExp) => page.getByRole('button', { name })
const demo = () => page.getByRole('link', { name: /^Example/ })

/** The bytes of what a tap on `name` saves. */
async function saved(name: string): Promise<Buffer> {
  const download = page.waitForEvent('download')
  await button(name).click()
  return readFileSync(await (await download).path())
}

async function choose(name: string, content: Buffer | string): Promise<void> {
  await page.getByText('Bring in a file').click()
  const buffer = Buffer.from(content)
  await page.locator('input[type=file]').setInputFiles({ name, mimeType: 'application/json', buffer })
}

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
])('goes out and comes back bit for bit on %s', { timeout: 120_000 }, async (_name, viewport) => {
  visit = await site.visit({ serviceWorkers: 'block', acceptDownloads: true, viewport })
  page = visit.page
  await page.goto(visit.at('#/log'))
  await button('Load the demo').click()
  await page.getByRole('link', { name: /^J1/ }).waitFor()
  const file = await saved('Save as a file')
  await button('Delete').click()
  await button('Load the demo').waitFor()

  await choose('cut.json', file.subarray(0, file.length - 40))
  await page
    .getByRole('alert')
    .getByText(/^This file cannot be brought in, and nothing was changed\. Line \d+/)
    .waitFor()
  await page.reload()
  await choose('demo.json', file)
  await page.getByText(/new: 22 lines, one connector/).waitFor()
  expect(await demo().count()).toBe(0)
  await button('Bring it in').click()
  await page.getByText('One complaint brought in.').waitFor()
  await demo().click()
  await page.getByRole('link', { name: /^J1/ }).waitFor()
  expect((await saved('Save as a file')).equals(file)).toBe(true)

  await page.goto(visit.at('#/log'))
  await page.reload()
  await page.getByText('Bring in a file').click()
  await button('Take it back').click()
  await page.getByText('One complaint taken back.').waitFor()
  expect(await demo().count()).toBe(0)
})
