/** A browser for the tests: Chromium of this machine, with everything that must not happen written down. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { CHROMIUM_FLAGS, findChromium } from '../../../scripts/chromium.mjs'

/** What a page did that it must not do. */
export type Faults = {
  /** requests to another host */
  readonly foreign: string[]
  /** breaches of the content security policy */
  readonly policy: string[]
  /** console errors and uncaught exceptions */
  readonly errors: string[]
}

export type TestBrowser = { readonly context: BrowserContext; readonly faults: Faults; close(): Promise<void> }

type Options = { readonly width?: number; readonly height?: number; readonly dark?: boolean }

/** Network failures are what an offline test is about; the browser logs them as errors whatever the page does. */
const IS_EXPECTED = /net::ERR_(INTERNET_DISCONNECTED|CONNECTION_REFUSED)/

function watch(page: Page, faults: Faults): void {
  page.on('console', (message) => {
    const text = message.text()
    if (/Content Security Policy|Trusted Type/i.test(text)) faults.policy.push(text)
    else if (message.type() === 'error' && !IS_EXPECTED.test(text)) faults.errors.push(text)
  })
  page.on('pageerror', (error) => faults.errors.push(String(error)))
}

/** Starts a browser with an empty profile. `close` removes it again. */
export async function launch({ width = 360, height = 800, dark = false }: Options = {}): Promise<TestBrowser> {
  const executablePath = findChromium()
  if (executablePath === undefined) throw new Error('No Chromium found; set CHROMIUM_PATH to its program file.')
  const profile = mkdtempSync(join(tmpdir(), 'stillpin-profile-'))
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: [...CHROMIUM_FLAGS],
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
  })
  const faults: Faults = { foreign: [], policy: [], errors: [] }
  context.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url())
    if (/^https?:$/.test(protocol) && hostname !== 'localhost') faults.foreign.push(request.url())
  })
  for (const page of context.pages()) watch(page, faults)
  context.on('page', (page) => watch(page, faults))
  const close = async () => {
    await context.close()
    rmSync(profile, { recursive: true, force: true })
  }
  return { context, faults, close }
}

/** The first tab. */
export async function firstPage({ context }: TestBrowser): Promise<Page> {
  return context.pages()[0] ?? (await context.newPage())
}

/** Waits until the worker is active, controls the page and has filled its cache. */
export async function waitForOffline(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready
    if (active?.state !== 'activated')
      await new Promise((done) => active?.addEventListener('statechange', done, { once: true }))
  })
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null, undefined, { polling: 100 })
}
