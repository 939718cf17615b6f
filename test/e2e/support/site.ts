/** One browser and one served copy of the build for a whole test file; every test takes a context of its own from it. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { CHROMIUM_FLAGS, findHeadless } from '../../../scripts/chromium.mjs'
import { DIST, startServer } from '../../../scripts/static-server.mjs'
import type { Faults } from './browser.ts'
import { keepDrawn } from './frames.ts'

export const PHONE = { width: 360, height: 800 } as const
export const DESK = { width: 1280, height: 800 } as const

export type Visit = {
  readonly context: BrowserContext
  readonly page: Page
  readonly faults: Faults
  /** the address of a place, such as `#/check/need` */
  readonly at: (hash: string) => string
  /** takes the server and the network away */
  readonly goDark: () => Promise<void>
}

export type Site = {
  /** A context of its own with one page. Where the offline copy is not the matter, `serviceWorkers: 'block'` saves its time. */
  readonly visit: (options?: BrowserContextOptions) => Promise<Visit>
  /** ends the contexts of a test and brings the server back; gives everything that went wrong in them */
  readonly leave: () => Promise<Faults>
  readonly close: () => Promise<void>
}

/** What a browser logs when there is no network, whatever the page does. */
const IS_EXPECTED = /net::ERR_(INTERNET_DISCONNECTED|CONNECTION_REFUSED|CONNECTION_RESET)/

declare global {
  interface Window {
    noteBreach?: (text: string) => void
  }
}

async function watch(context: BrowserContext, faults: Faults): Promise<void> {
  context.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url())
    if (/^(https?|wss?):$/.test(protocol) && hostname !== 'localhost') faults.foreign.push(request.url())
  })
  context.on('console', (message) => {
    const text = message.text()
    if (/Content Security Policy|Trusted ?Type/i.test(text)) faults.policy.push(text)
    else if (message.type() === 'error' && !IS_EXPECTED.test(text)) faults.errors.push(text)
  })
  context.on('weberror', (failure) => faults.errors.push(String(failure.error())))
  await context.exposeFunction('noteBreach', (text: string) => {
    faults.policy.push(text)
  })
  // Breaches are told by an event also where the console stays silent.
  await context.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => {
      window.noteBreach?.(`${event.effectiveDirective}: ${event.blockedURI} ${event.sample}`)
    })
  })
}

async function start(): Promise<Browser> {
  const executablePath = findHeadless()
  if (executablePath === undefined) throw new Error('No Chromium found; set CHROMIUM_PATH to its program file.')
  return chromium.launch({ executablePath, args: [...CHROMIUM_FLAGS] })
}

/**
 * Serves a private copy of the build, so that another build beside a run changes nothing, and starts a browser. Where time is
 * measured (`isMeasured`) nothing looks for frames.
 */
export async function openSite({ isMeasured = false } = {}): Promise<Site> {
  const root = mkdtempSync(join(tmpdir(), 'stillpin-site-'))
  cpSync(DIST, root, { recursive: true })
  const browser = await start()
  let server = await startServer({ root })
  const { address, port } = server
  let isUp = true
  let faults: Faults = { foreign: [], policy: [], errors: [] }
  const stop = async () => {
    if (isUp) await server.close()
    isUp = false
  }
  const visit = async (options: BrowserContextOptions = {}): Promise<Visit> => {
    const context = await browser.newContext({ viewport: PHONE, reducedMotion: 'reduce', ...options })
    context.setDefaultTimeout(10_000)
    await watch(context, faults)
    if (!isMeasured) await keepDrawn(context, console.warn)
    const page = await context.newPage()
    const goDark = async () => {
      await stop()
      await context.setOffline(true)
    }
    return { context, page, faults, at: (hash) => `${address}${hash}`, goDark }
  }
  const leave = async () => {
    for (const context of browser.contexts()) await context.close()
    if (!isUp) server = await startServer({ root, port })
    isUp = true
    const seen = faults
    faults = { foreign: [], policy: [], errors: [] }
    return seen
  }
  const close = async () => {
    await browser.close()
    await stop()
    rmSync(root, { recursive: true, force: true })
  }
  return { visit, leave, close }
}

/** What every visit must end with. */
export const CLEAN: Faults = { foreign: [], policy: [], errors: [] }
