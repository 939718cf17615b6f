import { SHELVES, type ShelfRoom, shelfOfId } from '../../../guide/book/shelves.ts'
import { pagesOf } from '../../../state/book.ts'
import type { Pair } from '../../../state/router.ts'
import { lazy } from '../../lazy.tsx'
import { Nowhere } from '../../shell/nowhere.tsx'
import { Front } from './front.tsx'
import { PageView } from './page.tsx'
import { ShelfList } from './shelf-list.tsx'

const Glossary = lazy(async () => (await import('./glossary.tsx')).GlossaryScreen)

/** One page of a shelf, or its list; what stands on the shelf is fetched when it is first shown. */
const ROOMS = SHELVES.map((shelf) => ({
  shelf,
  View: lazy(async () => {
    const pages = await pagesOf(shelf)
    return ({ id, find }: { readonly id: string | undefined; readonly find: readonly string[] }) => {
      if (id === undefined) return <ShelfList shelf={shelf} pages={pages} />
      const page = pages.find((each) => each.id === id)
      return page ? <PageView key={id} page={page} shelf={shelf} find={find} /> : <NoSuchPage id={id} />
    }
  }),
}))

const viewOf = (shelf: ShelfRoom | undefined) => ROOMS.find((room) => room.shelf === shelf)?.View

/** The field book: its front, a shelf, or a page. */
export function Book({ id, query = [] }: { readonly id: string | undefined; readonly query?: readonly Pair[] }) {
  if (id === undefined) return <Front />
  if (id === 'glossary') return <Glossary sought={query.find(({ key }) => key === 'word')?.text} />
  const find =
    query
      .find(({ key }) => key === 'find')
      ?.text.toLowerCase()
      .split(' ') ?? []
  const named = SHELVES.find((shelf) => shelf.id === id)
  const View = viewOf(named ?? shelfOfId(id))
  if (View === undefined) return <NoSuchPage id={id} />
  return <View key={named?.id ?? 'page'} id={named === undefined ? id : undefined} find={find} />
}

const NoSuchPage = ({ id }: { readonly id: string }) => <Nowhere path={`#/notes/${id}`} what="page of the book" />
