/** The shelf of the notes: the field notes of the guide as pages of the book. */
import { FIELD_NOTES } from '../../notes.ts'
import type { FieldNote } from '../../types.ts'
import type { Block, BookLink, BookPage } from '../types.ts'
import { NOTE_WORDS } from './words.ts'

const MOST_LETTERS_IN_SHORT = 110

/** The first sentence, where it is short enough for a list. */
function inShortOf({ paragraphs }: FieldNote): string {
  const [sentence = ''] = (paragraphs[0] ?? '').split(/(?<=[.?!:]) (?=\p{Lu})/u)
  return sentence.length <= MOST_LETTERS_IN_SHORT ? sentence : ''
}

const linksOf = ({ check, note }: { readonly check?: BookCheck; readonly note?: string }): readonly BookLink[] => [
  ...(check === undefined ? [] : [{ check }]),
  ...(note === undefined ? [] : [{ page: note }]),
]

type BookCheck = Extract<BookLink, { readonly check: unknown }>['check']

function pageOf(note: FieldNote): BookPage {
  const { id, title, paragraphs, picture, fillIn, table, sources, related = [] } = note
  const blocks: readonly Block[] = [
    ...paragraphs.map((text): Block => ({ is: 'text', text })),
    ...(picture === undefined ? [] : [{ is: 'drawing', drawing: picture } as const]),
    ...(fillIn === undefined ? [] : [{ is: 'fill-in', table: fillIn } as const]),
    ...(table === undefined ? [] : [{ is: 'table', ...table } as const]),
  ]
  return {
    id,
    shelf: 'notes',
    title,
    inShort: inShortOf(note),
    blocks,
    sources,
    related: related.flatMap(linksOf),
    words: NOTE_WORDS[id] ?? [],
  }
}

export const pages = (): readonly BookPage[] => FIELD_NOTES.map(pageOf)

export { pages as built }
