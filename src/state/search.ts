/**
 * One search over what the app knows: what people complain of, causes, lines, checks and notes. Fetched when somebody
 * searches. A place that grows is one more list of entries here.
 */
import MiniSearch, { type SearchResult } from 'minisearch'
import { CHECKS } from '../calc/registry.ts'
import { GUIDE } from '../guide/guide.ts'
import { FIELD_NOTES } from '../guide/notes.ts'
import { PLAIN_WORDS } from '../guide/plain-words.ts'
import { LINE_KINDS, lineKindWords } from '../reference/line-kinds.ts'
import { hashOf } from './router.ts'
import { figuresIn, type SoughtFigures } from './search-figures.ts'

export type HitKind = 'symptom' | 'answer' | 'cause' | 'line' | 'check' | 'note'

/** An answer of the guide that a hit starts with. */
export type Given = { readonly evidence: string; readonly option: string }

export type Hit = {
  readonly id: string
  readonly kind: HitKind
  readonly title: string
  readonly note: string
  /** where it leads, or the answers a triage starts with */
  readonly to: { readonly hash: string } | { readonly start: readonly Given[] }
}

type Entry = Hit & { readonly words: string; readonly text: string }

const MOST_HITS = 12
/** What scores less than this share of the best has a word in common by chance. */
const LEAST_SCORE_FRAC = 0.15
const PREFIX_FROM_LETTERS = 4
/** Short words are matched as they are: one letter off is another trade term. */
const FUZZY_FROM_LETTERS = 5
const IDLE_WORDS = new Set(
  'a an and at be by for from get i in is it its me my of on or our that the to us we what when with'.split(' '),
)

const START_NOTE = 'Start the questions with this answer'

function symptoms(): readonly Entry[] {
  return ['wrong', 'when'].flatMap((evidence) => {
    const item = GUIDE.evidence.find(({ id }) => id === evidence)
    return (item?.options ?? [])
      .filter(({ id, retired }) => id !== 'dont-know' && retired === undefined)
      .map(
        ({ id, label, hint = '' }): Entry => ({
          id: `${evidence}/${id}`,
          kind: 'symptom',
          title: label,
          note: START_NOTE,
          to: { start: [{ evidence, option: id }] },
          words: `${hint} ${PLAIN_WORDS[`${evidence}/${id}`] ?? ''}`,
          text: '',
        }),
      )
  })
}

const causes = (): readonly Entry[] =>
  GUIDE.suspects.map(({ id, name, oneLine, proof }) => ({
    id: `cause/${id}`,
    kind: 'cause',
    title: name,
    note: oneLine,
    to: { hash: hashOf('ask', proof) },
    words: '',
    text: oneLine,
  }))

/** The check that says most of a line: what its signal stands, or its window where it is a supply. */
function lineHash(kind: (typeof LINE_KINDS)[number], figures?: SoughtFigures): string {
  const check = kind.supply === undefined ? 'loading' : 'window'
  const texts = check === 'loading' ? Object.entries(figures?.texts ?? {}) : []
  const more = texts.flatMap(([key, text]) =>
    text === undefined || (key === 'bitRateHz' && kind.bitRateHz !== undefined) ? [] : [{ key, text }],
  )
  return hashOf('check', check, [{ key: 'lineKind', text: kind.id }, ...more])
}

const lines = (): readonly Entry[] =>
  LINE_KINDS.map((kind) => ({
    id: `line/${kind.id}`,
    kind: 'line',
    title: kind.name,
    note: kind.barredWhy ?? (kind.supply === undefined ? 'What its signal stands' : 'Its window'),
    to: { hash: lineHash(kind) },
    words: lineKindWords(kind),
    text: kind.notes.join(' '),
  }))

const checks = (): readonly Entry[] =>
  CHECKS.map(({ id, title, question, outputs }) => ({
    id: `check/${id}`,
    kind: 'check',
    title,
    note: question,
    to: { hash: hashOf('check', id) },
    words: question,
    text: outputs.map(({ label }) => label).join(' '),
  }))

const notes = (): readonly Entry[] =>
  FIELD_NOTES.map(({ id, title, paragraphs, table }) => ({
    id: `note/${id}`,
    kind: 'note',
    title,
    note: paragraphs[0] ?? '',
    to: { hash: hashOf('notes', id) },
    words: '',
    text: [...paragraphs, ...(table ? [...table.head, ...table.rows.flat()] : [])].join(' '),
  }))

/** Words without case and marks; "ARINC429" is met by "arinc" and "429" too. */
function wordsOf(text: string): string[] {
  const parts = text.toLowerCase().match(/[\p{L}\p{N}.]+/gu) ?? []
  return parts.flatMap((part) => {
    const whole = part.replace(/^\.+|\.+$/g, '')
    const halves = whole.match(/\p{L}+|[\p{N}.]+/gu) ?? []
    return halves.length === 2 ? [whole, ...halves] : [whole]
  })
}

type Index = { readonly find: (text: string) => readonly SearchResult[]; readonly byId: ReadonlyMap<string, Entry> }

function build(): Index {
  const entries = [...symptoms(), ...causes(), ...lines(), ...checks(), ...notes()]
  const search = new MiniSearch<Entry>({
    fields: ['title', 'words', 'text'],
    tokenize: wordsOf,
    processTerm: (term) => (term === '' || IDLE_WORDS.has(term) ? null : term),
    searchOptions: {
      boost: { title: 3, words: 2 },
      // the last word may not be finished yet
      prefix: (term, at, terms) => at === terms.length - 1 || term.length >= PREFIX_FROM_LETTERS,
      fuzzy: (term) => (term.length >= FUZZY_FROM_LETTERS ? 0.2 : false),
      // an entry that holds all the words comes before one that holds some of them
      combineWith: 'OR',
      boostDocument: (id) => (String(id).startsWith('note/') ? 0.6 : 1),
    },
  })
  search.addAll(entries)
  return { find: (text) => search.search(text), byId: new Map(entries.map((entry) => [entry.id, entry])) }
}

let index: Index | undefined

const shown = ({ id, kind, title, note, to }: Entry): Hit => ({ id, kind, title, note, to })

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
  const line = results.find(({ id }) => String(id).startsWith('line/'))
  const entry = byId.get(String(line?.id))
  const kind = LINE_KINDS.find(({ id }) => `line/${id}` === entry?.id)
  if (entry === undefined || kind === undefined || kind.barredWhy !== undefined) return undefined
  const rate = bitRateHz === undefined || kind.bitRateHz !== undefined ? '' : ` at ${bitRateHz}`
  return {
    id: `answer/${kind.id}`,
    kind: 'answer',
    title: `${capacitanceF} on ${kind.name}${rate}`,
    note: 'Loading: what its signal stands',
    to: { hash: lineHash(kind, figures) },
  }
}

/** What fits the words, the best first. */
export function searchFor(text: string): readonly Hit[] {
  index ??= build()
  const { find, byId } = index
  const figures = figuresIn(text)
  const results = find(figures.words)
  const first = [answered(results, figures, byId), together(results, byId)].flatMap((hit) => hit ?? [])
  const leastScore = LEAST_SCORE_FRAC * (results[0]?.score ?? 0)
  const near = results.filter(({ score }) => score >= leastScore)
  const rest = near.flatMap(({ id }) => byId.get(String(id)) ?? []).map(shown)
  return [...first, ...rest].slice(0, MOST_HITS)
}
