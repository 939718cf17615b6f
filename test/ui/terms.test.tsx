// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Block, BookPage } from '../../src/guide/book/types.ts'
import { layoutOf, tappedTexts } from '../../src/ui/parts/book/page-layout.ts'
import { Sections } from '../../src/ui/parts/book/sections.tsx'
import { TermList, TermsIn, Text } from '../../src/ui/parts/book/terms.tsx'
import { allBy, by, show, tap, until } from './support.ts'

const TEXTS = ['Measure the bond with a dummy load.', 'A bond again.'] as const

describe('words of the trade on a screen', () => {
  // at hand, so that nothing is waited for longer than it takes
  beforeAll(async () => {
    await import('../../src/guide/book/glossary-match.ts')
  })

  const screen = () =>
    show(
      <TermsIn texts={TEXTS}>
        {TEXTS.map((text) => (
          <p key={text}>
            <Text of={text} />
          </p>
        ))}
        <TermList />
      </TermsIn>,
    )

  it('stand as they are before the glossary comes, and are marked where they are first used', async () => {
    const place = screen()
    const before = [...place.querySelectorAll('p')].map((line) => line.textContent)
    expect(before).toEqual(TEXTS)
    await until('a.term')
    expect(allBy('a', /^(bond|dummy load)$/).map((term) => term.textContent)).toEqual(['bond', 'dummy load'])
    expect([...place.querySelectorAll('p')].map((line) => line.textContent)).toEqual(before)
  })

  it('tell their line by a tap, spoken too, one at a time; a second tap, Escape and a tap beside put it away', async () => {
    screen()
    await until('a.term')
    await tap(by('a', 'bond'))
    expect(by('a', 'bond').getAttribute('aria-expanded')).toBe('true')
    expect(document.querySelector('[role=status] .term-line')?.textContent).toContain('measured in milliohms')
    await tap(by('a', 'dummy load'))
    expect(document.querySelectorAll('.term-line')).toHaveLength(1)
    expect(document.querySelector('.term-line a')?.getAttribute('href')).toBe('#/notes/dummy-load')
    await tap(by('a', 'dummy load'))
    expect(document.querySelector('.term-line')).toBeNull()
    await tap(by('a', 'bond'))
    await tap(by('p', /again/))
    expect(document.querySelector('.term-line')).toBeNull()
  })

  it('mark the page as long as a line stands, though its text goes meanwhile: notices give way to it', async () => {
    const isMarked = () => 'term' in document.documentElement.dataset
    const having = (texts: readonly string[]) => (
      <TermsIn texts={TEXTS}>
        {texts.map((text) => (
          <p key={text}>
            <Text of={text} />
          </p>
        ))}
      </TermsIn>
    )
    const place = show(having(TEXTS))
    await until('a.term')
    expect(isMarked()).toBe(false)
    await tap(by('a', 'bond'))
    expect(isMarked()).toBe(true)
    act(() => render(having(TEXTS.slice(1)), place))
    expect(document.querySelector('.term-line')).toBeNull()
    expect(isMarked()).toBe(false)
  })

  it('are listed with their lines, for those who read on', async () => {
    screen()
    await until('a.term')
    expect([...document.querySelectorAll('dl strong')].map((word) => word.textContent)).toEqual(['bond', 'dummy load'])
  })
})

describe('words of the trade on a page of the book', () => {
  const heading = (text: string): Block => ({ is: 'heading', text })
  const BLOCKS: readonly Block[] = [
    { is: 'text', text: 'Nothing of the trade here.' },
    heading('The bond first'),
    { is: 'rows', rows: [{ label: 'Pigtail', text: 'A bond again.' }] },
    heading('The squelch'),
    {
      is: 'table',
      caption: 'With a dummy load',
      head: ['Part', 'What the crowbar does'],
      rows: [
        ['Ferrite', 'none'],
        ['Ferrite', 'none of the squelch'],
      ],
    },
    { is: 'drawing', drawing: 'planar-contact' },
    { is: 'open-check', check: 'loading', prefill: {}, why: 'The stub in the check' },
    heading('Last'),
  ]
  const page: BookPage = {
    ...{ id: 'test-x', shelf: 'tests', title: 'The bond', inShort: '', blocks: BLOCKS },
    sources: [{ id: 'practice', standing: 'practice' }],
  }

  it('are tapped in cells, captions, labels and headings that are no button, each once', async () => {
    show(
      <TermsIn texts={tappedTexts(layoutOf(page))} drawings={['planar-contact']}>
        <Sections parts={layoutOf(page)} title={page.title} />
      </TermsIn>,
    )
    await until('figure a.term')
    const tapped = [...document.querySelectorAll('a.term')].map((term) => [
      term.closest('h2, dt, caption, th, td, figcaption')?.localName,
      term.textContent?.toLowerCase(),
    ])
    expect(tapped).toEqual([
      ['h2', 'bond'],
      ['dt', 'pigtail'],
      ['caption', 'dummy load'],
      ['th', 'crowbar'],
      ['th', 'ferrite'],
      ['td', 'squelch'],
      ['figcaption', 'planar array'],
    ])
    expect(document.querySelectorAll('summary a, a a')).toHaveLength(0)
  })
})
