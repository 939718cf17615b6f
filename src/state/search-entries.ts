/**
 * What can be found: what people complain of, causes, questions, lines, checks, and the pages and words of the book. Read
 * when the app is built; a place that grows is one more list of entries here.
 */
import { CHECKS } from '../calc/registry.ts'
import { GLOSSARY } from '../guide/book/glossary.ts'
import { pageTexts } from '../guide/book/page-texts.ts'
import type { BookPage, Shelf } from '../guide/book/types.ts'
import { GUIDE } from '../guide/guide.ts'
import { CAUSE_WORDS, CHECK_WORDS, PLAIN_WORDS } from '../guide/plain-words.ts'
import { itemTexts } from '../guide/screen-texts.ts'
import { LINE_KINDS, type LineKind, lineKindWords } from '../reference/line-kinds.ts'
import { hashOf } from './router.ts'
import { lineHash, type SoughtLine } from './search-line.ts'
import type { Searched } from './search-terms.ts'

export type HitKind = 'symptom' | 'answer' | 'cause' | 'question' | 'line' | 'check' | 'word' | Shelf

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

export type Shown = Hit & { readonly line?: SoughtLine }
export type Entry = Shown & Omit<Searched, 'at'>

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
    words: CAUSE_WORDS[id] ?? '',
    text: oneLine,
  }))

const questions = (): readonly Entry[] =>
  GUIDE.evidence.map((item) => ({
    id: `question/${item.id}`,
    kind: 'question',
    title: item.text,
    note: item.chapter,
    to: { hash: hashOf('ask', item.id) },
    words: '',
    text: itemTexts(item).slice(1).join(' '),
  }))

function lineNote({ barredWhy, supply }: LineKind): string {
  return barredWhy ?? (supply === undefined ? 'What its signal stands' : 'Its window')
}

/** A kind of line leads to its card, and to the check where it has none. */
function lines(cards: readonly BookPage[]): readonly Entry[] {
  return LINE_KINDS.map((kind) => {
    const card = cards.find(({ lineKind }) => lineKind === kind.id)
    const line: SoughtLine = {
      kind: kind.id,
      check: kind.supply === undefined ? 'loading' : 'window',
      hasRate: kind.bitRateHz !== undefined,
      isBarred: kind.barredWhy !== undefined,
    }
    return {
      id: `line/${kind.id}`,
      kind: 'line',
      title: kind.name,
      note: card?.inShort ?? lineNote(kind),
      to: { hash: card === undefined ? lineHash(line) : hashOf('notes', card.id) },
      line,
      words: [lineKindWords(kind), ...(card?.words ?? [])].join(' '),
      text: [...kind.notes, ...(card === undefined ? [] : pageTexts(card))].join(' '),
    }
  })
}

const checks = (): readonly Entry[] =>
  CHECKS.map(({ id, title, question, outputs }) => ({
    id: `check/${id}`,
    kind: 'check',
    title,
    note: question,
    to: { hash: hashOf('check', id) },
    words: `check ${question} ${CHECK_WORDS[id] ?? ''}`,
    text: outputs.map(({ label }) => label).join(' '),
  }))

const pages = (all: readonly BookPage[]): readonly Entry[] =>
  all
    .filter(({ lineKind }) => lineKind === undefined)
    .map((page) => ({
      id: `page/${page.id}`,
      kind: page.shelf,
      title: page.title,
      note: page.inShort,
      to: { hash: hashOf('notes', page.id) },
      words: [page.id, ...(page.words ?? [])].join(' '),
      text: [page.inShort, ...pageTexts(page)].join(' '),
    }))

const words = (): readonly Entry[] =>
  GLOSSARY.map(({ id, word, forms = [], line }) => ({
    id: `word/${id}`,
    kind: 'word',
    title: word,
    note: line,
    to: { hash: hashOf('notes', 'glossary', [{ key: 'word', text: id }]) },
    words: forms.join(' '),
    text: line,
  }))

/** Everything that can be found, beside the complaints of the Log. */
export const entriesOf = (book: readonly BookPage[]): readonly Entry[] => [
  ...symptoms(),
  ...causes(),
  ...questions(),
  ...lines(book.filter(({ lineKind }) => lineKind !== undefined)),
  ...checks(),
  ...pages(book),
  ...words(),
]
