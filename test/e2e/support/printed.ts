/** A sheet printed from a page, and what must be true of every printed sheet. */
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type PdfPage, readPdf, squeeze } from './pdf.ts'

export const FORMATS = ['A4', 'Letter'] as const
export type Format = (typeof FORMATS)[number]
const LEAST_PT = 8
const MARGIN_PT = (12 / 25.4) * 72

/** Prints once the sheet is there: it is, as soon as the browser lays it out. */
export async function printed(page: Page, format: Format): Promise<readonly PdfPage[]> {
  await sheetOf(page, '.paper', () => undefined)
  return readPdf(await page.pdf({ format }))
}

/** Lays the sheet out as a browser does before it prints, and looks at what is marked. */
export async function sheetOf<T>(page: Page, selector: string, look: (found: Element[]) => T): Promise<T> {
  await page.waitForFunction(() => {
    dispatchEvent(new Event('beforeprint'))
    return document.querySelector('.paper') !== null
  })
  const seen = await page.locator(selector).evaluateAll(look)
  await page.evaluate(() => dispatchEvent(new Event('afterprint')))
  return seen
}

export const together = (pages: readonly PdfPage[]): string => pages.map(({ squeezed }) => squeezed).join('')

/** Rows of the sheet that stand on no page in one piece. */
export async function cutRows(page: Page, pages: readonly PdfPage[]): Promise<readonly string[]> {
  const rows = await sheetOf(page, '.paper :is(.row, li, tr, .sheet-foot p, .finding)', (found) =>
    found.filter((row) => row.closest('details') === null).map((row) => row.textContent ?? ''),
  )
  expect(rows.length).toBeGreaterThan(3)
  return rows.filter((row) => !pages.some(({ squeezed }) => squeezed.includes(squeeze(row))))
}

/** Words in letters too small for paper, of pages that have at least so many words. */
export function small(pages: readonly PdfPage[], leastWords = 20): readonly string[] {
  const words = pages.flatMap(({ words }) => words)
  expect(words.length).toBeGreaterThan(leastWords)
  return words.filter(({ sizePt }) => sizePt < LEAST_PT - 0.01).map(({ text, sizePt }) => `${text} at ${sizePt} pt`)
}

/** Words over the side or the head of a sheet. The foot carries the number of the page. */
export function overEdge(pages: readonly PdfPage[]): readonly string[] {
  return pages.flatMap(({ words, widthPt, heightPt }) =>
    words
      .filter(
        ({ xPt, yPt, sizePt }) =>
          xPt < MARGIN_PT - 1 || xPt > widthPt - MARGIN_PT || yPt + sizePt > heightPt - MARGIN_PT + 4,
      )
      .map(({ text }) => text),
  )
}

/** Words that end beyond the right margin: a printer would cut them. */
export function cutAtRight(pages: readonly PdfPage[]): readonly string[] {
  return pages.flatMap(({ words, widthPt }) =>
    words.filter((word) => word.xPt + word.widthPt > widthPt - MARGIN_PT + 1).map(({ text }) => text),
  )
}

/** Words in the head of each page, over what is printed on it. */
export const headsOf = (pages: readonly PdfPage[]): readonly string[] =>
  pages.map(({ words, heightPt }) =>
    words
      .filter(({ yPt }) => yPt > heightPt - MARGIN_PT)
      .map(({ text }) => text)
      .join(' '),
  )

/** Letters that are not black and grounds that are not white, whatever the theme of the screen. */
export function notBlackOnWhite(page: Page): Promise<readonly string[]> {
  return sheetOf(page, '.paper, .paper *', (found) => {
    const light = (colour: string) => {
      const [red = 0, green = 0, blue = 0, alpha = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number)
      return alpha === 0 ? 255 : (red + green + blue) / 3
    }
    return found.flatMap((one) => {
      const { color, backgroundColor, fill } = getComputedStyle(one)
      const isText = one instanceof SVGTextElement || one.childNodes.length > 0
      const bad = [
        isText && light(color) > 90 ? `letters ${color}` : '',
        light(backgroundColor) < 200 ? `ground ${backgroundColor}` : '',
        one instanceof SVGTextElement && light(fill) > 90 ? `fill ${fill}` : '',
      ].filter((each) => each !== '')
      return bad.length === 0 ? [] : [`${one.tagName} ${one.textContent?.slice(0, 20)}: ${bad.join()}`]
    })
  })
}
