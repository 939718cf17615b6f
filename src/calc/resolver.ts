/** Decides each fact of a Line: typed > trial > another check's result > answer > line kind > assumed > ask. */
import { lineKindById } from '../reference/line-kinds.ts'
import { evaluateNow } from './evaluate.ts'
import { type Express, readFields } from './fields.ts'
import { printText } from './quantity/format.ts'
import { checkById } from './registry.ts'
import type { Check, CheckId, Fact, FactKey, Line, Origin, Quantity, Result } from './types.ts'

export type Resolved = Fact & {
  /** other values of the same fact that lost, shown rather than hidden */
  readonly conflicts: readonly Fact[]
}

const RANK: Readonly<Record<Origin['by'], number>> = { user: 0, trial: 1, check: 2, answer: 3, kind: 4, assumed: 5 }

/** Facts that a check's output provides. Recomputed each time, never stored; must stay free of cycles. */
export const DERIVED: readonly {
  readonly fact: FactKey
  readonly check: CheckId
  readonly output: string
  readonly quantity: Quantity
}[] = [
  { fact: 'neededDb', check: 'need', output: 'neededDb', quantity: 'decibel' },
  { fact: 'markedF', check: 'window', output: 'proposedF', quantity: 'capacitance' },
]

/** The value of one fact with its origin, and what else claims to know it; undefined = ask. */
export function resolveFact(line: Line, fact: FactKey, express?: Express): Resolved | undefined {
  const candidates = [line.facts[fact], derivedFact(line, fact, express), kindFact(line, fact)].filter(
    (f): f is Fact => f !== undefined && f.text.trim() !== '',
  )
  candidates.sort((a, b) => RANK[a.origin.by] - RANK[b.origin.by])
  const best = candidates[0]
  return best && { ...best, conflicts: candidates.slice(1).filter((c) => c.text !== best.text) }
}

/** Input texts of a check as the Line's facts fill them: only keys the Line knows. */
export function textsForCheck(check: Check, line: Line, express?: Express): Record<string, string> {
  const texts: Record<string, string> = {}
  for (const input of check.inputs) {
    const known = resolveFact(line, input.fact, express)
    if (known) texts[input.key] = known.text
  }
  return texts
}

/** Runs a check on a Line at once. */
export function checkLine(check: Check, line: Line, express?: Express): Result {
  return evaluateNow(check, readFields(check, textsForCheck(check, line, express), express))
}

function derivedFact(line: Line, fact: FactKey, express: Express | undefined): Fact | undefined {
  const rule = DERIVED.find((d) => d.fact === fact)
  const check = rule && checkById(rule.check)
  if (!rule || !check) return undefined
  const result = checkLine(check, line, express)
  const cell = result.ok ? result.outputs[rule.output]?.cell : undefined
  if (cell?.is !== 'si') return undefined
  return { text: printText(cell.si, rule.quantity), origin: { by: 'check', check: rule.check } }
}

/** What the kind of line alone says: the supply of a power line. */
function kindFact(line: Line, fact: FactKey): Fact | undefined {
  const supply = lineKindById(line.facts.lineKind?.text ?? '')?.supply
  if (!supply) return undefined
  const origin = { by: 'kind', source: supply.source.id } as const
  if (fact === 'workingRmsV') return { text: printText(supply.worstRmsV, 'voltage'), origin }
  if (fact === 'supplyHz') return { text: printText(supply.worstHz, 'frequency'), origin }
  return undefined
}
