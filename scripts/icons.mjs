/** Draws the PNG icons from public/icons/icon.svg with the system's Chromium. Run after changing the drawing. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { CHROMIUM_FLAGS, findChromium } from './chromium.mjs'

const FOLDER = join(import.meta.dirname, '..', 'public', 'icons')

/** `full`: square to the edge, for systems that cut their own shape; the drawing stays inside the safe circle. */
const ICONS = [
  { name: 'icon-192.png', size: 192, full: false, scale: 1 },
  { name: 'icon-512.png', size: 512, full: false, scale: 1 },
  { name: 'maskable-512.png', size: 512, full: true, scale: 0.8 },
  { name: 'touch-180.png', size: 180, full: true, scale: 0.92 },
]

const drawing = readFileSync(join(FOLDER, 'icon.svg'), 'utf8')
const paper = /<rect[^>]*fill="([^"]+)"/.exec(drawing)?.[1] ?? '#fff'
const executablePath = findChromium()
if (executablePath === undefined) throw new Error('No Chromium found; set CHROMIUM_PATH to its program file.')
const browser = await chromium.launch({ executablePath, args: [...CHROMIUM_FLAGS] })
const page = await browser.newPage()
for (const { name, size, full, scale } of ICONS) {
  await page.setViewportSize({ width: size, height: size })
  await page.setContent(
    `<style>*{margin:0}body{background:${full ? paper : 'transparent'};display:grid;place-items:center;height:100vh}svg{display:block;width:${scale * 100}vw}</style>${drawing}`,
  )
  writeFileSync(join(FOLDER, name), await page.screenshot({ omitBackground: true }))
}
await browser.close()
