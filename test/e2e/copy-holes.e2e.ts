/** The browser threw away a file of the offline copy, or the host has other bytes than the copy was made of. */
import { appendFileSync, cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { DIST, startServer } from '../../scripts/static-server.mjs'
import { firstPage, launch, type TestBrowser, waitForOffline } from './support/browser.ts'

let browser: TestBrowser
let server: Awaited<ReturnType<typeof startServer>>
let folder: string

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-holes-'))
  server = await startServer({ root: DIST })
  browser = await launch()
})
afterEach(async () => {
  await browser.close()
  await server.close()
  rmSync(folder, { recursive: true })
})

/** The Log, which no start runs: the copy holds it packed. */
const PART = /^log-[\w-]+\.js\.z$/
const NOT_LOADED = 'This part of the app could not be loaded.'

const heading = (page: Page) => page.getByRole('heading', { level: 1 })

/** Takes what fits out of the copy, as a browser does that is short of space; gives the addresses. */
const evict = (page: Page, pattern: RegExp): Promise<readonly string[]> =>
  page.evaluate(
    async ([source = '']) => {
      const [name = ''] = (await caches.keys()).filter((one) => one.includes('-precache-'))
      const cache = await caches.open(name)
      const gone = (await cache.keys()).filter(({ url }) =>
        new RegExp(source).test(new URL(url).pathname.split('/').at(-1) ?? ''),
      )
      for (const one of gone) await cache.delete(one)
      return gone.map(({ url }) => url)
    },
    [pattern.source],
  )

const isInCopy = (page: Page, address: string) =>
  page.evaluate(async (one) => (await caches.match(one)) !== undefined, address)

/** The same build whose every script does one thing more. */
function tampered(): string {
  cpSync(DIST, folder, { recursive: true })
  for (const name of readdirSync(join(folder, 'assets')))
    if (name.endsWith('.js')) appendFileSync(join(folder, 'assets', name), '\nwindow.tampered = true\n')
    else if (name.endsWith('.z')) appendFileSync(join(folder, 'assets', name), 'x')
  return folder
}

const isTampered = (page: Page) => page.evaluate(() => 'tampered' in window)

it('starts without a part that was thrown away, says so where it is wanted, and mends itself from the host', {
  timeout: 120_000,
}, async () => {
  const page = await firstPage(browser)
  await page.goto(server.address)
  await waitForOffline(page)
  const [address = ''] = await evict(page, PART)
  expect(address).not.toBe('')
  await browser.context.setOffline(true)
  const { port } = server
  await server.close()
  await page.reload()
  await heading(page).waitFor()
  await page.goto(`${server.address}#/log`)
  await page.getByText(NOT_LOADED).waitFor()
  await page.goto(`${server.address}#/check/need`)
  await page.getByRole('textbox').first().waitFor()
  expect(await isInCopy(page, address)).toBe(false)

  server = await startServer({ root: DIST, port })
  await browser.context.setOffline(false)
  // a part that failed once is asked for again by a page that is loaded again
  await page.goto(`${server.address}#/log`)
  await page.reload()
  await heading(page).waitFor()
  await expect.poll(() => isInCopy(page, address)).toBe(true)
  await server.close()
  await browser.context.setOffline(true)
  await page.reload()
  await page.getByText(NOT_LOADED).waitFor({ state: 'detached' })
  await heading(page).waitFor()
})

it('runs nothing of a host whose files are not those of the copy, whole or with a hole in it', {
  timeout: 120_000,
}, async () => {
  const page = await firstPage(browser)
  await page.goto(server.address)
  await waitForOffline(page)
  server.deploy(tampered())
  await page.reload()
  await heading(page).waitFor()
  await page.goto(`${server.address}#/check/need`)
  await page.getByRole('textbox').first().waitFor()
  expect(await isTampered(page)).toBe(false)

  const gone = await evict(page, PART)
  await page.goto(`${server.address}#/log`)
  await page.reload()
  await page.getByText(NOT_LOADED).waitFor()
  expect(await isTampered(page)).toBe(false)
  expect(await isInCopy(page, gone[0] ?? '')).toBe(false)
  server.deploy(DIST)
  await page.reload()
  await expect.poll(() => isInCopy(page, gone[0] ?? '')).toBe(true)
  expect(await isTampered(page)).toBe(false)
})
