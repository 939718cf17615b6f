/** Where a kind of line leads in a search, with the figures that were typed beside it. */
import { hashOf } from './router.ts'
import type { SoughtFigures } from './search-figures.ts'

export type SoughtLine = {
  readonly kind: string
  /** the check that says most of it */
  readonly check: 'loading' | 'window'
  /** the only rate it has is not typed over */
  readonly hasRate: boolean
  readonly isBarred: boolean
}

/** The check that says most of a line: what its signal stands, or its window where it is a supply. */
export function lineHash({ kind, check, hasRate }: SoughtLine, figures?: SoughtFigures): string {
  const texts = check === 'loading' ? Object.entries(figures?.texts ?? {}) : []
  const more = texts.flatMap(([key, text]) =>
    text === undefined || (key === 'bitRateHz' && hasRate) ? [] : [{ key, text }],
  )
  return hashOf('check', check, [{ key: 'lineKind', text: kind }, ...more])
}
