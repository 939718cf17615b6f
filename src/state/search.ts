/**
 * One search over what the app knows. The index is built with the app (search-index.ts) and fetched when somebody
 * searches; complaints of the Log are searched beside it (log-search.ts).
 */
import MiniSearch, { type SearchResult } from 'minisearch'
import { SAME } from '../guide/book/synonyms.ts'
import { writeQuery } from './router.ts'
import type { Given, Hit, HitKind, Shown } from './search-entries.ts'
import { figuresIn, type SoughtFigures } from './search-figures.ts'
import built from './search-index.ts?built'
import { lineHash } from './search-line.ts'
import { SEARCH_OPTIONS, type Searched, termOf, wordsOf } from './search-terms.ts'

export type { Given, Hit, HitKind }

const MOST_HITS = 12
/** What scores less than this share of the best has a word in common by chance. */
const LEAST_SCORE_FRAC = 0.15
const PREFIX_FROM_LETTERS = 4
/** The word that is being typed is met by its beginning from here on. */
const LAST_PREFIX_FROM_LETTERS = 2
/** Short words are matched as they are: one letter off is another trade term. */
const FUZZY_FROM_LETTERS = 5
/** What a hit without a typed word keeps of its score; with all of them it keeps everything. */
const ALONE_FRAC = 0.3
/** How much a word counts that was not typed but means the same. */
const SYNONYM_WEIGHT = 0.5
/** Of kinds that hold much text, or little: how much a match in one counts. */
const WEIGHTS: Partial<Record<HitKind, number>> = {
  line: 0.7,
  cause: 1.03,
  question: 0.5,
  word: 0.7,
  tests: 0.9,
  cases: 0.7,
  tables: 0.7,
  drawings: 0.7,
}

/** `met`: the typed words it holds, whole or begun; one that is only alike does not count. `terms`: its own words that fit. */
type Found = Shown & { readonly score: number; readonly met: ReadonlySet<string>; readonly terms: readonly string[] }

/** What means the same as words or phrases of the text, and is not typed. */
function synonymsOf(text: string): string {
  const typed = ` ${wordsOf(text).join(' ')} `
  const has = (phrase: string) => typed.includes(` ${phrase} `)
  return SAME.filter((row) => row.some(has))
    .flatMap((row) => row.filter((phrase) => !has(phrase)))
    .join(' ')
}

/** All that has words of the text, the best first. */
type Find = (text: string) => readonly Found[]

function open(): Find {
  const index = MiniSearch.loadJS<Searched>(built.index, {
    ...SEARCH_OPTIONS,
    searchOptions: {
      boost: { title: 3, words: 2 },
      fuzzy: (term) => (term.length >= FUZZY_FROM_LETTERS ? 0.2 : false),
      // an entry that holds all the words comes before one that holds some of them
      combineWith: 'OR',
      boostDocument: (at) => WEIGHTS[built.shown[at]?.kind ?? 'answer'] ?? 1,
    },
  })
  const foundIn = ({ id, score, queryTerms, terms }: SearchResult, typed: readonly string[]): readonly Found[] => {
    const hit = built.shown[id]
    if (hit === undefined) return []
    const isMet = (word: string) => terms.some((term) => term.startsWith(word))
    const held = typed.filter((word) => queryTerms.includes(word)).length
    const shareFrac = typed.length === 0 ? 1 : held / typed.length
    return [
      { ...hit, score: score * (ALONE_FRAC + (1 - ALONE_FRAC) * shareFrac), met: new Set(typed.filter(isMet)), terms },
    ]
  }
  return (text) => {
    const typed = wordsOf(text).flatMap((word) => termOf(word) ?? [])
    const count = typed.length
    const results = index.search(`${text} ${synonymsOf(text)}`, {
      // the last word may not be finished yet
      prefix: (term, at) =>
        at < count && term.length >= (at === count - 1 ? LAST_PREFIX_FROM_LETTERS : PREFIX_FROM_LETTERS),
      boostTerm: (_term, at) => (at < count ? 1 : SYNONYM_WEIGHT),
    })
    return results.flatMap((result) => foundIn(result, typed)).sort((a, b) => b.score - a.score)
  }
}

let find: Find | undefined

const MOST_TERMS = 6
const isPage = (hash: string): boolean => hash.startsWith('#/notes/') && !hash.includes('?')

/** A page is told what was looked for in it, so that it does not stand folded. */
const told = (to: Shown['to'], terms: readonly string[]): Shown['to'] =>
  'hash' in to && isPage(to.hash)
    ? { hash: `${to.hash}?${writeQuery([{ key: 'find', text: terms.slice(0, MOST_TERMS).join(' ') }])}` }
    : to

const shown = ({ id, kind, title, note, to, terms }: Found): Hit => ({ id, kind, title, note, to: told(to, terms) })

/** What goes wrong and when, where each of the two is meant by a word of its own: the triage starts with both. */
function together(results: readonly Found[]): Hit | undefined {
  const [wrong, when] = ['wrong/', 'when/'].map((start) => results.find(({ id }) => id.startsWith(start)))
  const hasOwn = (one: Found, other: Found) => [...one.met].some((term) => !other.met.has(term))
  if (wrong === undefined || when === undefined || !hasOwn(wrong, when) || !hasOwn(when, wrong)) return undefined
  // what one thing says alone is that thing, not two answers
  if (new Set([...wrong.met, ...when.met]).size < Math.max(...results.map(({ met }) => met.size))) return undefined
  const both = [wrong, when]
  return {
    id: both.map(({ id }) => id).join('+'),
    kind: 'symptom',
    title: both.map(({ title }) => title).join('; '),
    note: 'Start the questions with these two answers',
    to: { start: both.flatMap(({ to }) => ('start' in to ? to.start : [])) },
  }
}

/** Whether what was typed, of more than one word, is what a noise is called. */
function isNamed(found: Found | undefined, text: string): boolean {
  const typed = wordsOf(text).flatMap((word) => termOf(word) ?? [])
  const named = wordsOf(found?.title ?? '')
  return found?.kind === 'sounds' && typed.length > 1 && typed.every((word) => named.includes(word))
}

/** The line with the figures that were typed beside it. */
function answered(results: readonly Found[], figures: SoughtFigures): Hit | undefined {
  const { capacitanceF, bitRateHz } = figures.texts
  const found = results.find(({ id }) => id.startsWith('line/'))
  const line = found?.line
  if (capacitanceF === undefined || found === undefined || line === undefined || line.isBarred) return undefined
  const rate = bitRateHz === undefined || line.hasRate ? '' : ` at ${bitRateHz}`
  return {
    id: `answer/${line.kind}`,
    kind: 'answer',
    title: `${capacitanceF} on ${found.title}${rate}`,
    note: 'Loading: what its signal stands',
    to: { hash: lineHash(line, figures) },
  }
}

/** What fits the words, the best first. */
export function searchFor(text: string): readonly Hit[] {
  find ??= open()
  const figures = figuresIn(text)
  const results = find(figures.words)
  const both = isNamed(results[0], figures.words) ? undefined : together(results)
  const first = [answered(results, figures), both].flatMap((hit) => hit ?? [])
  const leastScore = LEAST_SCORE_FRAC * (results[0]?.score ?? 0)
  const near = results.filter(({ score }) => score >= leastScore).map(shown)
  return [...first, ...near].slice(0, MOST_HITS)
}
