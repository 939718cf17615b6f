/**
 * Every page of the book on a phone and on paper: what stands open is no longer than two screens, and the printed page
 * holds all of it, with each drawing in one piece.
 */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { tappedTexts } from '../../src/guide/book/page-texts.ts'
import { readBook } from '../../src/guide/book/shelves.ts'
import type { BookPage } from '../../src/guide/book/types.ts'
import { SCREENING } from '../../src/reference/screening.ts'
import { SOURCES } from '../../src/reference/sources.ts'
import { readPdf, squeeze } from './support/pdf.ts'
import { cutAtRight, overEdge, small, together } from './support/printed.ts'
import { openSite, type Site } from './support/site.ts'

const PHONE = { width: 360, height: 800 }
/** A page is one screen where it can be; what stands open is never more than two. */
const MOST_SCREENS = 2
const MOST_LETTERS_OPEN = 1300
/** A4 without its margins, at 96 px an inch. */
const PAPER_PX = ((297 - 2 * 12) / 25.4) * 96

const book = await readBook()
let site: Site
let page: Page

beforeAll(async () => {
  site = await openSite()
  const visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
  page = visit.page
  await page.goto(visit.at('#/notes'))
}, 120_000)
afterAll(() => site.close())

async function open({ id, title }: BookPage): Promise<void> {
  await page.evaluate((to) => {
    location.hash = `#/notes/${to}`
  }, id)
  await page.waitForFunction(
    (name) =>
      document.querySelector('h1')?.textContent === name &&
      document.querySelector('.book-page') !== null &&
      document.querySelector('main .loading') === null,
    title,
  )
}

/** How far down what is not folded goes, and how many letters it has. */
const shownOpen = () =>
  page.evaluate(() => {
    const article = document.querySelector('.book-page')
    const texts = [...(article?.querySelectorAll('p, li, dt, dd, th, td, h2, summary, figcaption') ?? [])]
    const shown = texts.filter(
      (one) => one.checkVisibility() && one.querySelector('p, li, dt, dd, th, td, h2') === null,
    )
    return {
      bottomPx: (article?.getBoundingClientRect().bottom ?? Number.NaN) + scrollY,
      letters: shown.reduce((sum, one) => sum + (one.textContent?.trim().length ?? 0), 0),
    }
  })

it('every page says what it is about on two screens, the rest folded', { timeout: 300_000 }, async () => {
  const long: string[] = []
  let one = 0
  for (const each of book) {
    await open(each)
    const { bottomPx, letters } = await shownOpen()
    expect(letters, each.id).toBeGreaterThan(40)
    if (bottomPx > MOST_SCREENS * PHONE.height) long.push(`${each.id}: ${bottomPx.toFixed(0)} px`)
    if (letters > MOST_LETTERS_OPEN) long.push(`${each.id}: ${letters} letters`)
    if (bottomPx <= PHONE.height) one++
  }
  console.log(`${one} of ${book.length} pages stand on one screen`)
  expect(long).toEqual([])
})

/** What a printed page must hold: every text of the page, its sources, and what it defers to. */
const partsOf = (each: BookPage): readonly string[] => [
  each.title,
  ...tappedTexts(each),
  ...each.blocks.flatMap((block) => (block.is === 'heading' ? [block.text] : [])),
  ...each.sources.map(({ id }) => SOURCES[id].title),
  SCREENING.text,
]

it('every page prints whole: all its words, each drawing on one sheet, nothing cut or too small', {
  timeout: 600_000,
}, async () => {
  const faults: string[] = []
  for (const each of book) {
    await open(each)
    const sheets = await readPdf(await page.pdf({ format: 'A4' }))
    const text = together(sheets)
    const lost = partsOf(each).filter((part) => !text.includes(squeeze(part)))
    if (lost.length > 0) faults.push(`${each.id} lacks “${lost.join('”, “')}”`)
    for (const [what, words] of Object.entries({
      cut: cutAtRight(sheets),
      over: overEdge(sheets),
      small: small(sheets, 5),
    }))
      if (words.length > 0) faults.push(`${each.id} ${what}: ${words.slice(0, 3).join(', ')}`)
    await page.emulateMedia({ media: 'print' })
    const figures = await page.locator('figure').evaluateAll((all) =>
      all.map((figure) => ({
        heightPx: figure.getBoundingClientRect().height,
        breaks: getComputedStyle(figure).breakInside,
      })),
    )
    await page.emulateMedia({ media: null })
    for (const { heightPx, breaks } of figures)
      if (breaks !== 'avoid' || heightPx > PAPER_PX) faults.push(`${each.id}: a drawing of ${heightPx} px may be cut`)
  }
  expect(faults).toEqual([])
})
