/** Runs a check on its fields, and tries whether a favourable assumption could turn the verdict. */

import type { Check, Figures, GivenValue, Issue, Progress, Refused, Result, Verdict } from '../types.ts'
import { VERDICT_RANK } from '../verdict.ts'
import { contraryOf, type Field } from './fields.ts'

/**
 * Drives the check to its answer in words and pictures; yields progress and may be abandoned between yields.
 * Refused fields give issues. Where a favourable assumption, turned to its contrary, makes the verdict worse,
 * the verdict becomes `unknown` and says which fact to find out.
 */
export function* evaluate(check: Check, fields: readonly Field[]): Generator<Progress, Result> {
  const found = yield* judged(check, fields)
  if (isRefused(found)) return found
  const said = check.explain(found.given, found.figures)
  if (found.blamed.length === 0) return said
  const facts = found.blamed.map(
    (f) => `${f.input.label.toLowerCase()} (taken as ${f.assumed?.text}; ${contraryText(f)} would turn it)`,
  )
  const sentence = `Would be “${found.figures.verdict}”, but it rests on ${facts.join(' and ')}. Enter what is true.`
  return { ...said, verdict: 'unknown', findings: [{ verdict: 'unknown', sentence }, ...said.findings] }
}

/** The numbers of the same answer, its verdict doubted in the same way, without a sentence being written. */
export function* evaluateFigures(check: Check, fields: readonly Field[]): Generator<Progress, Figures | Refused> {
  const found = yield* judged(check, fields)
  if (isRefused(found)) return found
  return found.blamed.length === 0 ? found.figures : { ...found.figures, verdict: 'unknown' }
}

/** Runs to the end at once: for tests and for places that have already decided to wait. */
export function atOnce<R>(running: Generator<Progress, R>): R {
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
  }
}

/** The whole answer at once. */
export const evaluateNow = (check: Check, fields: readonly Field[]): Result => atOnce(evaluate(check, fields))

type Given = Readonly<Record<string, GivenValue | undefined>>
type Judged = {
  readonly given: Given
  readonly figures: Figures
  /** fields whose favourable assumption carries the verdict */
  readonly blamed: readonly Field[]
}

export const isRefused = (outcome: object): outcome is Refused => 'ok' in outcome && outcome.ok === false

function* judged(check: Check, fields: readonly Field[]): Generator<Progress, Judged | Refused> {
  const issues = fields.flatMap((f): readonly Issue[] => {
    if (f.issue) return [f.issue]
    return f.state === 'pending' ? [{ key: f.key, code: 'pending', message: 'Working out the expression…' }] : []
  })
  if (issues.length > 0) return { ok: false, issues }
  const given = givenOf(fields)
  const figures = yield* run(check, given, 0, 0.6)
  if (isRefused(figures)) return figures
  const { verdict } = figures
  const isYes = verdict === 'ok' || verdict === 'marginal'
  return { given, figures, blamed: isYes ? yield* doubtFavourable(check, fields, verdict) : [] }
}

function givenOf(fields: readonly Field[]): Given {
  const given: Record<string, GivenValue | undefined> = {}
  for (const field of fields) given[field.key] = field.value
  return given
}

function* run(check: Check, given: Given, from: number, to: number): Generator<Progress, Figures | Refused> {
  const outcome = check.figures(given)
  if (!isRunning(outcome)) return outcome
  for (;;) {
    const step = outcome.next()
    if (step.done) return step.value
    yield { doneFrac: from + (to - from) * step.value.doneFrac }
  }
}

function isRunning(
  outcome: Figures | Refused | Generator<Progress, Figures | Refused>,
): outcome is Generator<Progress, Figures | Refused> {
  return 'next' in outcome
}

/** The favourable assumptions whose contrary makes the verdict worse: each by itself, or all where only all together do. */
function* doubtFavourable(
  check: Check,
  fields: readonly Field[],
  verdict: Verdict,
): Generator<Progress, readonly Field[]> {
  const doubts = fields.flatMap((field) => {
    const contrary = contraryOf(field)
    return contrary ? [{ field, contrary }] : []
  })
  if (doubts.length === 0) return []
  const all = fields.map((f) => doubts.find((d) => d.field === f)?.contrary ?? f)
  if (!turns(yield* run(check, givenOf(all), 0.6, 0.8), verdict)) return []
  const named: Field[] = []
  for (const [i, doubt] of doubts.entries()) {
    const one = fields.map((f) => (f === doubt.field ? doubt.contrary : f))
    const part = 0.2 / doubts.length
    if (turns(yield* run(check, givenOf(one), 0.8 + i * part, 0.8 + (i + 1) * part), verdict)) named.push(doubt.field)
  }
  return named.length > 0 ? named : doubts.map((d) => d.field)
}

function contraryText(field: Field): string {
  const rule = field.input.whenEmpty
  return rule.do === 'assume' && rule.contrary !== undefined ? rule.contrary : 'another value'
}

function turns(other: Figures | Refused, verdict: Verdict): boolean {
  return !isRefused(other) && other.verdict !== undefined && VERDICT_RANK[other.verdict] > VERDICT_RANK[verdict]
}
