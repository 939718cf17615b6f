/** Success criteria of WCAG 2.2 that can be measured in a page, beyond what axe and the other measures here see. */
import type { Page } from 'playwright-core'
import { withColours } from './colours.ts'

/**
 * Text spaced as 1.4.12 asks: lines 1.5, paragraphs 2, letters 0.12, words 0.16 times the size of the letters.
 */
export async function spaceText(page: Page): Promise<void> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }' +
        'p { margin-block-end: 2em !important }',
    )
    document.adoptedStyleSheets = [sheet]
  })
}

export const unspaceText = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.adoptedStyleSheets = []
  })

/** Words that are cut off at the bottom of a box that hides what goes over, or that run over the edge of a drawing. */
export const hiddenWords = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const bad = new Set<string>()
    const scope = document.querySelector('dialog[open]') ?? document.body
    for (const one of scope.querySelectorAll<HTMLElement>('*')) {
      if (one.closest('.unseen, .skip') !== null || !one.checkVisibility({ visibilityProperty: true })) continue
      const words = `<${one.tagName.toLowerCase()} ${one.getAttribute('class') ?? ''}> ${(one.textContent ?? '').trim().slice(0, 40)}`
      if (one instanceof SVGTextElement) {
        const svg = one.ownerSVGElement?.getBoundingClientRect()
        const box = one.getBoundingClientRect()
        if (
          svg === undefined ||
          box.width === 0 ||
          getComputedStyle(one.ownerSVGElement as Element).overflow === 'visible'
        )
          continue
        if (
          box.left < svg.left - 2 ||
          box.right > svg.right + 2 ||
          box.top < svg.top - 3 ||
          box.bottom > svg.bottom + 3
        )
          bad.add(`off the drawing ${words}`)
        continue
      }
      if (one instanceof SVGElement) continue
      const style = getComputedStyle(one)
      const hasText = [...one.childNodes].some(({ nodeType, textContent }) => nodeType === 3 && textContent?.trim())
      const hides = /hidden|clip/.test(style.overflowY) && style.webkitLineClamp === 'none'
      if (hides && (one.textContent ?? '').trim() !== '' && one.scrollHeight > one.clientHeight + 2)
        bad.add(`cut below ${words}`)
      // a row that ends in an ellipsis opens what says all of it
      const isRow = style.textOverflow === 'ellipsis' && one.closest('a, button, label, .mini') !== null
      if (hides && hasText && !isRow && one.scrollWidth > one.clientWidth + 1) bad.add(`cut at the side ${words}`)
    }
    return [...bad]
  })

/** Targets below 24 px whose circle of 24 px meets another target (2.5.8), with those that stand in a sentence apart. */
export const crowdedTargets = (page: Page): Promise<{ crowded: string[]; inText: string[] }> =>
  page.evaluate(() => {
    const LEAST = 24
    const scope = document.querySelector('dialog[open]') ?? document
    const wanted =
      'a, button, input, select, textarea, summary, ' +
      ['button', 'switch', 'radio', 'option', 'tab', 'listbox'].map((role) => `[role="${role}"]`).join(', ')
    const all = [...scope.querySelectorAll<HTMLElement>(wanted)].flatMap((one) => {
      if (!one.checkVisibility({ visibilityProperty: true })) return []
      const label =
        one instanceof HTMLInputElement && ['radio', 'checkbox', 'file'].includes(one.type)
          ? one.closest('label')
          : null
      const box = (label ?? one).getBoundingClientRect()
      return box.width <= 2 || box.height <= 2 ? [] : [{ one, box }]
    })
    const isSmall = ({ box }: (typeof all)[number]) => box.width < LEAST - 0.5 || box.height < LEAST - 0.5
    const crowded: string[] = []
    const inText: string[] = []
    for (const target of all.filter(isSmall)) {
      const x = target.box.left + target.box.width / 2
      const y = target.box.top + target.box.height / 2
      const meets = all.find((other) => {
        if (other.one === target.one || other.one.contains(target.one) || target.one.contains(other.one)) return false
        const { left, right, top, bottom } = other.box
        if (isSmall(other)) return Math.hypot(x - (left + right) / 2, y - (top + bottom) / 2) < LEAST
        const dx = Math.max(left - x, 0, x - right)
        const dy = Math.max(top - y, 0, y - bottom)
        return Math.hypot(dx, dy) < LEAST / 2
      })
      if (meets === undefined) continue
      const words = (one: HTMLElement) =>
        `<${one.tagName.toLowerCase()} ${one.getAttribute('class') ?? ''}> ${(one.textContent ?? '').trim().slice(0, 30)}`
      const said = `${Math.round(target.box.width)} × ${Math.round(target.box.height)} ${words(target.one)} beside ${words(meets.one)}`
      const sentence = target.one.closest('p, li, dd, td, h1, h2, h3, span')
      const around = (sentence?.textContent ?? '').trim().length - (target.one.textContent ?? '').trim().length
      if (target.one instanceof HTMLAnchorElement && getComputedStyle(target.one).display === 'inline' && around > 0)
        inText.push(said)
      else crowded.push(said)
    }
    return { crowded, inText }
  })

/** Goes on with Tab through the whole page; every stop that cannot be seen, or has nothing that shows the focus. */
export async function unseenStops(page: Page, most = 400, key = 'Tab'): Promise<{ faults: string[]; count: number }> {
  await page.evaluate(async (isBack) => {
    // what a screen does once it is shown, such as to take the focus, is done behind its first frame
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
    for (const one of document.querySelectorAll('[data-walked]')) one.removeAttribute('data-walked')
    // where Tab goes on from is the place that had the focus last, also when nothing has it
    const scope = document.querySelector('dialog[open]') ?? document.body
    const edge = document.createElement('i')
    edge.tabIndex = -1
    if (isBack) scope.append(edge)
    else scope.prepend(edge)
    edge.focus()
    edge.remove()
  }, key !== 'Tab')
  const faults: string[] = []
  let count = 0
  for (; count < most; count += 1) {
    await page.keyboard.press(key)
    const stop = await page.evaluate(async () => {
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      const one = document.activeElement
      if (!(one instanceof HTMLElement || one instanceof SVGElement) || one === document.body) return { end: true }
      if (one.hasAttribute('data-walked')) return { end: true }
      one.setAttribute('data-walked', '')
      const words = `<${one.tagName.toLowerCase()} ${one.getAttribute('class') ?? ''}> ${(one.getAttribute('aria-label') ?? one.getAttribute('name') ?? one.textContent ?? '').trim().slice(0, 40)}`
      const isMark = one instanceof HTMLInputElement && ['radio', 'checkbox', 'file'].includes(one.type)
      const label = isMark ? one.closest('label') : null
      const drawn = label ?? one
      const box = drawn.getBoundingClientRect()
      const faults: string[] = []
      if (box.width < 1 || box.height < 1) faults.push('no place')
      // 2.4.11: any part of it that can be seen
      const points: [number, number][] = []
      for (const fx of [0.02, 0.25, 0.5, 0.75, 0.98])
        for (const fy of [0.04, 0.25, 0.5, 0.75, 0.96])
          points.push([box.left + fx * box.width, box.top + fy * box.height])
      const seen = points.filter(([x, y]) => {
        const top = document.elementFromPoint(x, y)
        return (
          top !== null &&
          (drawn.contains(top) ||
            (top.contains(drawn) &&
              !['HTML', 'BODY'].includes(top.tagName) &&
              top.closest('nav, .notices, .bar') === null))
        )
      }).length
      if (seen === 0)
        faults.push(
          `hidden at ${Math.round(box.left)}, ${Math.round(box.top)}, ${Math.round(box.width)} × ${Math.round(box.height)} by ${document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2)?.outerHTML.slice(0, 60)}`,
        )
      // 2.4.7: an outline on it, on its label, or on the words beside the mark
      const rings = [one, label, one.nextElementSibling, one.parentElement].filter((part) => part !== null)
      const isRinged = rings.some((part) => {
        const own = (part as Element).getBoundingClientRect()
        if (own.width <= 2 || own.height <= 2) return false
        const style = getComputedStyle(part as Element)
        return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2
      })
      if (!isRinged) faults.push('no ring')
      return { end: false, words, faults }
    })
    if (stop.end) break
    for (const fault of stop.faults ?? []) faults.push(`${stop.words}: ${fault}`)
  }
  return { faults, count }
}

/**
 * Shapes that need no contrast, since the picture is understood without them: lines of the grid; grounds that have a
 * hatching over them and a word in the legend; the spread of a rung, whose two figures stand beside it.
 */
const SAID_OTHERWISE = '.rule, .w-grid, .small, .excluded, .spread'

/** Strokes, fills and edges that tell something, with less than 3 : 1 to what lies beside them (1.4.11). */
export const weakShapes = (page: Page): Promise<string[]> =>
  withColours(page, (colours) =>
    page.evaluate(
      ({ colours: { rgba, over, contrast, groundOf, opacityOf }, leastRatio, known }) => {
        const bad = new Set<string>()
        const scope = document.querySelector('dialog[open]') ?? document.body
        const isSeen = (one: Element) =>
          one.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
          one.closest('.unseen, .skip') === null
        for (const one of scope.querySelectorAll<SVGElement>(
          'svg :is(path, line, rect, circle, ellipse, polyline, polygon, use)',
        )) {
          if (!isSeen(one) || one.closest('defs, clipPath, mask, marker') !== null || one.matches(known)) continue
          const style = getComputedStyle(one)
          const below = one.previousElementSibling
          const isOnShape = below?.classList.contains('filled') === true
          const paper = groundOf(one.ownerSVGElement ?? one)
          const ground = isOnShape ? over(rgba(getComputedStyle(below).fill), paper) : paper
          const of = (colour: string, part: string) =>
            colour === 'none' || colour.startsWith('url(') || rgba(colour)[3] === 0
              ? undefined
              : contrast(over(rgba(colour), ground, opacityOf(one) * Number(part)), ground)
          const ratios = [
            of(style.fill, style.fillOpacity),
            Number.parseFloat(style.strokeWidth) > 0 ? of(style.stroke, style.strokeOpacity) : undefined,
          ].filter((ratio) => ratio !== undefined)
          if (ratios.length > 0 && Math.max(...ratios) < leastRatio) {
            const svg = one.ownerSVGElement
            bad.add(
              `${Math.max(...ratios).toFixed(2)} : 1 <${one.tagName} class="${one.getAttribute('class') ?? ''}"> in ${svg?.getAttribute('class') ?? ''} of ${svg?.parentElement?.getAttribute('class') ?? svg?.parentElement?.tagName}`,
            )
          }
        }
        for (const one of scope.querySelectorAll<HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement>(
          'input, textarea, select',
        )) {
          // what is slid has its colours on parts that cannot be asked for; both are those of lines and buttons
          if (!isSeen(one) || one.getBoundingClientRect().width <= 2 || one.type === 'range') continue
          const style = getComputedStyle(one, one.classList.contains('switch') ? '::before' : undefined)
          const outside = groundOf(one.parentElement ?? one)
          const edge =
            Number.parseFloat(style.borderTopWidth) > 0 && style.borderTopStyle !== 'none'
              ? contrast(over(rgba(style.borderTopColor), outside, opacityOf(one)), outside)
              : 1
          const fill = contrast(groundOf(one), outside)
          if (Math.max(edge, fill) < leastRatio && !['radio', 'file'].includes(one.type))
            bad.add(
              `edge ${edge.toFixed(2)} : 1, fill ${fill.toFixed(2)} <${one.tagName.toLowerCase()} ${one.getAttribute('type') ?? ''} class="${one.className}">`,
            )
        }
        return [...bad]
      },
      { colours, leastRatio: 3, known: SAID_OTHERWISE },
    ),
  )
