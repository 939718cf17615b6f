import { describe, expect, it } from 'vitest'
import { GLOSSARY } from '../../../src/guide/book/glossary.ts'
import { markedTexts } from '../../../src/guide/book/glossary-match.ts'
import { readBook } from '../../../src/guide/book/read-book.ts'
import { SHORT_FORMS } from '../../../src/reference/short-forms.ts'

const pages = readBook()
const wordsIn = (texts: readonly string[]) =>
  [...markedTexts(texts).values()].flat().flatMap(({ text, entry }) => (entry ? [`${text}: ${entry.word}`] : []))

describe('the glossary', () => {
  it('has about 200 words of the trade, and every short form from the one list of them', () => {
    expect(GLOSSARY.filter(({ isShortForm }) => !isShortForm).length).toBeGreaterThanOrEqual(200)
    const forms = GLOSSARY.filter(({ isShortForm }) => isShortForm).map(({ word }) => word)
    expect(forms.sort()).toEqual(Object.keys(SHORT_FORMS).sort())
  })

  it('has each word and each spelling once', () => {
    const ids = GLOSSARY.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    const spellings = GLOSSARY.flatMap(({ word, forms = [] }) => [word, ...forms]).map((word) => word.toLowerCase())
    expect(spellings.filter((word, at) => spellings.indexOf(word) !== at)).toEqual([])
  })

  it('says each in one line of 20 words at most, and points to pages that are there', () => {
    expect(GLOSSARY.filter(({ line }) => line.split(/\s+/).length > 20).map(({ word }) => word)).toEqual([])
    const lost = GLOSSARY.filter(({ page }) => page !== undefined && !pages.some(({ id }) => id === page))
    expect(lost.map(({ word }) => word)).toEqual([])
  })

  it('is met in texts where a word is first used, the longest first, of one thing or of many', () => {
    expect(wordsIn(['Two bond straps; a strap is a bond.', 'A bond again, and bonded.'])).toEqual([
      'bond strap: bond strap',
      'bond: bond',
    ])
    expect(wordsIn(['You can see the CAN bus'])).toEqual(['CAN: CAN'])
    expect(wordsIn(['non-bond'])).toEqual([])
  })

  it('gives the text back letter by letter', () => {
    const texts = pages.flatMap(({ blocks }) => blocks.flatMap((block) => (block.is === 'text' ? [block.text] : [])))
    for (const [text, pieces] of markedTexts(texts)) expect(pieces.map((piece) => piece.text).join('')).toBe(text)
    expect(markedTexts(texts).size).toBeGreaterThan(30)
  })
})
