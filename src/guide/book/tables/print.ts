/** How the tables of the book print their figures, and how the sources of their rows come together. */
import { formatQuantity } from '../../../calc/quantity/format.ts'
import type { Quantity } from '../../../calc/quantity/quantity.ts'
import type { Source } from '../../../calc/types.ts'
import type { Block, BookLink, BookPage } from '../types.ts'

/** A figure with its unit, or a dash where there is none. */
export const print = (si: number | undefined, quantity: Quantity, digits = 3): string =>
  si === undefined ? '–' : formatQuantity(si, quantity, digits)

/** A share as a percentage. */
export const percent = (share: number): string => formatQuantity(share, 'fraction', 3)

/** Each source once, in the order met; a page without one is a fault of ours. */
export function together(sources: readonly Source[]): readonly [Source, ...Source[]] {
  const once = [
    ...new Map(sources.map((source) => [`${source.id} ${source.clause ?? ''} ${source.standing}`, source])).values(),
  ]
  const [first, ...rest] = once
  if (first === undefined) throw new RangeError('a table without a source')
  return [first, ...rest]
}

export type Table = {
  readonly id: string
  readonly title: string
  readonly inShort: string
  readonly words: readonly string[]
  readonly before?: readonly string[]
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
  readonly more?: readonly Block[]
  readonly sources: readonly Source[]
  readonly related?: readonly BookLink[]
}

export const asPage = (table: Table): BookPage => ({
  id: `table-${table.id}`,
  shelf: 'tables',
  title: table.title,
  inShort: table.inShort,
  words: table.words,
  blocks: [
    ...(table.before ?? []).map((text): Block => ({ is: 'text', text })),
    { is: 'table', head: table.head, rows: table.rows },
    ...(table.more ?? []),
  ],
  sources: together(table.sources),
  ...(table.related === undefined ? {} : { related: table.related }),
})
