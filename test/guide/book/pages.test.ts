/** Every page of the book: its links lead somewhere, it fits a screen, and it is read without another book beside it. */
import { describe, expect, it } from 'vitest'
import { readFields } from '../../../src/calc/line/fields.ts'
import { CHECKS, checkById } from '../../../src/calc/registry.ts'
import { contentsOf, linkedWith } from '../../../src/guide/book/contents.ts'
import { blockTexts, pageTexts } from '../../../src/guide/book/page-texts.ts'
import { readBook } from '../../../src/guide/book/read-book.ts'
import { SHELVES, shelfOfId } from '../../../src/guide/book/shelves.ts'
import { soundById } from '../../../src/guide/book/sounds/sound-list.ts'
import type { BookPage } from '../../../src/guide/book/types.ts'
import { drawingById } from '../../../src/guide/drawings/drawings.ts'
import { nodeById } from '../../../src/guide/engine.ts'
import { FILL_INS } from '../../../src/guide/fill-ins.ts'
import { GUIDE } from '../../../src/guide/guide.ts'
import { formsIn, isExplained } from '../../../src/guide/screen-texts.ts'
import { SHORT_FORMS } from '../../../src/reference/short-forms.ts'
import { SOURCES } from '../../../src/reference/sources.ts'
import { pagesOf } from '../../../src/state/book.ts'

const pages: readonly BookPage[] = readBook()
const byId = new Map(pages.map((page) => [page.id, page]))

/** About a screen of a phone, beside pictures and tables. */
const MOST_LETTERS = 1200
const MOST_WORDS = 20
/** The notes that were there before the book keep the measure of the guide they were written for. */
const MOST_WORDS_OF_A_NOTE = 25

const sentencesOf = (text: string): readonly string[] => text.split(/(?<=[.?!])\s+(?=[\p{Lu}0-9“"√])/u)
/** A figure and its unit are read as one word, as is a value with its condition in a list. */
const wordCount = (sentence: string): number =>
  sentence
    .replace(/(\d)\s(?=[^\s\d])/gu, '$1')
    .split(/\s+/u)
    .filter((word) => /[\p{L}\p{N}]/u.test(word)).length

describe('the pages of the book', () => {
  it('have ids of their own that tell their shelf, and none that an address means otherwise', () => {
    expect(byId.size).toBe(pages.length)
    const lost = pages.filter(({ id, shelf }) => shelfOfId(id)?.id !== shelf || !/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id))
    expect(lost.map(({ id }) => id)).toEqual([])
    expect(['glossary', ...SHELVES.map(({ id }) => id)].filter((name) => byId.has(name))).toEqual([])
  })

  it('stand on every shelf that is listed', () => {
    for (const { id } of SHELVES)
      expect(
        pages.some(({ shelf }) => shelf === id),
        id,
      ).toBe(true)
  })

  it('link to pages, checks and items that are there', () => {
    const lost = pages.flatMap(({ id, related = [] }) =>
      related
        .filter((link) =>
          'page' in link
            ? !byId.has(link.page)
            : 'check' in link
              ? checkById(link.check) === undefined
              : nodeById(GUIDE, link.item) === undefined,
        )
        .map((link) => `${id}: ${JSON.stringify(link)}`),
    )
    expect(lost).toEqual([])
  })

  it('are led back to from every end of a link', () => {
    const contents = contentsOf({ pages, guide: GUIDE, checks: CHECKS })
    for (const [one, other] of contents.links) {
      expect(linkedWith(contents, one)).toContain(other)
      expect(linkedWith(contents, other)).toContain(one)
    }
    expect(contents.links.length).toBeGreaterThan(100)
  })

  it('draw, play and fill in what is there, and cite sources that are', () => {
    const lost = pages.flatMap(({ id, blocks, sources }) => [
      ...blocks.flatMap((block) => {
        if (block.is === 'drawing') return drawingById(block.drawing) ? [] : [`${id}: drawing ${block.drawing}`]
        if (block.is === 'sound') return soundById(block.sound) ? [] : [`${id}: sound ${block.sound}`]
        if (block.is === 'fill-in') return block.table in FILL_INS ? [] : [`${id}: table ${block.table}`]
        if (block.is === 'rows')
          return block.rows.flatMap(({ source }) =>
            source === undefined || source.id in SOURCES ? [] : [`${id}: ${source.id}`],
          )
        return []
      }),
      ...sources.flatMap((source) => (source.id in SOURCES ? [] : [`${id}: source ${source.id}`])),
    ])
    expect(lost).toEqual([])
  })

  it('open checks with keys they have and texts they take', () => {
    const refused = pages.flatMap(({ id, blocks }) =>
      blocks.flatMap((block) => {
        if (block.is !== 'open-check') return []
        const check = checkById(block.check)
        if (check === undefined) return [`${id}: ${block.check}`]
        const strangers = Object.keys(block.prefill).filter((key) => !check.inputs.some((input) => input.key === key))
        const bad = readFields(check, block.prefill).filter(({ state }) => state === 'refused')
        return [...strangers, ...bad.map(({ input }) => input.key)].map((key) => `${id}: ${block.check} ${key}`)
      }),
    )
    expect(refused).toEqual([])
  })

  it('have tables with as many cells in a row as in the head', () => {
    const uneven = pages.flatMap(({ id, blocks }) =>
      blocks
        .filter((block) => block.is === 'table' && block.rows.some((row) => row.length !== block.head.length))
        .map(() => id),
    )
    expect(uneven).toEqual([])
  })

  it('fit a screen', () => {
    const long = pages
      .map(({ id, blocks }) => {
        const texts = blocks.filter(({ is }) => is === 'text' || is === 'list' || is === 'never' || is === 'heading')
        return { id, letters: texts.flatMap(blockTexts).join(' ').length }
      })
      .filter(({ letters }) => letters > MOST_LETTERS)
    expect(long).toEqual([])
  })

  it('speak in short sentences', () => {
    const heavy = pages.flatMap((page) =>
      page.blocks
        .filter(({ is }) => is !== 'table')
        .flatMap(blockTexts)
        .flatMap(sentencesOf)
        .filter((sentence) => wordCount(sentence) > (page.shelf === 'notes' ? MOST_WORDS_OF_A_NOTE : MOST_WORDS))
        .map((sentence) => `${page.id}: ${sentence}`),
    )
    expect(heavy).toEqual([])
  })

  it('say what their short forms stand for', () => {
    const unexplained = pages.flatMap((page) => {
      const texts = pageTexts(page)
      return formsIn(texts)
        .filter((form) => !NAME.test(form) && SHORT_FORMS[form] === undefined && !isExplained(form, texts))
        .map((form) => `${page.id}: ${form}, in “${texts.find((text) => formsIn([text]).includes(form))}”`)
    })
    expect([...new Set(unexplained)]).toEqual([])
  })
})

describe('the figures of the book', () => {
  it('are worked out anew, to the same digits, each time the pages are made', () => {
    expect(readBook()).toEqual(pages)
  })

  it('come to the phone as they were worked out', async () => {
    const sent = (await Promise.all(SHELVES.map(pagesOf))).flat()
    expect(sent).toEqual(JSON.parse(JSON.stringify(pages)))
    expect(sent.length).toBe(pages.length)
  })

  it('are all figures: none is missing, and none is no number', () => {
    const broken = pages.flatMap((page) =>
      pageTexts(page)
        .filter((text) => /\b(?:NaN|Infinity|undefined|null)\b|\[object/.test(text))
        .map((text) => `${page.id}: ${text}`),
    )
    expect(broken).toEqual([])
  })
})

/** Names of standards, tests, buses, signals and parts, and signs in formulas: they stand for themselves. */
const NAME =
  /^(?:MIL-[A-Z]+-\d+\w*|ARINC|RS-\d+|DO-160\w?|CS\d+|CE\d+|\d+BASE-\w+|WF\d\w?|L[125]|[CLZR]\d|LC|CL|II|III|OK|0 PF|X2|AS5643|ISO|IEEE|E6|E12|R47|[A-H])$/
