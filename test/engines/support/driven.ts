/** Chromium and Firefox with an empty profile of their own, driven by the same library over their own protocols. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import puppeteer, { type Browser, type Page } from 'puppeteer-core'
import { CHROMIUM_FLAGS, findChromium } from '../../../scripts/chromium.mjs'
import { findFirefox } from '../../../scripts/engines.mjs'
import type { Engine } from './engine.ts'

/** Nothing that a fresh Firefox asks the network for. */
const QUIET = {
  'app.normandy.enabled': false,
  'app.update.enabled': false,
  'browser.newtabpage.enabled': false,
  'browser.safebrowsing.downloads.enabled': false,
  'browser.safebrowsing.malware.enabled': false,
  'browser.safebrowsing.phishing.enabled': false,
  'browser.search.update': false,
  'browser.shell.checkDefaultBrowser': false,
  'browser.startup.homepage_override.mstone': 'ignore',
  'captivedetect.canonicalURL': '',
  'datareporting.healthreport.uploadEnabled': false,
  'datareporting.policy.dataSubmissionEnabled': false,
  'extensions.getAddons.cache.enabled': false,
  'network.captive-portal-service.enabled': false,
  'network.connectivity-service.enabled': false,
  'network.dns.disablePrefetch': true,
  'network.prefetch-next': false,
  'toolkit.telemetry.enabled': false,
}

type Options = {
  /** further settings of Firefox */
  readonly settings?: Readonly<Record<string, unknown>>
}

async function launch(name: 'chromium' | 'firefox', profile: string, { settings = {} }: Options): Promise<Browser> {
  const executablePath = name === 'chromium' ? findChromium() : findFirefox()
  if (executablePath === undefined) throw new Error(`No ${name} found.`)
  const shared = { executablePath, userDataDir: profile, headless: true, defaultViewport: null } as const
  return name === 'chromium'
    ? puppeteer.launch({ ...shared, browser: 'chrome', args: [...CHROMIUM_FLAGS] })
    : puppeteer.launch({ ...shared, browser: 'firefox', extraPrefsFirefox: { ...QUIET, ...settings } })
}

/** Starts the engine with an empty profile; `close` removes it. */
export async function startDriven(name: 'chromium' | 'firefox', options: Options = {}): Promise<Engine> {
  const profile = mkdtempSync(join(tmpdir(), `stillpin-${name}-`))
  let browser = await launch(name, profile, options)
  let page: Page = await firstPage(browser)
  return {
    name,
    go: async (address) => {
      await page.goto(address, { waitUntil: 'load' })
    },
    reload: async () => {
      await page.reload({ waitUntil: 'load' })
    },
    read: async <T>(expression: string) => (await page.evaluate(expression)) as T,
    tap: async (selector) => {
      await page.locator(selector).click()
    },
    type: async (selector, text) => {
      await page.focus(selector)
      await page.$eval(selector, (field) => (field as HTMLInputElement).select())
      await page.keyboard.type(text)
    },
    widen: async (width) => {
      await page.setViewport({ width, height: 800 })
      return await page.evaluate(() => innerWidth)
    },
    picture: async () => Buffer.from(await page.screenshot({ fullPage: true })),
    restart: async (how) => {
      const program = browser.process()
      if (how === 'kill') {
        const ended = new Promise((done) => program?.once('exit', done))
        program?.kill('SIGKILL')
        await ended
      } else await browser.close()
      browser = await launch(name, profile, options)
      page = await firstPage(browser)
    },
    close: async () => {
      await browser.close()
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
    },
  }
}

async function firstPage(browser: Browser): Promise<Page> {
  const [first = await browser.newPage()] = await browser.pages()
  first.setDefaultTimeout(30_000)
  return first
}
