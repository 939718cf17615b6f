/** The shelf of cases: a page a documented case. */
import { SUSPECTS } from '../../suspects/suspects.ts'
import type { Block, BookPage, BookRow } from '../types.ts'
import { CASES, casePageId } from './all.ts'
import { type CaseRecord, TELLING_WORDS } from './types.ts'

function pageOf(one: CaseRecord): BookPage {
  const rows: readonly BookRow[] = [
    { label: 'Cause', text: one.cause },
    { label: 'Cure', text: one.cure },
    { label: 'To take along', text: one.lesson },
    ...(one.open === undefined ? [] : [{ label: 'Not settled', text: one.open }]),
    { label: 'Known from', text: `${TELLING_WORDS[one.telling]}.` },
  ]
  const proofs = one.suspects.flatMap((id) => SUSPECTS.find((suspect) => suspect.id === id)?.proof ?? [])
  const blocks: readonly Block[] = [
    { is: 'text', text: one.told },
    { is: 'heading', text: 'What was tried' },
    { is: 'list', items: one.trail, ordered: true },
    { is: 'heading', text: 'What it was' },
    { is: 'rows', rows },
  ]
  return {
    id: casePageId(one),
    shelf: 'cases',
    title: one.title,
    inShort: one.told,
    words: one.words,
    blocks,
    sources: [{ id: one.source, standing: 'read' }],
    related: [...new Set(proofs)].map((item) => ({ item })),
  }
}

export const pages = (): readonly BookPage[] => CASES.map(pageOf)
