/**
 * One search over what the app knows. The index is built with the app (search-index.ts) and fetched when somebody
 * searches; complaints of the Log are searched beside it (log-search.ts).
 */
import MiniSearch, { type SearchResult } from 'minisearch'
import { SAME } from '../guide/book/synonyms.ts'
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
/** Short words are matched as they are: one letter off is another trade term. */
const FUZZY_FROM_LETTERS = 5
/** How much a word counts that was not typed but means the same. */
const SYNONYM_WEIGHT = 0.5
/** Of kinds that hold much text, or little: how much a match in one counts. */
const WEIGHTS: Partial<Record<HitKind, number>> = { question: 0.5, word: 0.7, notes: 0.8, cases: 0.7, tables: 0.7 }

type Index = {
  readonly find: (text: string) => readonly SearchResult[]
  readonly byId: ReadonlyMap<string, Shown>
}

/** What means the same as words or phrases of the text, and is not typed. */
function synonymsOf(text: string): string {
  const typed = ` ${wordsOf(text).join(' ')} `
  const has = (phrase: string) => typed.includes(` ${phrase} `)
  return SAME.filter((row) => row.some(has))
    .flatMap((row) => row.filter((phrase) => !has(phrase)))
    .join(' ')
}

function open(): Index {
  const byId = new Map(built.shown.map((hit) => [hit.id, hit]))
  const index = MiniSearch.loadJS<Searched>(built.index, {
    ...SEARCH_OPTIONS,
    searchOptions: {
      boost: { title: 3, words: 2 },
      fuzzy: (term) => (term.length >= FUZZY_FROM_LETTERS ? 0.2 : false),
      // an entry that holds all the words comes before one that holds some of them
      combineWith: 'OR',
      boostDocument: (id) => WEIGHTS[byId.get(String(id))?.kind ?? 'answer'] ?? 1,
    },
  })
  const find = (text: string) => {
    const typed = wordsOf(text).filter((word) => termOf(word) !== null)
    const count = typed.length
    return index.search(`${text} ${synonymsOf(text)}`, {
      // the last word may not be finished yet
      prefix: (term, at) => at === count - 1 || (at < count && term.length >= PREFIX_FROM_LETTERS),
      boostTerm: (_term, at) => (at < count ? 1 : SYNONYM_WEIGHT),
    })
  }
  return { find, byId }
}

let index: Index | undefined

const shown = ({ id, kind, title, note, to }: Shown): Hit => ({ id, kind, title, note, to })

/** What goes wrong and when, where each of the two is meant by a word of its own: the triage starts with both. */
function together(results: readonly SearchResult[], byId: Index['byId']): Hit | undefined {
  const [wrong, when] = ['wrong/', 'when/'].map((start) => results.find(({ id }) => String(id).startsWith(start)))
  const hasOwn = (one?: SearchResult, other?: SearchResult) =>
    one?.queryTerms.some((term) => !other?.queryTerms.includes(term)) === true
  if (!hasOwn(wrong, when) || !hasOwn(when, wrong)) return undefined
  const entries = [wrong, when].flatMap((result) => byId.get(String(result?.id)) ?? [])
  return {
    id: entries.map(({ id }) => id).join('+'),
    kind: 'symptom',
    title: entries.map(({ title }) => title).join('; '),
    note: 'Start the questions with these two answers',
    to: { start: entries.flatMap(({ to }) => ('start' in to ? to.start : [])) },
  }
}

/** The line with the figures that were typed beside it. */
function answered(results: readonly SearchResult[], figures: SoughtFigures, byId: Index['byId']): Hit | undefined {
  const { capacitanceF, bitRateHz } = figures.texts
  if (capacitanceF === undefined) return undefined
  const found = byId.get(String(results.find(({ id }) => String(id).startsWith('line/'))?.id))
  const line = found?.line
  if (found === undefined || line === undefined || line.isBarred) return undefined
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
  index ??= open()
  const { find, byId } = index
  const figures = figuresIn(text)
  const results = find(figures.words)
  const first = [answered(results, figures, byId), together(results, byId)].flatMap((hit) => hit ?? [])
  const leastScore = LEAST_SCORE_FRAC * (results[0]?.score ?? 0)
  const near = results.filter(({ score }) => score >= leastScore)
  const rest = near.flatMap(({ id }) => byId.get(String(id)) ?? []).map(shown)
  return [...first, ...rest].slice(0, MOST_HITS)
}
