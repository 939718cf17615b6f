/** Proves a guide sound before it ships: every path ends, nothing dangles, everything says why and where from. */
import { FACT_KEYS } from '../calc/ids.ts'
import { isSafetyId } from '../reference/safety.ts'
import { SOURCES } from '../reference/sources.ts'
import { CHECK_KEYS } from './check-keys.ts'
import { optionsOf } from './engine.ts'
import { nextsOf, survey } from './paths.ts'
import { RULE_IDS } from './rules.ts'
import type { Guide, GuideNode, Next, NodeId, Outcome, Problem, Question } from './types.ts'

/** Most taps from the start to any outcome. */
export const MOST_TAPS = 12
const LONGEST_QUESTION = 90
const LONGEST_LABEL = 60
const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*$/

const problem = (code: string, node: NodeId, message: string): Problem => ({ code, node, message })
const isBlank = (text: string): boolean => text.trim() === ''

const targetsOf = (next: Next): readonly NodeId[] =>
  typeof next === 'string' ? [next] : next.map((branch) => branch.go)

/** Every node a question can lead to. */
export function targetsOfQuestion(question: Question): readonly NodeId[] {
  const picker = question.picker
  const picked = picker === undefined ? [] : [...targetsOf(picker.next), picker.barredNext]
  return [...new Set([...picked, ...question.options.flatMap((option) => targetsOf(option.next))])]
}

function lintBranches(guide: Guide, question: Question): readonly Problem[] {
  return nextsOf(question).flatMap((next) => {
    if (typeof next === 'string') return []
    const open = next.at(-1)?.when !== undefined || next.length === 0
    const blind = next.flatMap(({ when }) => {
      if (when?.answered === undefined) return []
      const { node, options } = when.answered
      const asked = guide.nodes.find((each) => each.id === node)
      const known = asked?.is === 'question' ? optionsOf(asked).map((option) => option.id) : []
      return options.every((option) => known.includes(option))
        ? []
        : [problem('condition-unknown', question.id, `A condition names an answer of "${node}" that does not exist.`)]
    })
    return open ? [...blind, problem('branch-open', question.id, 'The last branch must have no condition.')] : blind
  })
}

function lintFacts(question: Question): readonly Problem[] {
  const named = [
    ...(question.picker === undefined ? [] : [question.picker.fact]),
    ...question.options.flatMap((option) => (option.sets ?? []).map((set) => set.fact)),
  ]
  return named
    .filter((fact) => !FACT_KEYS.some((key) => key === fact))
    .map((fact) => problem('fact-unknown', question.id, `"${fact}" is not a fact of a line.`))
}

function lintWording(question: Question): readonly Problem[] {
  const found: Problem[] = []
  if (isBlank(question.why)) found.push(problem('why-missing', question.id, 'It does not say why it is asked.'))
  if (isBlank(question.findOut))
    found.push(problem('find-out-missing', question.id, 'It does not say how to find out.'))
  if (isBlank(question.text) || question.text.length > LONGEST_QUESTION)
    found.push(problem('text-length', question.id, `The question must have 1 to ${LONGEST_QUESTION} characters.`))
  for (const { id, label } of question.options)
    if (isBlank(label) || label.length > LONGEST_LABEL)
      found.push(problem('label-length', question.id, `"${id}" must have a label of 1 to ${LONGEST_LABEL} characters.`))
  return found
}

function lintQuestion(guide: Guide, question: Question): readonly Problem[] {
  const ids = optionsOf(question).map((option) => option.id)
  const found: Problem[] = [...lintWording(question), ...lintFacts(question), ...lintBranches(guide, question)]
  if (new Set(ids).size < ids.length) found.push(problem('option-twice', question.id, 'Two answers have the same id.'))
  for (const { id } of question.options)
    if (!KEBAB.test(id)) found.push(problem('id-form', question.id, `"${id}" is not lower case with hyphens.`))
  if (!question.options.some((option) => option.id === 'dont-know'))
    found.push(problem('dont-know-missing', question.id, 'It has no answer "don\'t know" that leads on.'))
  for (const target of targetsOfQuestion(question))
    if (!guide.nodes.some((node) => node.id === target))
      found.push(problem('dead-end', question.id, `It leads to "${target}", which does not exist.`))
  return found
}

function lintChecks(outcome: Outcome): readonly Problem[] {
  return outcome.checks.flatMap(({ check, prefill }) => {
    const keys = CHECK_KEYS[check]
    if (keys === undefined) return [problem('check-unknown', outcome.id, `The check "${check}" does not exist yet.`)]
    return Object.keys(prefill)
      .filter((key) => !keys.includes(key))
      .map((key) => problem('key-unknown', outcome.id, `The check "${check}" has no input "${key}".`))
  })
}

function lintOutcome(outcome: Outcome): readonly Problem[] {
  const found: Problem[] = [...lintChecks(outcome)]
  if (isBlank(outcome.reason)) found.push(problem('reason-missing', outcome.id, 'It gives no reason.'))
  if (isBlank(outcome.headline)) found.push(problem('headline-missing', outcome.id, 'It has no headline.'))
  if (isBlank(outcome.nextMeasurement))
    found.push(problem('measurement-missing', outcome.id, 'It names no next measurement.'))
  if (outcome.steps.length === 0) found.push(problem('steps-missing', outcome.id, 'It says nothing to do.'))
  if (outcome.sources.length === 0) found.push(problem('source-missing', outcome.id, 'It names no source.'))
  for (const { id } of outcome.sources)
    if (!Object.hasOwn(SOURCES, id)) found.push(problem('source-unknown', outcome.id, `"${id}" is not a known source.`))
  for (const id of outcome.rules)
    if (!RULE_IDS.includes(id)) found.push(problem('rule-unknown', outcome.id, `"${id}" is not a known rule.`))
  return found
}

const cautionsOf = (node: GuideNode): readonly string[] => node.cautions ?? []

function lintNodes(guide: Guide): readonly Problem[] {
  const seen = new Set<NodeId>()
  return guide.nodes.flatMap((node) => {
    const found: Problem[] = []
    if (seen.has(node.id)) found.push(problem('id-twice', node.id, 'Two nodes have this id.'))
    seen.add(node.id)
    if (!KEBAB.test(node.id)) found.push(problem('id-form', node.id, 'The id is not lower case with hyphens.'))
    for (const id of cautionsOf(node))
      if (!isSafetyId(id)) found.push(problem('caution-unknown', node.id, `"${id}" is not a known safety text.`))
    return [...found, ...(node.is === 'question' ? lintQuestion(guide, node) : lintOutcome(node))]
  })
}

const FAULT_WORDS = {
  cycle: 'A path comes back to this node.',
  'dead-end': 'An answer leads to no node.',
  'start-missing': 'The guide does not have its start node.',
} as const

function lintWalk(guide: Guide): readonly Problem[] {
  const { start, reached, faults } = survey(guide)
  const found: Problem[] = faults.map(({ code, node }) => problem(code, node, FAULT_WORDS[code]))
  if (start === undefined) return found
  for (const { id } of guide.nodes)
    if (!reached.has(id)) found.push(problem('unreachable', id, 'No path from the start leads here.'))
  if (start.taps > MOST_TAPS)
    found.push(problem('too-deep', guide.start, `A path takes ${start.taps} taps; ${MOST_TAPS} are allowed.`))
  return found
}

/**
 * Every fault of a guide, empty when it is sound: nodes reachable from the start and free of cycles, no answer that
 * leads nowhere, ids unique and permanent in form, at most 12 taps, every question with why, how to find out and
 * "don't know", every outcome with reason, source, steps and next measurement, and only known facts, conditions,
 * rules, safety texts, checks and keys.
 */
export function lint(guide: Guide): readonly Problem[] {
  return [...lintNodes(guide), ...lintWalk(guide)]
}
