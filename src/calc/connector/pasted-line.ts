/** A line with what the cells of a row say of it. */
import { lineKindById } from '../../reference/line-kinds.ts'
import { saySame } from '../line/fields.ts'
import { withFact } from '../line/with-fact.ts'
import type { Fact, Line } from '../types.ts'
import type { ReadRow } from './paste-rows.ts'
import { FACT_COLUMNS, FACT_OF_COLUMN, inputOfColumn } from './pasted-facts.ts'

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })

/** A kind that is barred shuts the safety gate; one that is not leaves it unanswered. */
export function withKind(line: Line, kind: string): Line {
  if (line.facts.lineKind?.text === kind) return line
  const wasBarred = lineKindById(line.facts.lineKind?.text ?? '')?.barredWhy !== undefined
  const isBarred = lineKindById(kind)?.barredWhy !== undefined
  const gate = isBarred ? 'barred' : wasBarred && line.gate === 'barred' ? 'unknown' : line.gate
  return withFact({ ...line, gate }, 'lineKind', typed(kind))
}

/** A text that says the same as what stands there leaves it. */
export function lineWithCells(line: Line, { meaning, facts }: Pick<ReadRow, 'meaning' | 'facts'>): Line {
  const ofKind = meaning?.is === 'kind' ? withKind(line, meaning.kind) : line
  return FACT_COLUMNS.reduce((one, column) => {
    const text = facts[column]
    const key = FACT_OF_COLUMN[column]
    const before = one.facts[key]?.text
    if (text === undefined || (before !== undefined && saySame(inputOfColumn(column), before, text))) return one
    return withFact(one, key, typed(text))
  }, ofKind)
}
