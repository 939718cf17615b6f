/**
 * The one resolver: decides each fact of a Line, typed > trial > another check's result > answer > line kind > assumed >
 * ask. One pass over a Line, each derived fact computed when it is first asked for, remembered as long as the Line
 * object and the expression evaluator are the same: a changed fact is a new Line.
 */
import { lineKindById } from '../../reference/line-kinds.ts'
import { printText } from '../quantity/format.ts'
import { CHECKS, checkById } from '../registry.ts'
import type {
  Check,
  CheckId,
  Fact,
  FactKey,
  Figures,
  Input,
  Line,
  Origin,
  Quantity,
  Refused,
  Result,
} from '../types.ts'
import { atOnce, evaluateFigures, evaluateNow, isRefused } from './evaluate.ts'
import { type Express, type Field, readFields } from './fields.ts'

export type Resolved = Fact & {
  /** other values of the same fact that lost, shown rather than hidden */
  readonly conflicts: readonly Fact[]
}

const RANK: Readonly<Record<Origin['by'], number>> = { user: 0, trial: 1, check: 2, answer: 3, kind: 4, assumed: 5 }

export type Derived = {
  readonly fact: FactKey
  readonly check: CheckId
  readonly output: string
  readonly quantity: Quantity
}

/** Facts that a check's output provides, as the checks declare them. Recomputed each time, never stored; free of cycles. */
export const DERIVED: readonly Derived[] = CHECKS.flatMap((check) =>
  check.outputs.flatMap((output) =>
    output.provides !== undefined && 'quantity' in output
      ? [{ fact: output.provides, check: check.id, output: output.key, quantity: output.quantity }]
      : [],
  ),
)

/** A Line with its facts decided. */
export type Resolution = {
  readonly line: Line
  /** the value of one fact with its origin, and what else claims to know it; undefined = ask */
  readonly fact: (key: FactKey) => Resolved | undefined
  /** the fields of a check as this Line fills them */
  readonly fields: (check: Check) => readonly Field[]
  /** the numbers of a check on this Line */
  readonly figures: (check: Check) => Figures | Refused
}

const remembered = new WeakMap<Line, { readonly express: Express | undefined; readonly resolution: Resolution }>()

/** The resolution of a Line; the same one for the same Line object and evaluator. */
export function resolve(line: Line, express?: Express): Resolution {
  const known = remembered.get(line)
  if (known && known.express === express) return known.resolution
  const resolution = createResolution(line, express)
  remembered.set(line, { express, resolution })
  return resolution
}

function createResolution(line: Line, express: Express | undefined): Resolution {
  const facts = new Map<FactKey, Resolved | undefined>()
  const fields = new Map<CheckId, readonly Field[]>()
  const figures = new Map<CheckId, Figures | Refused>()
  const once = <K, V>(map: Map<K, V>, key: K, work: () => V): V => {
    if (map.has(key)) return map.get(key) as V
    const value = work()
    map.set(key, value)
    return value
  }
  const resolution: Resolution = {
    line,
    fact: (key) => once(facts, key, () => decide(resolution, key)),
    fields: (check) => once(fields, check.id, () => readFields(check, textsOf(resolution, check), express)),
    figures: (check) => once(figures, check.id, () => atOnce(evaluateFigures(check, resolution.fields(check)))),
  }
  return resolution
}

function decide(resolution: Resolution, key: FactKey): Resolved | undefined {
  const { line } = resolution
  const candidates = [line.facts[key], derivedFact(resolution, key), kindFact(line, key)].filter(
    (f): f is Fact => f !== undefined && f.text.trim() !== '',
  )
  candidates.sort((a, b) => RANK[a.origin.by] - RANK[b.origin.by])
  const best = candidates[0]
  return best && { ...best, conflicts: candidates.slice(1).filter((c) => c.text !== best.text) }
}

function derivedFact(resolution: Resolution, fact: FactKey): Fact | undefined {
  const rule = DERIVED.find((d) => d.fact === fact)
  const check = rule && checkById(rule.check)
  if (!rule || !check) return undefined
  const figures = resolution.figures(check)
  const value = isRefused(figures) ? undefined : figures.values[rule.output]
  return value === undefined
    ? undefined
    : { text: printText(value, rule.quantity), origin: { by: 'check', check: rule.check } }
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

/** Input texts of a check as the facts fill them: only keys the Line knows. */
function textsOf(resolution: Resolution, check: Check): Record<string, string> {
  const texts: Record<string, string> = {}
  for (const input of check.inputs) {
    const known = resolution.fact(input.fact)
    if (known && suits(input, known.text)) texts[input.key] = known.text
  }
  return texts
}

/** Whether a text that one check accepts can stand in this input of another: one number where one is asked, a known choice. */
function suits(input: Input, text: string): boolean {
  if (input.type.is === 'choice') return input.type.options.some((option) => option.value === text.trim())
  return !text.includes(';') || (input.type.is === 'number' && input.type.many === true)
}

export const resolveFact = (line: Line, fact: FactKey, express?: Express): Resolved | undefined =>
  resolve(line, express).fact(fact)

export const textsForCheck = (check: Check, line: Line, express?: Express): Record<string, string> =>
  textsOf(resolve(line, express), check)

/** Runs a check on a Line at once. */
export function checkLine(check: Check, line: Line, express?: Express): Result {
  return evaluateNow(check, resolve(line, express).fields(check))
}
