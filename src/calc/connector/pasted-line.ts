/** A line with what the cells of a row say of it. */
import { saySame } from '../line/fields.ts'
import { withFact } from '../line/with-fact.ts'
import type { Fact, Line } from '../types.ts'
import type { ReadRow } from './paste-rows.ts'
import { FACT_COLUMNS, FACT_OF_COLUMN, inputOfColumn } from './pasted-facts.ts'

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })

/** A kind that is barred bars by itself; the safety questions of the line are still nobody's but the user's to answer. */
export const withKind = (line: Line, kind: string): Line =>
  line.facts.lineKind?.text === kind ? line : withFact(line, 'lineKind', typed(kind))

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
