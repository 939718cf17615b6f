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

/**
 * The words by their first letter, the longest first, so that "bond strap" is not taken for "bond". They are compared letter
 * by letter: a pattern of all of them takes a phone longer to make than a page to read.
 */
const byFirst = new Map<string, string[]>()
for (const word of [...spellings.keys()].sort((a, b) => b.length - a.length)) {
  const first = word.slice(0, 1)
  byFirst.set(first, [...(byFirst.get(first) ?? []), word])
}

const LETTER = /[\p{L}\p{N}-]/u

/** What follows a word that is found: nothing, or what makes it many. */
const ENDINGS = ['', 's', 'es'] as const

const isLetterAt = (text: string, at: number): boolean => at >= 0 && at < text.length && LETTER.test(text.charAt(at))

/** The length of the word of the glossary that starts at this place of a text in small letters; 0: there is none. */
function wordAt(text: string, at: number): number {
  const words = byFirst.get(text.charAt(at))
  if (words === undefined || isLetterAt(text, at - 1)) return 0
  const isWhole = (end: number) =>
    ENDINGS.some((ending) => text.startsWith(ending, end) && !isLetterAt(text, end + ending.length))
  return words.find((word) => text.startsWith(word, at) && isWhole(at + word.length))?.length ?? 0
}

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
    const small = text.toLowerCase().replace(/\s/g, ' ')
    for (let index = 0, length = 0; index < text.length; index += Math.max(length, 1)) {
      length = wordAt(small, index)
      if (length === 0) continue
      const found = text.slice(index, index + length)
      const entry = entryOf(found)
      if (entry === undefined || met.has(entry.id)) continue
      met.add(entry.id)
      if (index > from) pieces.push({ text: text.slice(from, index) })
      pieces.push({ text: found, entry })
      from = index + length
    }
    if (pieces.length > 0) marked.set(text, [...pieces, { text: text.slice(from) }])
  }
  return marked
}
