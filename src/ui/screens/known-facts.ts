/** What is known of a line, as screens and sheets print it. */
import { FACTS } from '../../calc/fact-meanings.ts'
import { FACT_KEYS, type FactKey } from '../../calc/ids.ts'
import { DERIVED, type Resolved, resolve } from '../../calc/line/resolver.ts'
import type { Fact, Line } from '../../calc/types.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import { expressionReading } from '../../state/expression.ts'

/** What the window proposes stands in the window itself, which works it out in its own time. */
const PROPOSED: ReadonlySet<FactKey> = new Set(DERIVED.flatMap(({ check, fact }) => (check === 'window' ? [fact] : [])))

export type KnownFact = { readonly key: FactKey; readonly fact: Resolved }

/** Every fact that is known of the line: typed, answered, or taken over from its kind or a check. */
export function knownFacts(line: Line): readonly KnownFact[] {
  const resolution = resolve(line, expressionReading)
  return FACT_KEYS.flatMap((key) => {
    if (line.facts[key] === undefined && PROPOSED.has(key)) return []
    const fact = resolution.fact(key) ?? emptiedFact(line.facts[key])
    return fact ? [{ key, fact }] : []
  })
}

const emptiedFact = (fact: Fact | undefined): Resolved | undefined => fact && { ...fact, conflicts: [] }

export const factMeaning = (key: FactKey): string => FACTS[key]

/** The text of a fact; the kind of line by its name. */
export function factWords(key: FactKey, fact: Fact): string {
  if (fact.text.trim() === '') return 'not known'
  return key === 'lineKind' ? (lineKindById(fact.text)?.name ?? fact.text) : fact.text
}
