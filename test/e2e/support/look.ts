/** What a screen looks like, read in the page: how wide it is, how large its targets are, which colours it shows. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { AxeResults, RunOptions } from 'axe-core'
import type { Page } from 'playwright-core'

const AXE = readFileSync(join(import.meta.dirname, '../../../node_modules/axe-core/axe.min.js'), 'utf8')

declare global {
  interface Window {
    axe?: { run(options: RunOptions): Promise<AxeResults> }
  }
}

/** The least a gloved finger hits. */
export const LEAST_TARGET_PX = 48

/** Opens what is folded, so that it is judged too. */
export const openFolds = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const open = () => {
      for (const fold of document.querySelectorAll('details')) fold.open = true
    }
    open()
    // a group draws its fields when it is opened, and these have folds of their own
    const isEmpty = () => [...document.querySelectorAll('form .group')].some((group) => !group.querySelector('.field'))
    while (isEmpty()) await new Promise((done) => setTimeout(done, 10))
    open()
  })

/** How far the page scrolls sideways, and what sticks out; 0 and nothing is right. */
export const sideways = (page: Page): Promise<{ byPx: number; outside: string[] }> =>
  page.evaluate(() => {
    const widthPx = document.documentElement.clientWidth
    const byPx = Math.max(document.documentElement.scrollWidth, document.body.scrollWidth) - widthPx
    const outside =
      byPx <= 0
        ? []
        : [...document.querySelectorAll('#app *')]
            .filter((one) => one.getBoundingClientRect().right > widthPx + 1)
            .slice(-3)
            .map((one) => `<${one.tagName.toLowerCase()}> ${(one.textContent ?? '').slice(0, 40)}`)
    return { byPx: Math.max(0, byPx), outside }
  })

/**
 * Targets too small for a gloved finger, as "width × height role words". Links inside running text are let be, and so are words
 * of the glossary: they stand in running text as well, and the glossary itself has a row for each.
 */
export const smallTargets = (page: Page, leastPx: number): Promise<{ small: string[]; inText: string[] }> =>
  page.evaluate((least) => {
    const wanted =
      'a, button, input, select, textarea, summary, ' +
      ['button', 'switch', 'radio', 'option', 'tab'].map((role) => `[role="${role}"]`).join(', ')
    const small: string[] = []
    const inText: string[] = []
    const scope = document.querySelector('dialog[open]') ?? document
    for (const one of scope.querySelectorAll<HTMLElement>(wanted)) {
      if (one.classList.contains('term')) continue
      if (!one.checkVisibility({ opacityProperty: false, visibilityProperty: true })) continue
      // A mark that its label covers is touched by the label; a field that is drawn as a row is touched as one.
      const label =
        one instanceof HTMLInputElement && ['radio', 'checkbox'].includes(one.type) ? one.closest('label') : null
      const box = (label ?? one).getBoundingClientRect()
      if (box.width <= 2 || box.height <= 2 || box.right <= 0) continue
      if (box.width >= least - 0.5 && box.height >= least - 0.5) continue
      const words = `${Math.round(box.width)} × ${Math.round(box.height)} <${one.tagName.toLowerCase()}> ${(one.getAttribute('name') ?? one.textContent ?? '').trim().slice(0, 40)}`
      const parent = one.parentElement
      const around = (parent?.textContent ?? '').trim().length - (one.textContent ?? '').trim().length
      const isInText = one instanceof HTMLAnchorElement && parent?.tagName === 'P' && around > 20
      if (isInText) inText.push(words)
      else small.push(words)
    }
    return { small, inText }
  }, leastPx)

/** Colours that would spoil the eyes at night: anything that is neither near black nor red. */
export const brightColours = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const pixel = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })
    if (pixel === null) throw new Error('No canvas to read colours with.')
    const rgba = (colour: string): readonly number[] => {
      pixel.clearRect(0, 0, 1, 1)
      pixel.fillStyle = colour
      pixel.fillRect(0, 0, 1, 1)
      return [...pixel.getImageData(0, 0, 1, 1).data]
    }
    const known = new Map<string, boolean>()
    const isDim = (colour: string): boolean => {
      const before = known.get(colour)
      if (before !== undefined) return before
      const [red = 0, green = 0, blue = 0, alpha = 0] = rgba(colour)
      const top = Math.max(red, green, blue)
      const bottom = Math.min(red, green, blue)
      const hueDeg = red === top && green >= blue && top > bottom ? (60 * (green - blue)) / (top - bottom) : -1
      const isRed = hueDeg >= 0 && hueDeg <= 20 && (top - bottom) / top > 0.3
      const verdict = alpha < 8 || top <= 24 || isRed
      known.set(colour, verdict)
      return verdict
    }
    const bad = new Set<string>()
    const scope = document.querySelector('dialog[open]') ?? document.documentElement
    for (const one of [scope, ...scope.querySelectorAll<HTMLElement | SVGElement>('*')]) {
      if (!one.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue
      // What waits above the screen until it is focused is judged when it is.
      if (one.getBoundingClientRect().bottom + scrollY <= 0) continue
      const style = getComputedStyle(one)
      const isDrawn = one instanceof SVGElement
      const sides = ['top', 'right', 'bottom', 'left'] as const
      const colours: [string, string][] = [
        ...(isDrawn
          ? ([
              ['fill', style.fill],
              ['stroke', style.stroke],
            ] as [string, string][])
          : ([
              ['text', style.color],
              ['background', style.backgroundColor],
            ] as [string, string][])),
        ...sides.flatMap((side): [string, string][] =>
          style.getPropertyValue(`border-${side}-style`) !== 'none' &&
          style.getPropertyValue(`border-${side}-width`) !== '0px'
            ? [[`border ${side}`, style.getPropertyValue(`border-${side}-color`)]]
            : [],
        ),
        ...(style.outlineStyle === 'none' ? [] : ([['outline', style.outlineColor]] as [string, string][])),
        ...(one instanceof HTMLInputElement
          ? ([
              ['caret', style.caretColor],
              ['accent', style.accentColor],
            ] as [string, string][])
          : []),
      ]
      for (const [what, colour] of colours) {
        if (colour === 'none' || colour === 'auto' || colour.startsWith('url(') || colour.startsWith('context-'))
          continue
        if (!isDim(colour))
          bad.add(`${what} ${colour} of <${one.tagName.toLowerCase()}> ${(one.textContent ?? '').trim().slice(0, 30)}`)
      }
    }
    return [...bad]
  })

/** A soft edge may leave a few pixels between red and black; more of them make a spot. */
const SPOT_PIXELS = 6

/**
 * The same from the picture itself, which also shows what the browser draws on its own: places with pixels that are
 * neither near black nor red, as "rgb at x, y: element".
 */
export async function brightPixels(page: Page): Promise<string[]> {
  // A window as high as the page, so that what is fixed to its edges hides nothing.
  const before = page.viewportSize()
  const height = await page.evaluate(() => document.documentElement.scrollHeight)
  await page.setViewportSize({ width: before?.width ?? 360, height })
  const picture = await page.screenshot({ animations: 'disabled', caret: 'hide' })
  const found = await page.evaluate(
    async ({ base64, least }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
      const drawing = canvas.getContext('2d')
      if (drawing === null) return ['no canvas']
      drawing.drawImage(bitmap, 0, 0)
      const { data } = drawing.getImageData(0, 0, bitmap.width, bitmap.height)
      const found = new Map<string, { first: string; count: number }>()
      for (let at = 0, looked = 0; at < data.length && looked < 2_000; at += 4) {
        const [red = 0, green = 0, blue = 0] = [data[at], data[at + 1], data[at + 2]]
        // Red leads, and what else there is stays well below it and warm.
        const isRed = red >= green && green + 10 >= blue && green <= 0.72 * red + 12
        if (isRed || Math.max(red, green, blue) <= 24) continue
        looked += 1
        const x = (at / 4) % bitmap.width
        const y = Math.floor(at / 4 / bitmap.width)
        const one = document.elementFromPoint(x, y)
        const type = one instanceof HTMLInputElement ? ` type=${one.type}` : ''
        const words = `<${one?.tagName.toLowerCase()}${type}> ${(one?.textContent ?? '').trim().slice(0, 30)}`
        const before = found.get(words)
        if (before) before.count += 1
        else found.set(words, { first: `rgb(${red}, ${green}, ${blue}) at ${x}, ${y}: ${words}`, count: 1 })
      }
      return [...found.values()]
        .filter(({ count }) => count >= least)
        .map(({ first, count }) => `${count} pixels, first ${first}`)
    },
    { base64: picture.toString('base64'), least: SPOT_PIXELS },
  )
  if (before) await page.setViewportSize(before)
  return found
}

/** Breaches axe finds, as "rule: what (where)". Needs a context that lets a script be put in. */
export async function axeBreaches(page: Page): Promise<string[]> {
  await page.evaluate(AXE)
  return page.evaluate(async () => {
    const results = await window.axe?.run({ resultTypes: ['violations'], elementRef: false })
    if (results === undefined) return ['axe did not start']
    return results.violations.flatMap(({ id, help, nodes }) =>
      nodes
        .slice(0, 3)
        .map(
          (node) => `${id}: ${help} (${String(node.target)}; ${node.any[0]?.message ?? node.all[0]?.message ?? ''})`,
        ),
    )
  })
}
