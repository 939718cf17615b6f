/** The pages of the field book, shelf by shelf as they are fetched, and what leads to what. */
import { type End, linkedWith } from '../guide/book/contents.ts'
import { readShelf, SHELVES, type ShelfRoom, shelfOfId } from '../guide/book/shelves.ts'
import type { BookPage, Shelf } from '../guide/book/types.ts'
import contents from './book-contents.ts?built'
import { hashOf } from './router.ts'

const pageIds = Object.keys(contents.titles).flatMap((end) =>
  end.startsWith('page/') ? [end.slice('page/'.length)] : [],
)

const kept = new Map<Shelf, readonly BookPage[]>()

/** The pages of a shelf, their figures worked out when they are first asked for. */
export async function pagesOf(shelf: ShelfRoom): Promise<readonly BookPage[]> {
  const known = kept.get(shelf.id)
  if (known !== undefined) return known
  const pages = await readShelf(shelf)
  kept.set(shelf.id, pages)
  return pages
}

/** The shelves that something stands on, with how many pages. */
export const filledShelves: readonly { readonly shelf: ShelfRoom; readonly count: number }[] = SHELVES.filter(
  ({ load }) => load !== undefined,
).map((shelf) => ({ shelf, count: pageIds.filter((id) => shelfOfId(id) === shelf).length }))

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
