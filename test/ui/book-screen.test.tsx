// @vitest-environment happy-dom
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Block, BookPage } from '../../src/guide/book/types.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { layoutOf } from '../../src/ui/parts/book/page-layout.ts'
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

/** What the style sheets ask for room. */
const screenIs = (width: 'narrow' | 'wide') =>
  vi.stubGlobal('matchMedia', () => ({ matches: width === 'wide', addEventListener: () => undefined }))

describe('the field book', () => {
  beforeEach(() => {
    screenIs('narrow')
  })
  afterEach(() => {
    vi.unstubAllGlobals()
  })

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
    const folds = [...place.querySelectorAll('details.fold')]
    const related = folds
      .filter(({ textContent }) => textContent?.startsWith('Related'))
      .flatMap((fold) => [...fold.querySelectorAll('a')])
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
        find={[]}
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
    const place = show(
      <PageView find={[]} shelf={SHELF} page={pageOf([{ is: 'table', head: ['Name', 'Value'], rows }])} />,
    )
    await settle()
    expect(place.querySelectorAll('tr.later').length).toBeGreaterThan(10)
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

  const PROSE = 'A sentence of some length about what happens to a signal on a wire. '
  const longSections = ['One', 'Two', 'Three'].flatMap((text): Block[] => [
    { is: 'heading', text },
    { is: 'text', text: `Of ${text.toLowerCase()}. ${PROSE.repeat(8)}` },
  ])
  const FIRST: Block = { is: 'text', text: 'First.' }
  const foldsOf = (place: Element) => [...place.querySelectorAll<HTMLDetailsElement>('article details.fold')]
  const namesOf = (folds: readonly HTMLDetailsElement[]) =>
    folds.map((fold) => fold.querySelector('summary')?.textContent)

  it('folds by name what a screen does not hold, and opens it on paper', async () => {
    const place = show(<PageView find={[]} shelf={SHELF} page={pageOf([FIRST, ...longSections])} />)
    await settle()
    // as on the page: folds stand in its main part
    const main = document.createElement('main')
    place.replaceWith(main)
    main.append(place)
    watchPrinting()
    expect(namesOf(foldsOf(place)).slice(0, 2)).toEqual(['Two', 'Three'])
    const areOpen = () => foldsOf(place).map(({ open }) => open)
    expect(areOpen()).not.toContain(true)
    dispatchEvent(new Event('beforeprint'))
    expect(areOpen()).not.toContain(false)
    dispatchEvent(new Event('afterprint'))
    expect(areOpen()).not.toContain(true)
  })

  it('folds nothing it says where there is room for all of it', async () => {
    screenIs('wide')
    const place = show(<PageView find={[]} shelf={SHELF} page={pageOf([FIRST, ...longSections])} />)
    await settle()
    expect(namesOf(foldsOf(place).filter(({ open }) => open))).toEqual(['Two', 'Three'])
    expect(namesOf(foldsOf(place).filter(({ open }) => !open))).toEqual(['Source'])
  })

  it('calls a fold by how it begins, or by its labels, each once', () => {
    const text = (words: string): Block => ({ is: 'text', text: words })
    const long = (words: string): Block => text(`${words} ${PROSE.repeat(20)}`)
    const foldNames = (blocks: readonly Block[]) =>
      layoutOf(pageOf(blocks)).flatMap((part) => (part.is === 'fold' ? [part.name] : []))
    expect(foldNames([FIRST, long('Short leads count.'), long('And more.')])).toEqual(['Short leads count'])
    expect(foldNames([FIRST, long('One that goes on for so long that no name would hold all of it.')])).toEqual([
      'One that goes on for so long that no…',
    ])
    expect(foldNames([FIRST, long('How to check: look.'), long('Then go on.')])).toEqual(['How to check', 'Then go on'])
    const row = (label: string) => ({ label, text: PROSE.repeat(3) })
    expect(foldNames([FIRST, long('All.'), { is: 'rows', rows: ['Box', 'Line', 'Line', 'How'].map(row) }])).toContain(
      'Line · How',
    )
  })

  it('opens the fold that holds a word somebody looked for, and no other', async () => {
    const page = pageOf([
      FIRST,
      ...longSections,
      { is: 'heading', text: 'Four' },
      { is: 'text', text: `A crowbar. ${PROSE.repeat(8)}` },
    ])
    const place = show(<PageView find={['crowbar', 'first']} shelf={SHELF} page={page} />)
    await settle()
    expect(namesOf(foldsOf(place).filter(({ open }) => open))).toEqual(['Four'])
  })

  it('leaves what a screen holds open', async () => {
    const place = show(<PageView find={[]} shelf={SHELF} page={pageOf(SECTIONS.slice(0, 4))} />)
    await settle()
    expect(namesOf(foldsOf(place)).filter((name) => name === 'One' || name === 'Two')).toEqual([])
    expect(place.textContent).toContain('Of two.')
  })
})
