import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { DIST, startServer } from '../../scripts/static-server.mjs'
import { firstPage, launch, type TestBrowser, waitForOffline } from './support/browser.ts'
import { build } from './support/built-site.ts'

let browser: TestBrowser
let server: Awaited<ReturnType<typeof startServer>>

beforeEach(async () => {
  server = await startServer({ root: DIST })
  browser = await launch()
})
afterEach(async () => {
  await browser.close()
  await server.close()
  expect(browser.faults).toEqual({ foreign: [], policy: [], errors: [] })
})

const heading = (page: Page) => page.getByRole('heading', { level: 1 })

/** Waits until the page shown is of this version. */
const version = (page: Page, wanted: string) => page.locator(`html[data-version="${wanted}"]`).waitFor()

/** Another host's files at the same address, as after a deploy. */
async function deploy(root: string): Promise<void> {
  const { port } = server
  await server.close()
  server = await startServer({ root, port })
}

describe('without a network', () => {
  it('is there after the first visit, cold, with the server down', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await heading(page).waitFor()
    await waitForOffline(page)
    await server.close()
    await browser.context.setOffline(true)
    await page.close()
    const cold = await browser.context.newPage()
    await cold.goto(server.address)
    await heading(cold).waitFor()
    await cold.goto(`${server.address}?from=home-screen#/log`)
    await heading(cold).waitFor()
    await cold.goto(`${server.address}some/deep/link#/check`)
    await heading(cold).waitFor()
    expect(cold.url()).toBe(`${server.address}#/check`)
  })

  it('works from a folder of a host too', async () => {
    const nested = await startServer({ root: DIST, basePath: '/tools/stillpin/' })
    const page = await firstPage(browser)
    await page.goto(nested.address)
    await waitForOffline(page)
    await nested.close()
    await browser.context.setOffline(true)
    await page.goto(`${nested.address}#/check`)
    await heading(page).waitFor()
  })

  it('can be switched off with ?no-sw', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    await page.goto(`${server.address}?no-sw`)
    await page.waitForFunction(async () => (await navigator.serviceWorker.getRegistrations()).length === 0)
  })

  it('can be installed', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    const devtools = await browser.context.newCDPSession(page)
    const manifest = await devtools.send('Page.getAppManifest')
    expect(manifest.errors).toEqual([])
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors')
    // A test profile counts as a private window; nothing else may stand in the way.
    expect(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito')).toEqual([])
  })
})

describe('an update', () => {
  const next = mkdtempSync(join(tmpdir(), 'stillpin-next-'))
  build({ STILLPIN_OUT: next, STILLPIN_VERSION: '77.7.7' })

  it('waits for a tap, reloads only the window that asked, and leaves the text of the other', async () => {
    const asking = await firstPage(browser)
    await asking.goto(server.address)
    await waitForOffline(asking)
    const other = await browser.context.newPage()
    await other.goto(server.address)
    await other.getByRole('textbox').first().fill('half a sentence')
    await deploy(next)
    await asking.bringToFront()
    await asking.evaluate(async () => (await navigator.serviceWorker.ready).update())
    await asking.getByRole('button', { name: /update/i }).waitFor()
    expect(await asking.locator('html[data-version="77.7.7"]').count()).toBe(0)
    await asking.getByRole('button', { name: /update/i }).click()
    await version(asking, '77.7.7')
    await other.bringToFront()
    await other.getByText(/another window/i).waitFor()
    expect(await other.getByRole('textbox').first().inputValue()).toBe('half a sentence')
    await server.close()
    await browser.context.setOffline(true)
    await asking.reload()
    await version(asking, '77.7.7')
    rmSync(next, { recursive: true })
  })
})
