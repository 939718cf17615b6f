/** The index of the search, worked out when the app is built. */
import MiniSearch from 'minisearch'
import { readBook } from '../guide/book/read-book.ts'
import { entriesOf, type Shown } from './search-entries.ts'
import { SEARCH_OPTIONS, type Searched } from './search-terms.ts'

export type BuiltIndex = {
  readonly shown: readonly Shown[]
  readonly index: ReturnType<MiniSearch['toJSON']>
}

const entries = entriesOf(readBook())

function indexed(): BuiltIndex['index'] {
  const search = new MiniSearch<Searched>(SEARCH_OPTIONS)
  search.addAll(entries.map(({ title, words, text }, at) => ({ at, title, words, text })))
  return search.toJSON()
}

export const built: BuiltIndex = {
  shown: entries.map(({ words: _words, text: _text, ...shown }) => shown),
  index: indexed(),
}
