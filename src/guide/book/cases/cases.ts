/** The shelf of cases: a page a documented case. */
import type { Source } from '../../../calc/types.ts'
import { capital } from '../../../calc/verdict.ts'
import { SOURCES, type SourceId } from '../../../reference/sources.ts'
import { SUSPECTS } from '../../suspects/suspects.ts'
import { cautionsOfTests } from '../test-cautions.ts'
import type { Block, BookPage, BookRow } from '../types.ts'
import { CASES, casePageId } from './all.ts'
import { type CaseRecord, TELLING_WORDS } from './types.ts'

/** A document nobody opened is told from memory, whatever else is known of it. */
const citedAs = (id: SourceId): Source => ({
  id,
  standing: SOURCES[id].seen.startsWith('not opened') ? 'memory' : 'read',
})

function pageOf(one: CaseRecord): BookPage {
  const rows: readonly BookRow[] = [
    { label: 'Cause', text: one.cause },
    { label: 'Cure', text: one.cure },
    { label: 'To take along', text: one.lesson },
    ...(one.open === undefined ? [] : [{ label: 'Not settled', text: one.open }]),
    { label: 'Known from', text: `${capital(TELLING_WORDS[one.telling])}.` },
    { label: 'Seen of it', text: `${capital(SOURCES[one.source].seen)}.` },
  ]
  const proofs = [...new Set(one.suspects.flatMap((id) => SUSPECTS.find((suspect) => suspect.id === id)?.proof ?? []))]
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
    cautions: cautionsOfTests(proofs),
    sources: [citedAs(one.source)],
    related: proofs.map((item) => ({ item })),
  }
}

export const pages = (): readonly BookPage[] => CASES.map(pageOf)

export { pages as built }
