/** From an outcome and the facts of a line to advice. Outcome data names rules by id; the rules are code in rules/. */
import type { Express } from '../calc/line/fields.ts'
import type { Line } from '../calc/types.ts'
import { CIRCUIT_RULES } from './rules/circuit.ts'
import { CLASS_RULES } from './rules/classes.ts'
import { contextOf, type Rule } from './rules/context.ts'
import { LINE_RULE_CODE } from './rules/line.ts'
import { PLACE_RULES } from './rules/place.ts'
import { SURGE_RULES } from './rules/surge.ts'
import type { Advice, AdviceItem, Answers, Guide, Outcome } from './types.ts'

const RULES: ReadonlyMap<string, Rule> = new Map(
  [...CIRCUIT_RULES, ...CLASS_RULES, ...LINE_RULE_CODE, ...PLACE_RULES, ...SURGE_RULES].map((rule) => [rule.id, rule]),
)

/** Ids an outcome may name in `rules`. */
export const RULE_IDS: readonly string[] = [...RULES.keys()]

/** Ids of the rules that say to fit, try or place something. */
export const PART_RULE_IDS: readonly string[] = [...RULES.values()].filter((r) => r.advisesPart).map((r) => r.id)

const GATE_FIRST: readonly string[] = [
  'Answer the two safety questions first: open Ask and start at the top.',
  'Until then read the figures, but fit and try nothing.',
]

/**
 * The advice of an outcome for one line. `mayAdviseParts` is true only with the gate clear, no stop, and a line kind
 * that is not barred; otherwise rules that advise parts stay silent and the steps say to answer the gate. Facts that
 * are missing are named in each item, never filled in. `guide` gives the edition the outcome belongs to.
 * @throws RangeError if the outcome is not part of the guide
 */
export function advise({
  guide,
  outcome,
  line,
  gate,
  answers,
  express,
}: {
  readonly guide: Guide
  readonly outcome: Outcome
  readonly line: Line
  readonly gate: Line['gate']
  /** the answer about the box decides the place */
  readonly answers?: Answers
  /** works out calculations typed into fields; without it they are named as not read */
  readonly express?: Express
}): Advice {
  if (!guide.outcomes.some(({ id }) => id === outcome.id))
    throw new RangeError(`"${outcome.id}" is not an outcome of this guide.`)
  const context = contextOf({ outcome, line, answers, express })
  const isStop = outcome.class === 'stop'
  const mayAdviseParts = gate === 'clear' && !isStop && context.kind?.barredWhy === undefined
  const items = outcome.rules.flatMap((id): readonly AdviceItem[] => {
    const rule = RULES.get(id)
    if (rule === undefined || (rule.advisesPart && !mayAdviseParts)) return []
    const said = rule.say(context)
    return said === undefined ? [] : [{ rule: id, ...said }]
  })
  return { outcome, mayAdviseParts, steps: mayAdviseParts || isStop ? outcome.steps : GATE_FIRST, items }
}
