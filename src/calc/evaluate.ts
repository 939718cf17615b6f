/** Runs a check on its fields, and tries whether a favourable assumption could turn the verdict. */
import { contraryOf, type Field } from './fields.ts'
import type { Check, GivenValue, Issue, Progress, Result, Success, Verdict } from './types.ts'
import { VERDICT_RANK } from './verdict.ts'

/**
 * Drives the check to its result; yields progress and may be abandoned between yields.
 * Refused fields give issues. Where a favourable assumption, turned to its contrary, makes the verdict worse,
 * the verdict becomes `unknown` and says which fact to find out.
 */
export function* evaluate(check: Check, fields: readonly Field[]): Generator<Progress, Result> {
  const issues = fields.flatMap((f): readonly Issue[] => {
    if (f.issue) return [f.issue]
    return f.state === 'pending' ? [{ key: f.key, code: 'pending', message: 'Working out the expression…' }] : []
  })
  if (issues.length > 0) return { ok: false, issues }
  const result = yield* run(check, fields, 0, 0.6)
  if (!result.ok || result.verdict === undefined || result.verdict === 'fails' || result.verdict === 'unknown')
    return result
  return yield* doubtFavourable(check, fields, result, result.verdict)
}

/** Runs to the end at once: for tests and for places that have already decided to wait. */
export function evaluateNow(check: Check, fields: readonly Field[]): Result {
  const running = evaluate(check, fields)
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
  }
}

function* run(check: Check, fields: readonly Field[], from: number, to: number): Generator<Progress, Result> {
  const given: Record<string, GivenValue | undefined> = {}
  for (const field of fields) given[field.key] = field.value
  const outcome = check.compute(given)
  if (!isRunning(outcome)) return outcome
  for (;;) {
    const step = outcome.next()
    if (step.done) return step.value
    yield { doneFrac: from + (to - from) * step.value.doneFrac }
  }
}

function isRunning(outcome: Result | Generator<Progress, Result>): outcome is Generator<Progress, Result> {
  return 'next' in outcome
}

function* doubtFavourable(
  check: Check,
  fields: readonly Field[],
  result: Success,
  verdict: Verdict,
): Generator<Progress, Result> {
  const doubts = fields.flatMap((field) => {
    const contrary = contraryOf(field)
    return contrary ? [{ field, contrary }] : []
  })
  if (doubts.length === 0) return result
  const all = fields.map((f) => doubts.find((d) => d.field === f)?.contrary ?? f)
  if (!turns(yield* run(check, all, 0.6, 0.8), verdict)) return result
  const named: Field[] = []
  for (const [i, doubt] of doubts.entries()) {
    const one = fields.map((f) => (f === doubt.field ? doubt.contrary : f))
    const part = 0.2 / doubts.length
    if (turns(yield* run(check, one, 0.8 + i * part, 0.8 + (i + 1) * part), verdict)) named.push(doubt.field)
  }
  const blamed = named.length > 0 ? named : doubts.map((d) => d.field)
  const facts = blamed.map(
    (f) => `${f.input.label.toLowerCase()} (taken as ${f.assumed?.text}; ${contraryText(f)} would turn it)`,
  )
  return {
    ...result,
    verdict: 'unknown',
    findings: [
      {
        verdict: 'unknown',
        sentence: `Would be “${verdict}”, but it rests on ${facts.join(' and ')}. Enter what is true.`,
      },
      ...result.findings,
    ],
  }
}

function contraryText(field: Field): string {
  const rule = field.input.whenEmpty
  return rule.do === 'assume' && rule.contrary !== undefined ? rule.contrary : 'another value'
}

function turns(other: Result, verdict: Verdict): boolean {
  return other.ok && other.verdict !== undefined && VERDICT_RANK[other.verdict] > VERDICT_RANK[verdict]
}
