/** A browser of this machine that can be killed like a phone's: at once, with all its processes, and started again on what it left. */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { type Browser, chromium, type Page } from 'playwright-core'
import { CHROMIUM_FLAGS, findChromium } from '../../../scripts/chromium.mjs'
import { PHONE } from './site.ts'

export type Killable = {
  /** starts the browser on what it left, with one page */
  readonly start: () => Promise<Page>
  /** ends every process of it, without a word to any */
  readonly kill: () => Promise<void>
  /** ends it and removes what it left */
  readonly close: () => Promise<void>
}

/** The address the browser says it can be driven at. */
function drivenAt(child: ChildProcess): Promise<string> {
  return new Promise((done, failed) => {
    if (child.stderr === null) return failed(new Error('The browser has no voice.'))
    const lines = createInterface({ input: child.stderr })
    lines.on('line', (line) => {
      const address = /DevTools listening on (ws:\S+)/.exec(line)?.[1]
      if (address !== undefined) done(address)
    })
    child.once('exit', () => failed(new Error('The browser ended before it could be driven.')))
  })
}

export function killable(): Killable {
  const executablePath = findChromium()
  if (executablePath === undefined) throw new Error('No Chromium found; set CHROMIUM_PATH to its program file.')
  const profile = mkdtempSync(join(tmpdir(), 'stillpin-kill-'))
  let running: { readonly child: ChildProcess; readonly browser: Browser } | undefined

  const start = async () => {
    const flags = ['--headless=new', `--user-data-dir=${profile}`, '--remote-debugging-port=0', 'about:blank']
    const child = spawn(executablePath, [...CHROMIUM_FLAGS, ...flags], {
      detached: true,
      stdio: ['ignore', 'ignore', 'pipe'],
    })
    const browser = await chromium.connectOverCDP(await drivenAt(child))
    running = { child, browser }
    const [context] = browser.contexts()
    if (context === undefined) throw new Error('The browser has no window.')
    context.setDefaultTimeout(20_000)
    const page = context.pages()[0] ?? (await context.newPage())
    await page.setViewportSize(PHONE)
    return page
  }

  const kill = async () => {
    if (running === undefined) return
    const { child, browser } = running
    running = undefined
    const ended = new Promise((done) => child.once('exit', done))
    // the group: every process the browser has started
    process.kill(-Number(child.pid), 'SIGKILL')
    await ended
    await browser.close()
    for (const name of readdirSync(profile))
      if (name.startsWith('Singleton')) rmSync(join(profile, name), { force: true })
  }

  const close = async () => {
    await kill()
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
  }
  return { start, kill, close }
}
