/** Finds the system's Chromium for the browser tests, the icon script and Lighthouse. */
import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

/** Flags that keep a test browser quiet and off the network. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // letters as wide as on a phone: the headless shell alone fits them to its pixels
  '--font-render-hinting=none',
]

/** Path of a program, or undefined. @param {string} name @returns {string | undefined} */
export function onPath(name) {
  try {
    return execFileSync('sh', ['-c', 'command -v "$1"', 'sh', name], { encoding: 'utf8' }).trim() || undefined
  } catch {
    return undefined
  }
}

/** Path of a Chromium, or undefined. CHROMIUM_PATH wins. @returns {string | undefined} */
export function findChromium() {
  const named = process.env['CHROMIUM_PATH']
  if (named !== undefined && named !== '') return existsSync(named) ? named : undefined
  for (const name of NAMES) {
    const path = onPath(name)
    if (path !== undefined) return path
  }
  return undefined
}

/** Debian's Chromium without a desk around its pages. */
export const HEADLESS = 'chromium-headless-shell'

/**
 * The same for tests that begin with a window of their own each: the whole browser makes a window of a desk for every
 * one, which takes more time, and more from test to test. Where there is none, the whole browser.
 * @returns {string | undefined}
 */
export function findHeadless() {
  const named = process.env['CHROMIUM_PATH']
  return named !== undefined && named !== '' ? findChromium() : (onPath(HEADLESS) ?? findChromium())
}
