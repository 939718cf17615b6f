/** What leads where between the book, the guide and the checks: each link stands once in the data and is shown at both ends. */
import type { Check } from '../../calc/types.ts'
import type { Guide } from '../types.ts'
import type { BookLink, BookPage } from './types.ts'

/** What a link leads to, by kind and id. */
export type EndKind = 'page' | 'check' | 'item'
/** `page/dummy-load`, `check/window`, `item/bus-dip` */
export type End = `${EndKind}/${string}`

export type Contents = {
  /** what stands at each end that some link has: its title, and one line where there is one */
  readonly titles: Readonly<Record<End, readonly [title: string, inShort: string]>>
  readonly links: readonly (readonly [End, End])[]
}

const endOf = (link: BookLink): End =>
  'page' in link ? `page/${link.page}` : 'check' in link ? `check/${link.check}` : `item/${link.item}`

/** Every link of the pages and of the guide's cards, each once, whichever end names it. */
function linksOf(pages: readonly BookPage[], guide: Guide): readonly (readonly [End, End])[] {
  const named: readonly (readonly [End, End])[] = [
    ...pages.flatMap(({ id, related = [] }) => related.map((link) => [`page/${id}`, endOf(link)] as const)),
    ...guide.evidence.flatMap(({ id, note }) => (note === undefined ? [] : [[`page/${note}`, `item/${id}`] as const])),
  ]
  return [...new Map(named.map((pair) => [pair.toSorted().join(' '), pair])).values()]
}

/** The contents of the book beside the guide and the checks. */
export function contentsOf(given: {
  readonly pages: readonly BookPage[]
  readonly guide: Guide
  readonly checks: readonly Check[]
}): Contents {
  const { pages, guide, checks } = given
  const links = linksOf(pages, guide)
  const all: readonly (readonly [End, readonly [string, string]])[] = [
    ...pages.map(({ id, title, inShort }) => [`page/${id}`, [title, inShort]] as const),
    ...checks.map(({ id, title, question }) => [`check/${id}`, [title, question]] as const),
    ...guide.evidence.map(({ id, text }) => [`item/${id}`, [text, '']] as const),
    ...guide.outcomes.map(({ id, headline }) => [`item/${id}`, [headline, '']] as const),
  ]
  const linked = new Set(links.flat())
  const titles = all.filter(([end]) => linked.has(end) || end.startsWith('page/'))
  return { titles: Object.fromEntries(titles), links }
}

/** What is linked with an end, from either side, in the order of the links. */
export const linkedWith = ({ links }: Contents, end: End): readonly End[] =>
  links.flatMap(([one, other]) => (one === end ? [other] : other === end ? [one] : []))
