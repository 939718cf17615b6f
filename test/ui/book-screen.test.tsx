// @vitest-environment happy-dom
import { beforeAll, describe, expect, it } from 'vitest'
import type { Block, BookPage } from '../../src/guide/book/types.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { Book } from '../../src/ui/screens/book/book.tsx'
import { PageView } from '../../src/ui/screens/book/page.tsx'
import { watchPrinting } from '../../src/ui/shell/paper.ts'
import { allBy, by, settle, show, tap, until } from './support.ts'

const SHELF = { id: 'notes', title: 'Notes', inShort: '', prefix: '' } as const

const pageOf = (blocks: readonly Block[]): BookPage => ({
  id: 'made-up',
  shelf: 'notes',
  title: 'Made up',
  inShort: 'A page for this test',
  blocks,
  sources: [{ id: 'practice', standing: 'practice' }],
})

describe('the field book', () => {
  // its parts at hand, so that nothing is waited for longer than it takes
  beforeAll(async () => {
    await import('../../src/guide/book/notes/notes.ts')
  })

  it('lists the shelves that something stands on, with how many pages', async () => {
    show(<Book id={undefined} />)
    await settle()
    expect(by('heading', 'Book').tagName).toBe('H1')
    const [notes] = allBy('link', /^Notes/)
    expect(notes?.getAttribute('href')).toBe('#/notes/notes')
    expect(notes?.textContent).toContain(`${FIELD_NOTES.length} pages`)
  })

  it('lists every page of a shelf', async () => {
    show(<Book id="notes" />)
    await until('ul.rows a')
    const titles = [...document.querySelectorAll('ul.rows strong')].map((title) => title.textContent)
    expect(titles).toEqual(FIELD_NOTES.map(({ title }) => title))
  })

  it('shows a page with its source, how well it is known, and what sends the reader to it', async () => {
    const place = show(<Book id="dummy-load" />)
    await until('article')
    expect(by('heading', FIELD_NOTES.find(({ id }) => id === 'dummy-load')?.title ?? '').tagName).toBe('H1')
    expect(place.querySelector('.standing')).not.toBeNull()
    const related = [...place.querySelectorAll('section[aria-label=Related] a')]
    expect(related.some((link) => link.getAttribute('href')?.startsWith('#/ask/'))).toBe(true)
  })

  it('names a page that does not exist, on whichever shelf its id would stand', async () => {
    for (const id of ['no-such-page', 'case-no-such-case', 'table-no-such-table']) {
      show(<Book id={id} />)
      await until('h1')
      expect(by('heading', 'No such page of the book')).toBeDefined()
    }
  })

  it('draws every kind of block', async () => {
    const place = show(
      <PageView
        shelf={SHELF}
        page={pageOf([
          { is: 'heading', text: 'A heading' },
          { is: 'text', text: 'A text.' },
          { is: 'list', items: ['one', 'two'], ordered: true },
          { is: 'list', items: ['three'] },
          {
            is: 'rows',
            rows: [{ label: 'Level', text: 'low', source: { id: 'derived', standing: 'derived', clause: 'here' } }],
          },
          { is: 'table', caption: 'A caption', head: ['Name', 'Value'], rows: [['a', 'b']] },
          { is: 'never', items: ['Never this.'] },
          { is: 'open-check', check: 'window', prefill: { lineKind: 'can' }, why: 'What this bus stands' },
        ])}
      />,
    )
    await settle()
    expect(by('heading', 'A heading').tagName).toBe('H2')
    expect([...place.querySelectorAll('ol.numbered > li')].map((item) => item.textContent)).toEqual(['one', 'two'])
    expect(place.querySelector('dl dt')?.textContent).toBe('Level')
    expect(place.querySelector('dl dd')?.textContent).toMatch(/^low.+, here/)
    expect(place.querySelector('caption')?.textContent).toBe('A caption')
    expect(by('region', 'Never').textContent).toContain('Never this.')
    expect(by('link', 'What this bus stands').getAttribute('href')).toBe('#/check/window?lineKind=can')
  })

  it('shows all rows of a long table at a tap, and keeps the focus in it', async () => {
    const rows = Array.from({ length: 40 }, (_, at) => [`row ${at}`, 'b'])
    const place = show(<PageView shelf={SHELF} page={pageOf([{ is: 'table', head: ['Name', 'Value'], rows }])} />)
    await settle()
    expect(place.querySelectorAll('tr.later')).toHaveLength(28)
    const all = by('button', 'All 40 rows')
    all.focus()
    await tap(all)
    expect(place.querySelectorAll('tr.later')).toHaveLength(0)
    expect(document.activeElement?.getAttribute('aria-label')).toBe('Table: Made up')
  })

  const SECTIONS = ['One', 'Two', 'Three'].flatMap((text): Block[] => [
    { is: 'heading', text },
    { is: 'text', text: `Of ${text.toLowerCase()}.` },
  ])

  it('folds all but the first section of a long page, and opens them on paper', async () => {
    const place = show(<PageView shelf={SHELF} page={pageOf([{ is: 'text', text: 'First.' }, ...SECTIONS])} />)
    await settle()
    // as on the page: folds stand in its main part
    const main = document.createElement('main')
    place.replaceWith(main)
    main.append(place)
    watchPrinting()
    const folds = () => [...place.querySelectorAll<HTMLDetailsElement>('article details.fold')]
    const named = () => folds().filter((fold) => fold.querySelector('h2') !== null)
    expect(named().map((fold) => fold.querySelector('h2')?.textContent)).toEqual(['Two', 'Three'])
    expect(named().map(({ open }) => open)).toEqual([false, false])
    dispatchEvent(new Event('beforeprint'))
    expect(named().map(({ open }) => open)).toEqual([true, true])
    dispatchEvent(new Event('afterprint'))
    expect(named().map(({ open }) => open)).toEqual([false, false])
  })

  it('leaves a page of two sections open', async () => {
    const place = show(<PageView shelf={SHELF} page={pageOf(SECTIONS.slice(0, 4))} />)
    await settle()
    expect(place.querySelectorAll('article details.fold h2')).toHaveLength(0)
    expect(place.textContent).toContain('Of two.')
  })
})
