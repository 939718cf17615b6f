import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page, Request } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { DIST, startServer } from '../../scripts/static-server.mjs'
import { CHECKS } from '../../src/calc/registry.ts'
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

  it('opens a part it has not fetched yet in the very page of the first visit, which was never loaded again', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    await server.close()
    await browser.context.setOffline(true)
    for (const place of ['log', 'check/surge', 'notes']) {
      await page.evaluate((hash) => location.assign(`#/${hash}`), place)
      await page.waitForFunction(
        (hash) => location.hash === `#/${hash}` && document.querySelector('h1') !== null,
        place,
      )
      await page.getByText('Opening…').waitFor({ state: 'detached' })
      expect(await page.getByText('could not be loaded').count()).toBe(0)
    }
  })

  it('opens every place, every check and an expression that needs its reader', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    await server.close()
    await browser.context.setOffline(true)
    const places = ['ask', 'check', 'log', 'notes', ...CHECKS.map(({ id }) => `check/${id}`)]
    for (const place of places) {
      await page.goto('about:blank')
      await page.goto(`${server.address}#/${place}`)
      await heading(page).waitFor()
      expect(await page.getByText('could not be loaded').count()).toBe(0)
    }
    await page.goto(
      `${server.address}#/check/filter?topology=C&capacitanceF=2*4.7n%2B330p&sourceOhm=50&loadOhm=50&frequencyHz=10M&esrOhm=0&eslH=0&bondOhm=0&bondH=0`,
    )
    await page.locator('#insertionLossDb').waitFor()
    const lossDb = Number(await page.locator('#insertionLossDb').getAttribute('data-si'))
    // 20·log10|1 + jωC·25 Ω| with C = 9.73 nF at 10 MHz
    expect(lossDb).toBeCloseTo(23.7032, 3)
  })

  it('shows the chosen theme from the first paint on', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    await page.evaluate(() => localStorage.setItem('stillpin-theme', 'night'))
    await page.addInitScript(() => {
      new MutationObserver((_changes, observer) => {
        if (document.body === null) return
        observer.disconnect()
        document.documentElement.dataset['themeAtBody'] = document.documentElement.dataset['theme'] ?? 'none'
      }).observe(document, { childList: true, subtree: true })
    })
    await page.reload()
    await page.locator('html[data-theme-at-body="night"]').waitFor()
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

/** The last part a start fetches by itself, some seconds after it: before, a window is not all there. */
const TIDYING = /\/tidy-/

describe('an update', () => {
  const folders = mkdtempSync(join(tmpdir(), 'stillpin-deploys-'))
  const next = join(folders, 'next')
  /** The next version with something wrong about it. */
  const spoilt = (name: string, spoil: (folder: string) => void): string => {
    const folder = join(folders, name)
    cpSync(next, folder, { recursive: true })
    spoil(folder)
    return folder
  }
  const withoutScripts = (folder: string) => {
    for (const name of readdirSync(join(folder, 'assets')))
      if (name.endsWith('.js')) rmSync(join(folder, 'assets', name))
  }
  beforeAll(() => {
    build({ STILLPIN_OUT: next, STILLPIN_VERSION: '77.7.7' })
  })
  afterAll(() => rmSync(folders, { recursive: true }))

  /**
   * Looks for an update until the browser has seen the new files: a look that was under way before the deploy answers
   * for the next one too. Ends with what became of the new worker, or `unreadable` when there was none to run.
   */
  const outcome = (page: Page) =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready
      let found = registration.waiting ?? registration.installing
      registration.addEventListener('updatefound', () => {
        found = registration.installing
      })
      while (found === null) {
        try {
          await registration.update()
        } catch {
          return 'unreadable'
        }
      }
      const worker = found
      await new Promise<void>((done) => {
        const look = () => worker.state !== 'installing' && done()
        worker.addEventListener('statechange', look)
        look()
      })
      return worker.state
    })

  /** The old version still starts, with the host and without it. */
  async function livesOn(page: Page): Promise<void> {
    await page.reload()
    await heading(page).waitFor()
    await page.close()
    await server.close()
    await browser.context.setOffline(true)
    const cold = await browser.context.newPage()
    await cold.goto(server.address)
    await heading(cold).waitFor()
    expect(await cold.locator('html[data-version="77.7.7"]').count()).toBe(0)
  }

  it('that is only half there is refused, and the old version goes on', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    server.deploy(spoilt('half', withoutScripts))
    expect(await outcome(page)).toBe('redundant')
    await livesOn(page)
  })

  it('is refused when an edge still sends the old page with the new files, and the old version goes on', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    const skewed = spoilt('skewed', (folder) => cpSync(join(DIST, 'index.html'), join(folder, 'index.html')))
    server.deploy(skewed)
    expect(await outcome(page)).toBe('redundant')
    await livesOn(page)
  })

  it.each([
    ['empty', () => ''],
    ['cut in the middle', (text: string) => text.slice(0, text.length / 2)],
  ])('whose sw.js is %s is no update at all', async (name, cut) => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    const cutShort = spoilt(name, (folder) => {
      const path = join(folder, 'sw.js')
      writeFileSync(path, cut(readFileSync(path, 'utf8')))
    })
    server.deploy(cutShort)
    expect(await outcome(page)).toBe('unreadable')
    await livesOn(page)
  })

  it('is refused too when the host answers missing files with its start page', async () => {
    const page = await firstPage(browser)
    await page.goto(server.address)
    await waitForOffline(page)
    const { port } = server
    await server.close()
    const inner = await startServer({ root: spoilt('careless', withoutScripts) })
    const careless = createServer((request, response) => {
      const reply = async () => {
        const found = await fetch(new URL(request.url ?? '', inner.address))
        const answer = found.ok ? found : await fetch(inner.address)
        response.writeHead(200, { 'Content-Type': answer.headers.get('content-type') ?? '' })
        response.end(Buffer.from(await answer.arrayBuffer()))
      }
      // The browser hangs up on what it no longer needs.
      reply().catch(() => response.destroy())
    })
    await new Promise<void>((done) => careless.listen(port, 'localhost', done))
    try {
      expect(await outcome(page)).toBe('redundant')
      await page.reload()
      await heading(page).waitFor()
    } finally {
      careless.closeAllConnections()
      careless.close()
      await inner.close()
    }
  })

  it('waits for a tap, reloads only the window that asked, and keeps the text of both', async () => {
    const asking = await firstPage(browser)
    await asking.goto(`${server.address}#/check/need`)
    await waitForOffline(asking)
    await asking.getByRole('textbox').first().fill('63.7')
    const other = await browser.context.newPage()
    const complete = other.waitForResponse(TIDYING)
    await other.goto(`${server.address}#/check/filter`)
    await other.getByRole('textbox').first().fill('half a sentence')
    await complete
    server.deploy(next)
    expect(await outcome(asking)).toBe('installed')
    await asking.bringToFront()
    await asking.getByRole('button', { name: 'Update now' }).waitFor()
    expect(await asking.locator('html[data-version="77.7.7"]').count()).toBe(0)
    await asking.getByRole('button', { name: 'Update now' }).click()
    await version(asking, '77.7.7')
    await asking.getByRole('textbox').first().waitFor()
    expect(await asking.getByRole('textbox').first().inputValue()).toBe('63.7')
    await other.bringToFront()
    await other.getByText(/updated in another window/i).waitFor()
    expect(await other.getByRole('textbox').first().inputValue()).toBe('half a sentence')
    await server.close()
    await browser.context.setOffline(true)
    await asking.reload()
    await version(asking, '77.7.7')
    await heading(asking).waitFor()
  })

  it('is told to a window that starts only when the new version is in charge', async () => {
    const asking = await firstPage(browser)
    await asking.goto(server.address)
    await waitForOffline(asking)
    const late = await browser.context.newPage()
    // A busy machine: this window gets to its worker only when the test says so.
    await late.addInitScript(() => {
      const { serviceWorker } = navigator
      const register = serviceWorker.register.bind(serviceWorker)
      const isDue = new Promise((done) => addEventListener('let-it-start', done, { once: true }))
      serviceWorker.register = async (...given) => {
        await isDue
        return register(...given)
      }
    })
    const complete = late.waitForResponse(TIDYING)
    await late.goto(`${server.address}#/check/filter`)
    await late.getByRole('textbox').first().fill('half a sentence')
    await complete
    server.deploy(next)
    expect(await outcome(asking)).toBe('installed')
    await asking.bringToFront()
    await asking.getByRole('button', { name: 'Update now' }).click()
    await version(asking, '77.7.7')
    await late.bringToFront()
    await late.evaluate(() => dispatchEvent(new Event('let-it-start')))
    await late.getByText(/updated in another window/i).waitFor()
    expect(await late.getByRole('textbox').first().inputValue()).toBe('half a sentence')
  })

  it('keeps the note of a complaint that was being written', async () => {
    const page = await firstPage(browser)
    await page.goto(`${server.address}#/log`)
    await waitForOffline(page)
    await page.getByRole('button', { name: /demo/i }).click()
    const note = page.getByRole('textbox', { name: /note/i })
    await note.fill('Seen again at the hold, contact 7 only')
    server.deploy(next)
    expect(await outcome(page)).toBe('installed')
    await page.getByRole('button', { name: 'Update now' }).click()
    await version(page, '77.7.7')
    await note.waitFor()
    expect(await note.inputValue()).toBe('Seen again at the hold, contact 7 only')
  })
})

describe('a first visit to a deploy that is only half there', () => {
  it('shows words, whichever file is missing', { timeout: 180_000 }, async () => {
    const bare = await browser.context.browser()?.newContext({ serviceWorkers: 'block' })
    if (bare === undefined) throw new Error('no browser')
    const page = await bare.newPage()
    // a file that a start does not ask for is missed by nobody
    const asked = new Set<string>()
    const note = (request: Request) => asked.add(new URL(request.url()).pathname.slice(1))
    page.on('request', note)
    await page.goto(server.address, { waitUntil: 'networkidle' })
    page.off('request', note)
    const files = [...asked].filter((name) => /\.(js|css)$/.test(name))
    expect(files).toContain('first-paint.js')
    expect(files.length).toBeGreaterThan(5)
    const blank: string[] = []
    for (const missing of files) {
      await page.route(`**/${missing}`, (route) => route.fulfill({ status: 404, body: 'Not found' }))
      await page.goto('about:blank')
      await page.goto(server.address)
      const words = page
        .getByRole('heading', { level: 1 })
        .or(page.getByText('could not be loaded'))
        .or(page.locator('#late:visible'))
      await words
        .first()
        .waitFor({ timeout: 5000 })
        .catch(() => blank.push(missing))
      await page.unroute(`**/${missing}`)
    }
    expect(blank).toEqual([])
    await bare.close()
  })
})
