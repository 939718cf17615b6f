/** How texts are cut into words and how words are weighed: the same where the index is built and where it is searched. */
import type MiniSearch from 'minisearch'

type Options = NonNullable<ConstructorParameters<typeof MiniSearch<Searched>>[0]>

/** What is searched of a hit; `at`: which of the entries it is. */
export type Searched = { readonly at: number; readonly title: string; readonly words: string; readonly text: string }

/** Typed in a sentence, meant by nobody. */
const IDLE_WORDS = new Set(
  'a an and at be by for from get i in is it its me my no not of on or our that the there this to us we what when with'.split(
    ' ',
  ),
)

/** One and many are the same word. */
const PLURAL = /(?<=\p{L}{3})(?<![sui])s$/u

/** Words without case and marks; "ARINC429" is met by "arinc" and "429" too. */
export function wordsOf(text: string): string[] {
  const parts = text.toLowerCase().match(/[\p{L}\p{N}.]+/gu) ?? []
  return parts.flatMap((part) => {
    const whole = part.replace(/^\.+|\.+$/g, '')
    const halves = whole.match(/\p{L}+|[\p{N}.]+/gu) ?? []
    return halves.length === 2 ? [whole, ...halves] : [whole]
  })
}

/** A word that counts, or null. Of figures in a text only short whole ones may be names: 429, 400, 1553. */
export function termOf(word: string, field?: string): string | null {
  if (word === '' || IDLE_WORDS.has(word)) return null
  if (field === 'text' && /^\d/.test(word) && !/^\d{2,4}$/.test(word)) return null
  return word.replace(PLURAL, '')
}

export const SEARCH_OPTIONS: Options = {
  idField: 'at',
  fields: ['title', 'words', 'text'],
  tokenize: wordsOf,
  processTerm: termOf,
}
