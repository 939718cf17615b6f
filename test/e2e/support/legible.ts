/** How well the letters of a screen can be read, measured in the page: contrast, weight, and whether any are cut off. */
import type { Page } from 'playwright-core'
import { withColours } from './colours.ts'

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
  withColours(page, (colours) =>
    page.evaluate(
      ({ colours: { rgba, over, contrast, groundOf, opacityOf }, leastRatio, smallBelowPx, leastWeight }) => {
        const bad = new Set<string>()
        const scope = document.querySelector('dialog[open]') ?? document.body
        const walker = document.createTreeWalker(scope, NodeFilter.SHOW_TEXT)
        for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
          const words = (node.textContent ?? '').trim()
          const one = node.parentElement
          if (words === '' || one === null || one.closest('.unseen, title, noscript, script') !== null) continue
          if (!one.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue
          const style = getComputedStyle(one)
          const ground = groundOf(one)
          const ink = over(rgba(one instanceof SVGElement ? style.fill : style.color), ground, opacityOf(one))
          const ratio = contrast(ink, ground)
          const sizePx = Number.parseFloat(style.fontSize)
          if (ratio < leastRatio) bad.add(`${ratio.toFixed(2)} : 1, ${words.slice(0, 40)}`)
          if (sizePx < smallBelowPx && Number(style.fontWeight) < leastWeight)
            bad.add(`${sizePx} px at weight ${style.fontWeight}, ${words.slice(0, 40)}`)
        }
        return [...bad]
      },
      { colours, ...wanted },
    ),
  )

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
