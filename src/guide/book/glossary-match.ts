/** Words of the glossary in the texts of a page: each where it is first met, so that a page is not full of marks. */
import { GLOSSARY, type GlossaryEntry } from './glossary.ts'

/** A stretch of text, with the entry it is a word of. */
export type Piece = { readonly text: string; readonly entry?: GlossaryEntry }

const spellings: ReadonlyMap<string, GlossaryEntry> = new Map(
  GLOSSARY.filter(({ everyday }) => everyday !== true)
    .flatMap((entry) => [entry.word, ...(entry.forms ?? [])].map((word) => [word.toLowerCase(), entry] as const))
    // a short form never takes the place of a word of the trade
    .reverse(),
)

const quoted = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '\\s')

/** The longest first, so that "bond strap" is not taken for "bond"; of one thing or of many. */
const WORDS = new RegExp(
  `(?<![\\p{L}\\p{N}-])(?:${[...spellings.keys()]
    .sort((a, b) => b.length - a.length)
    .map(quoted)
    .join('|')})(?=(?:e?s)?(?![\\p{L}\\p{N}-]))`,
  'giu',
)

function entryOf(found: string): GlossaryEntry | undefined {
  const entry = spellings.get(found.toLowerCase().replace(/\s/g, ' '))
  // "can" is no bus
  return entry?.isShortForm === true && entry.word !== found ? undefined : entry
}

/** Cuts the texts of a page, in the order they are read, at the first use of each word. */
export function markedTexts(texts: readonly string[]): ReadonlyMap<string, readonly Piece[]> {
  const met = new Set<string>()
  const marked = new Map<string, readonly Piece[]>()
  for (const text of texts) {
    if (marked.has(text)) continue
    const pieces: Piece[] = []
    let from = 0
    for (const { 0: found, index } of text.matchAll(WORDS)) {
      const entry = entryOf(found)
      if (entry === undefined || met.has(entry.id)) continue
      met.add(entry.id)
      if (index > from) pieces.push({ text: text.slice(from, index) })
      pieces.push({ text: found, entry })
      from = index + found.length
    }
    if (pieces.length > 0) marked.set(text, [...pieces, { text: text.slice(from) }])
  }
  return marked
}
