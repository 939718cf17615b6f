/** Faults of a guide: its outcomes, and everything that one row names in another. */
import { SAFETY_TEXTS } from '../reference/safety.ts'
import { SOURCES } from '../reference/sources.ts'
import { CHECK_KEYS } from './check-keys.ts'
import { lintTable } from './investigate/lint.ts'
import { FIELD_NOTES } from './notes.ts'
import { RULE_IDS } from './rules.ts'
import type { Guide, Outcome, Problem } from './types.ts'

const isBlank = (text: string): boolean => text.trim() === ''
const problem = (code: string, node: string, message: string): Problem => ({ code, node, message })

function lintChecks({ id, checks }: Outcome): readonly Problem[] {
  return checks.flatMap(({ check, prefill }) => {
    const keys = CHECK_KEYS[check]
    if (keys === undefined) return [problem('check-unknown', id, `The check "${check}" does not exist.`)]
    return Object.keys(prefill)
      .filter((key) => !keys.includes(key))
      .map((key) => problem('key-unknown', id, `The check "${check}" has no input "${key}".`))
  })
}

function lintOutcome(outcome: Outcome): readonly Problem[] {
  const found: Problem[] = [...lintChecks(outcome)]
  const add = (code: string, message: string) => found.push(problem(code, outcome.id, message))
  if (isBlank(outcome.reason)) add('reason-missing', 'It gives no reason.')
  if (isBlank(outcome.headline)) add('headline-missing', 'It has no headline.')
  if (isBlank(outcome.nextMeasurement)) add('measurement-missing', 'It names no next measurement.')
  if (outcome.steps.length === 0) add('steps-missing', 'It says nothing to do.')
  for (const { id } of outcome.sources)
    if (!Object.hasOwn(SOURCES, id)) add('source-unknown', `"${id}" is not a known source.`)
  for (const id of outcome.rules) if (!RULE_IDS.includes(id)) add('rule-unknown', `"${id}" is not a known rule.`)
  return found
}

function lintNames(guide: Guide): readonly Problem[] {
  const outcomes = new Set(guide.outcomes.map(({ id }) => id))
  const items = new Set(guide.evidence.map(({ id }) => id))
  const notes = new Set(FIELD_NOTES.map(({ id }) => id))
  const found: Problem[] = []
  for (const { id, outcome } of guide.suspects)
    if (!outcomes.has(outcome)) found.push(problem('outcome-unknown', id, `"${outcome}" is not an outcome.`))
  for (const { id, note, options, cautions } of guide.evidence) {
    if (outcomes.has(id)) found.push(problem('id-twice', id, 'An item and an outcome have this id.'))
    if (note !== undefined && !notes.has(note)) found.push(problem('note-unknown', id, `"${note}" is not a note.`))
    for (const { stop } of options)
      if (stop !== undefined && !outcomes.has(stop) && !items.has(stop))
        found.push(problem('stop-unknown', id, `"${stop}" is not a stop.`))
    found.push(...lintCautions(id, cautions))
  }
  for (const { id, cautions } of guide.outcomes) found.push(...lintCautions(id, cautions))
  return found
}

const lintCautions = (id: string, cautions: readonly string[] = []): readonly Problem[] =>
  cautions
    .filter((caution) => !Object.hasOwn(SAFETY_TEXTS, caution))
    .map((caution) => problem('caution-unknown', id, `"${caution}" is not a known safety text.`))

/**
 * Every fault of a guide, empty when it is sound: a sound table (see investigate/lint.ts), outcomes with reason, source,
 * steps and next measurement, and only known outcomes, stops, notes, rules, safety texts, checks and keys.
 */
export function lint(guide: Guide): readonly Problem[] {
  return [...lintTable(guide), ...lintNames(guide), ...guide.outcomes.flatMap(lintOutcome)]
}
