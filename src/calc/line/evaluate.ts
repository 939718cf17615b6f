/** Runs a check on its fields, and tries whether a favourable assumption could turn the verdict. */

import { lineKindById } from '../../reference/line-kinds.ts'
import type {
  Check,
  Figures,
  GivenValue,
  Issue,
  Progress,
  Refused,
  Resting,
  Result,
  Success,
  Verdict,
  WordlessCheck,
} from '../types.ts'
import { aroundWord, VERDICT_RANK, VERDICT_WORDS } from '../verdict.ts'
import { type Contrary, contraryOf, type Field } from './fields.ts'
import { nameOf, needsOf } from './missing.ts'

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
  const resting = restingOf(check, found)
  return resting ? { ...said, ...resting } : doubted(found, said)
}

/** An answer that rests on what was assumed: the fact that would decide it, and what it would be as assumed. */
function doubted({ blamed, figures: { verdict = 'unknown' } }: Judged, said: Success): Success {
  const word = VERDICT_WORDS[verdict]
  const inputs = blamed.map(({ field }) => field.input)
  const names = inputs.map(nameOf).join(' and ')
  const facts = blamed.map(
    ({ field, text }) => `${field.input.label.toLowerCase()} (taken as ${field.assumed?.text}; ${text} would turn it)`,
  )
  const sentence = `Would be “${word}”, but it rests on ${facts.join(' and ')}. Enter what is true.`
  const needs = needsOf(inputs, inputs[0]?.key)
  return {
    ...said,
    verdict: 'unknown',
    headline: `Not known: needs ${names}. ${asAssumed(said, verdict)}`,
    ...(needs === undefined ? {} : { needs }),
    findings: [{ verdict: 'unknown', sentence }, ...said.findings],
  }
}

/** What it would be as assumed, with its part and its limits: "As assumed it would be “yes” (10 nF): the noise needs 2 nF." */
export function asAssumed({ headline }: Pick<Success, 'headline'>, verdict: Verdict): string {
  const around = aroundWord(headline, verdict)
  if (around === undefined) return `As assumed: ${headline}`
  const about = around.before.replace(/: $/u, '')
  const because = around.after.replace(/^[.:] /u, '')
  return `As assumed it would be “${VERDICT_WORDS[verdict]}”${about === '' ? '' : ` (${about})`}: ${because.charAt(0).toLowerCase()}${because.slice(1)}`
}

/** The numbers of the same answer, its verdict doubted in the same way, without a sentence being written. */
export function* evaluateFigures(
  check: WordlessCheck,
  fields: readonly Field[],
): Generator<Progress, Figures | Refused> {
  const found = yield* judged(check, fields)
  if (isRefused(found)) return found
  if (found.blamed.length === 0) return found.figures
  const restsOn = found.blamed.map(({ field }) => field.key)
  return { ...found.figures, verdict: restingOf(check, found)?.verdict ?? 'unknown', restsOn }
}

const restingOf = (check: WordlessCheck, { given, figures, blamed }: Judged): Resting | undefined =>
  check.resting?.(
    given,
    figures,
    blamed.map(({ field }) => field.key),
  )

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
  readonly blamed: readonly Contrary[]
}

export const isRefused = (outcome: object): outcome is Refused => 'ok' in outcome && outcome.ok === false

function* judged(check: WordlessCheck, fields: readonly Field[]): Generator<Progress, Judged | Refused> {
  const open = fields.filter(({ issue, state }) => issue !== undefined || state === 'pending')
  if (open.length > 0) return { ok: false, issues: onceEach(open.map(issueOf)) }
  const given = givenOf(fields)
  const figures = yield* run(check, given, 0, 0.6)
  if (isRefused(figures)) return figures
  const { verdict } = figures
  const isYes = verdict === 'ok' || verdict === 'marginal'
  return { given, figures, blamed: isYes ? yield* doubtFavourable(check, fields, given, figures, verdict) : [] }
}

/** The code of a field that a check would fill which refuses its texts on this line. */
export const UNREAD = 'unread'

/** One check that refuses may leave several fields open, and for what is refused here too: it is said once. */
const onceEach = (issues: readonly Issue[]): readonly Issue[] =>
  issues.filter(
    ({ code, message }, i) =>
      code !== UNREAD ||
      (issues.findIndex((other) => other.message === message) === i &&
        !issues.some((other) => other.code !== UNREAD && message.endsWith(other.message))),
  )

const issueOf = ({ key, issue }: Field): Issue =>
  issue ?? { key, code: 'pending', message: 'Working out the expression…' }

function givenOf(fields: readonly Field[]): Given {
  const given: Record<string, GivenValue | undefined> = {}
  for (const field of fields) given[field.key] = field.value
  return given
}

function* run(check: WordlessCheck, given: Given, from: number, to: number): Generator<Progress, Figures | Refused> {
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
  check: WordlessCheck,
  fields: readonly Field[],
  given: Given,
  found: Figures,
  verdict: Verdict,
): Generator<Progress, readonly Contrary[]> {
  const kind = lineKindById(String(given['lineKind'] ?? ''))
  const doubts = fields.flatMap((field) => {
    const contrary = contraryOf(field, kind)
    if (contrary === undefined || !matters(field, given) || check.ignores?.(found, field.key)) return []
    return [contrary]
  })
  if (doubts.length === 0) return []
  const all = against(given, doubts)
  // An answer worked out anew costs as much as the first one: it is only asked for where all together turn it.
  if (!check.doubted && !turns(yield* again(check, all, found, 0.6, 0.8), verdict)) return []
  const named: Contrary[] = []
  for (const [i, doubt] of doubts.entries()) {
    const part = 0.2 / doubts.length
    const other = yield* again(check, against(given, [doubt]), found, 0.8 + i * part, 0.8 + (i + 1) * part)
    if (turns(other, verdict)) named.push(doubt)
  }
  if (named.length > 0) return named
  const { doubted } = check
  if (!doubted) return doubts
  // one alone was tried already
  if (doubts.length === 1 || !turns(doubted(all, found), verdict)) return []
  // Only together: named are those without which the rest would not turn it.
  const without = (doubt: Contrary): Given =>
    against(
      given,
      doubts.filter((one) => one !== doubt),
    )
  const needed = doubts.filter((doubt) => !turns(doubted(without(doubt), found), verdict))
  return needed.length > 0 ? needed : doubts
}

/** What was given, with some assumptions gone the other way. */
function against(given: Given, doubts: readonly Contrary[]): Given {
  const turned: Record<string, GivenValue | undefined> = { ...given }
  for (const { field } of doubts) turned[field.key] = field.value
  return turned
}

/** Whether the field beside which an assumption counts holds anything: a choke that is not there has no capacitance. */
function matters({ input: { whenEmpty } }: Field, given: Given): boolean {
  const beside = whenEmpty.do === 'assume' ? whenEmpty.beside : undefined
  return beside === undefined || Number(given[beside] ?? 0) > 0
}

function* again(
  check: WordlessCheck,
  given: Given,
  found: Figures,
  from: number,
  to: number,
): Generator<Progress, Figures | Refused> {
  if (!check.doubted) return yield* run(check, given, from, to)
  yield { doneFrac: from }
  return check.doubted(given, found)
}

function turns(other: Figures | Refused, verdict: Verdict): boolean {
  return !isRefused(other) && other.verdict !== undefined && VERDICT_RANK[other.verdict] > VERDICT_RANK[verdict]
}
