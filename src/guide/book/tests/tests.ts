/** The shelf of tests: an instrument a page, and each test of the guide as a page, made from the guide's own card. */
import type { Source } from '../../../calc/types.ts'
import { PRACTICE } from '../../../reference/line-kinds/cite.ts'
import { durationWords } from '../../duration.ts'
import { EVIDENCE } from '../../evidence/evidence.ts'
import type { Evidence, Reading, TestCard } from '../../investigation.ts'
import { FIELD_NOTES } from '../../notes.ts'
import type { Block, BookLink, BookPage } from '../types.ts'
import { instrumentPageOf, instrumentPages } from './instruments.ts'

/** Id of the page of an item of evidence that has a card. */
const testPageId = (evidenceId: string): string => `test-${evidenceId}`

const isShown = ({ id, retired }: Reading): boolean => retired !== true && id !== 'dont-know'

/** Sources of the cells of an item, each once; practice where none was read. */
function sourcesOf({ options }: Evidence): readonly [Source, ...Source[]] {
  const cited = options.flatMap(({ cites }) => Object.values(cites ?? {}))
  const once = [...new Map(cited.map((source) => [`${source.id} ${source.clause ?? ''}`, source])).values()]
  return [PRACTICE, ...once]
}

function pageOf(item: Evidence, card: TestCard): BookPage {
  const tools = item.needs ?? []
  const pages = [...new Set(tools.flatMap((tool) => instrumentPageOf(tool) ?? []))]
  const note = FIELD_NOTES.find(({ id }) => id === item.note)
  const related: readonly BookLink[] = [
    { item: item.id },
    ...pages.map((page) => ({ page })),
    ...(note === undefined ? [] : [{ page: note.id }]),
  ]
  const blocks: readonly Block[] = [
    { is: 'text', text: item.why },
    { is: 'list', items: card.do, ordered: true },
    {
      is: 'rows',
      rows: [
        { label: 'Expect', text: card.expect },
        ...card.with.map((one) => ({ label: capital(one.instrument), text: `${capital(one.setting)}.` })),
        { label: 'Time', text: `${capital(durationWords(item.minutes))}.` },
      ],
    },
    ...(item.picture === undefined ? [] : [{ is: 'drawing', drawing: item.picture } as const]),
    { is: 'heading', text: 'What it may show', isFolded: true },
    { is: 'rows', rows: item.options.filter(isShown).map(({ label, means }) => ({ label, text: means })) },
  ]
  return {
    id: testPageId(item.id),
    shelf: 'tests',
    title: item.text,
    inShort: item.findOut,
    words: [item.chapter, ...tools, ...card.with.map(({ instrument }) => instrument)],
    blocks,
    cautions: item.cautions ?? [],
    sources: sourcesOf(item),
    related,
  }
}

/** A unit at the start keeps its letters: mV is not MV. */
const capital = (text: string): string =>
  /^\p{Ll}\p{Lu}/u.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1)

/** Instruments first, then the tests in the order of the guide. */
export function pages(): readonly BookPage[] {
  return [
    ...instrumentPages(),
    ...EVIDENCE.flatMap((item) => (item.card === undefined ? [] : [pageOf(item, item.card)])),
  ]
}

export { pages as built }
