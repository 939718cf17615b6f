/** How well the letters of a screen can be read, measured in the page: contrast, weight, and whether any are cut off. */
import type { Page } from 'playwright-core'

export type Legible = {
  readonly leastRatio: number
  /** letters below this size have to be bold */
  readonly smallBelowPx: number
  readonly leastWeight: number
}

/**
 * Text that falls short, as "what: words". Contrast is that of WCAG 2, of the letters as they are drawn (with every
 * opacity above them) on the nearest ground that is not clear.
 */
export const weakText = (page: Page, wanted: Legible): Promise<string[]> =>
  page.evaluate(({ leastRatio, smallBelowPx, leastWeight }) => {
    const pixel = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })
    if (pixel === null) throw new Error('No canvas to read colours with.')
    type Rgba = readonly [number, number, number, number]
    const rgba = (colour: string): Rgba => {
      pixel.clearRect(0, 0, 1, 1)
      pixel.fillStyle = colour
      pixel.fillRect(0, 0, 1, 1)
      const [red = 0, green = 0, blue = 0, alpha = 0] = pixel.getImageData(0, 0, 1, 1).data
      return [red, green, blue, alpha / 255]
    }
    const over = (top: Rgba, below: Rgba, opacity = 1): Rgba => {
      const alpha = top[3] * opacity
      const mix = (at: 0 | 1 | 2) => top[at] * alpha + below[at] * (1 - alpha)
      return [mix(0), mix(1), mix(2), 1]
    }
    const luminance = ([red, green, blue]: Rgba): number => {
      const part = (value: number) => {
        const share = value / 255
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
      }
      return 0.2126 * part(red) + 0.7152 * part(green) + 0.0722 * part(blue)
    }
    const contrast = (a: Rgba, b: Rgba): number => {
      const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
      return (light + 0.05) / (dark + 0.05)
    }
    const around = (one: Element): Element[] => {
      const found: Element[] = []
      for (let at: Element | null = one; at !== null; at = at.parentElement) found.push(at)
      return found
    }
    const groundOf = (one: Element): Rgba => {
      const layers = around(one).map((each) => rgba(getComputedStyle(each).backgroundColor))
      const solid = layers.findIndex(([, , , alpha]) => alpha === 1)
      const base: Rgba = solid < 0 ? [255, 255, 255, 1] : (layers[solid] ?? [255, 255, 255, 1])
      return layers.slice(0, Math.max(0, solid)).reduceRight((below, layer) => over(layer, below), base)
    }
    const bad = new Set<string>()
    const scope = document.querySelector('dialog[open]') ?? document.body
    const walker = document.createTreeWalker(scope, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const words = (node.textContent ?? '').trim()
      const one = node.parentElement
      if (words === '' || one === null || one.closest('.unseen, title, noscript, script') !== null) continue
      if (!one.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue
      const style = getComputedStyle(one)
      const opacity = around(one).reduce((all, each) => all * Number(getComputedStyle(each).opacity), 1)
      const ground = groundOf(one)
      const ink = over(rgba(one instanceof SVGElement ? style.fill : style.color), ground, opacity)
      const ratio = contrast(ink, ground)
      const sizePx = Number.parseFloat(style.fontSize)
      if (ratio < leastRatio) bad.add(`${ratio.toFixed(2)} : 1, ${words.slice(0, 40)}`)
      if (sizePx < smallBelowPx && Number(style.fontWeight) < leastWeight)
        bad.add(`${sizePx} px at weight ${style.fontWeight}, ${words.slice(0, 40)}`)
    }
    return [...bad]
  }, wanted)

/** Words that do not fit where they stand: cut off at an edge, or pushed over the next part of the row. */
export const cutText = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const bad = new Set<string>()
    const scope = document.querySelector('dialog[open]') ?? document.body
    for (const one of scope.querySelectorAll<HTMLElement>('*')) {
      if (one instanceof SVGElement || one.closest('.unseen, .skip, svg') !== null) continue
      if (!one.checkVisibility({ visibilityProperty: true })) continue
      const hasText = [...one.childNodes].some(({ nodeType, textContent }) => nodeType === 3 && textContent?.trim())
      if (!hasText && !(one instanceof HTMLInputElement)) continue
      const style = getComputedStyle(one)
      const hides = /hidden|clip/.test(style.overflowX) && one.getClientRects().length > 0
      const words = `<${one.tagName.toLowerCase()} ${one.className}> ${(one.textContent ?? '').trim().slice(0, 40)}`
      // the text of an input can be moved by the arrow keys, but a few letters of it have to be seen
      if (one instanceof HTMLInputElement) {
        const isText = ['text', 'search'].includes(one.type)
        if (isText && one.clientWidth < 4 * Number.parseFloat(style.fontSize))
          bad.add(`narrow, ${one.clientWidth} px ${one.name || one.id} ${words}`)
      } else if (hides && one.scrollWidth > one.clientWidth + 1 && style.textOverflow !== 'ellipsis') bad.add(words)
      const scroller = one.closest('.scroll-x, .scroll-y')
      const box = one.getBoundingClientRect()
      if (scroller === null && (box.right > document.documentElement.clientWidth + 1 || box.left < -1)) bad.add(words)
    }
    return [...bad]
  })
