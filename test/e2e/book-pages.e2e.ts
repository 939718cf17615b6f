/**
 * Every page of the book on a phone and on paper: with its folds closed it is one screen, to the last name at its foot, and
 * the printed page holds all of it, with each drawing in one piece.
 */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { blockTexts } from '../../src/guide/book/page-texts.ts'
import { readBook } from '../../src/guide/book/read-book.ts'
import type { BookPage } from '../../src/guide/book/types.ts'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { SCREENING } from '../../src/reference/screening.ts'
import { SOURCES } from '../../src/reference/sources.ts'
import { fittingCautions } from '../../src/ui/parts/cautions.tsx'
import { type PdfPage, readPdf, squeeze } from './support/pdf.ts'
import { cutAtRight, overEdge, small, together } from './support/printed.ts'
import { openSite, type Site } from './support/site.ts'

const PHONE = { width: 360, height: 800 }
/** What a page says at a glance; the rest is one tap away. */
const MOST_LETTERS_OPEN = 900
/** Least side of what is tapped. */
const TAP_PX = 48
/** A4 without its margins, at 96 px an inch. */
const PAPER_PX = ((297 - 2 * 12) / 25.4) * 96

const book = readBook()
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

/** How high the whole page is, what of it lies under the bar, how many letters are open, and which taps are small. */
const shownOpen = () =>
  page.evaluate((least) => {
    const article = document.querySelector('.book-page')
    const texts = [...(article?.querySelectorAll('p, li, dt, dd, th, td, h2, summary, figcaption') ?? [])]
    const shown = texts.filter(
      (one) => one.checkVisibility() && one.querySelector('p, li, dt, dd, th, td, h2') === null,
    )
    const taps = [...(article?.querySelectorAll('summary, button, a.button') ?? [])].filter((one) =>
      one.checkVisibility(),
    )
    return {
      wholePx: document.documentElement.scrollHeight,
      bottomPx: (article?.getBoundingClientRect().bottom ?? Number.NaN) + scrollY,
      barPx: document.querySelector('nav')?.getBoundingClientRect().top ?? Number.NaN,
      letters: shown.reduce((sum, one) => sum + (one.textContent?.trim().length ?? 0), 0),
      open: [...(article?.querySelectorAll('details[open]') ?? [])].filter((one) => one.checkVisibility()).length,
      small: taps
        .filter((one) => one.getBoundingClientRect().height < least)
        .map((one) => one.textContent?.trim() ?? ''),
      cautions: [...(article?.querySelectorAll('.caution-line summary') ?? [])].map((one) => one.textContent).join(),
    }
  }, TAP_PX)

it('every page says what it is about on one screen, the rest folded by name', { timeout: 300_000 }, async () => {
  const faults: string[] = []
  for (const each of book) {
    await open(each)
    const { wholePx, bottomPx, barPx, letters, open: opened, small: low, cautions } = await shownOpen()
    const { id } = each
    if (!(letters > 40)) faults.push(`${id}: says nothing, ${letters} letters`)
    if (letters > MOST_LETTERS_OPEN) faults.push(`${id}: ${letters} letters`)
    if (!(wholePx <= PHONE.height)) faults.push(`${id}: ${wholePx} px, scrolls`)
    if (!(bottomPx <= barPx + 0.5)) faults.push(`${id}: ends at ${bottomPx}, under the bar at ${barPx}`)
    if (opened !== 0) faults.push(`${id}: ${opened} folds open`)
    if (low.length > 0) faults.push(`${id}: low targets ${low.join(', ')}`)
    const unsaid = fittingCautions(each.cautions ?? []).filter((one) => !cautions.includes(SAFETY_TEXTS[one].title))
    if (unsaid.length > 0) faults.push(`${id}: out of sight ${unsaid.join(', ')}`)
  }
  expect(faults).toEqual([])
})

/** What a printed page must hold: every text of the page, its sources, and what it defers to. */
const partsOf = (each: BookPage): readonly string[] => [
  each.title,
  ...each.blocks.filter(({ is }) => is !== 'open-check').flatMap(blockTexts),
  ...each.blocks.flatMap((block) => (block.is === 'waveform' ? [block.waveform.title, block.waveform.said] : [])),
  ...fittingCautions(each.cautions ?? []).map((id) => SAFETY_TEXTS[id].text),
  ...each.sources.map(({ id }) => SOURCES[id].title),
  SCREENING.text,
]

/** Letters of a sheet that is nearly bare: the names of what leads on, and no source with them. */
const FEW_LETTERS = 150
const isBare = ({ squeezed }: PdfPage): boolean =>
  squeezed.length < FEW_LETTERS && !/^(?:page\d+of\d+)?Source/.test(squeezed)

it('every page prints whole: all its words, each drawing on one sheet, nothing cut or too small', {
  timeout: 600_000,
}, async () => {
  const faults: string[] = []
  for (const each of book) {
    await open(each)
    const sheets = await readPdf(await page.pdf({ format: 'A4' }))
    const text = together(sheets)
    const last = sheets.at(-1)
    if (sheets.length > 1 && last !== undefined && isBare(last))
      faults.push(`${each.id}: ends on a bare sheet, “${last.squeezed}”`)
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
