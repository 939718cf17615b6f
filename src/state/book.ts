/** The pages of the field book, shelf by shelf as they are fetched, and what leads to what. */
import { type End, linkedWith } from '../guide/book/contents.ts'
import { SHELVES, type ShelfRoom, shelfOfId } from '../guide/book/shelves.ts'
import type { BookPage, Shelf } from '../guide/book/types.ts'
import contents from './book-contents.ts?built'
import { hashOf } from './router.ts'

const pageIds = Object.keys(contents.titles).flatMap((end) =>
  end.startsWith('page/') ? [end.slice('page/'.length)] : [],
)

/** How each shelf is fetched, with the figures of its pages as they were worked out when the app was built. */
const ROOMS: Readonly<Record<Shelf, () => Promise<{ readonly default: readonly BookPage[] }>>> = {
  lines: () => import('../guide/book/lines/lines.ts?built'),
  sounds: () => import('../guide/book/sounds/sounds.ts?built'),
  tests: () => import('../guide/book/tests/tests.ts?built'),
  notes: () => import('../guide/book/notes/notes.ts?built'),
  drawings: () => import('../guide/book/drawings/drawings.ts?built'),
  tables: () => import('../guide/book/tables/tables.ts?built'),
  cases: () => import('../guide/book/cases/cases.ts?built'),
}

/** The pages of a shelf. */
export const pagesOf = async (shelf: ShelfRoom): Promise<readonly BookPage[]> => (await ROOMS[shelf.id]()).default

/** The shelves, with how many pages stand on each. */
export const filledShelves: readonly { readonly shelf: ShelfRoom; readonly count: number }[] = SHELVES.map((shelf) => ({
  shelf,
  count: pageIds.filter((id) => shelfOfId(id) === shelf).length,
}))

export type Linked = { readonly hash: string; readonly kind: string; readonly title: string; readonly inShort: string }

const PLACES = { page: 'notes', check: 'check', item: 'ask' } as const
const KINDS = { page: 'Book', check: 'Check', item: 'Ask' } as const

/** What is linked with a page, a check or an item of the guide, whichever of the two names the other. */
export function linkedTo(end: End): readonly Linked[] {
  return linkedWith(contents, end).flatMap((other) => {
    const words = contents.titles[other]
    const [kind = 'page', id] = other.split('/') as [keyof typeof PLACES, string]
    if (words === undefined) return []
    return [{ hash: hashOf(PLACES[kind], id), kind: KINDS[kind], title: words[0], inShort: words[1] }]
  })
}
