/** The paths of a guide: answers of equal effect taken together, and what can follow what when conditions are judged. */
import { lineKindById } from '../reference/line-kinds.ts'
import { nextOf, optionsOf } from './engine.ts'
import type { Guide, GuideNode, GuideOption, Next, NodeId, Question, TrailStep } from './types.ts'

/** Answers that lead the same way and state the same; the first stands for all. */
export type Choice = { readonly option: GuideOption; readonly alike: readonly string[] }

/** What the conditions of a guide tell apart: per question, the option lists they name. */
type Told = ReadonlyMap<NodeId, readonly (readonly string[])[]>

const nextsOf = (question: Question): readonly Next[] => [
  ...(question.picker === undefined ? [] : [question.picker.next]),
  ...question.options.map((option) => option.next),
]

function toldApart(guide: Guide): Told {
  const told = new Map<NodeId, (readonly string[])[]>()
  for (const node of guide.nodes) {
    if (node.is === 'outcome') continue
    for (const next of nextsOf(node))
      for (const branch of typeof next === 'string' ? [] : next) {
        const answered = branch.when?.answered
        if (answered !== undefined) told.set(answered.node, [...(told.get(answered.node) ?? []), answered.options])
      }
  }
  return told
}

const marks = (told: Told, node: NodeId, optionId: string): string =>
  (told.get(node) ?? []).map((options) => (options.includes(optionId) ? '1' : '0')).join('')

const familyOf = (question: Question, optionId: string): string | undefined =>
  question.picker === undefined ? undefined : lineKindById(optionId)?.family

function effectOf(told: Told, question: Question, option: GuideOption): string {
  const family = familyOf(question, option.id)
  if (family !== undefined) return `family ${family} ${option.gate ?? ''} ${marks(told, question.id, option.id)}`
  const sets = (option.sets ?? []).map(({ fact, text, assumed }) => [fact, text, assumed === true])
  return JSON.stringify([option.next, option.gate ?? '', sets, marks(told, question.id, option.id)])
}

function group(told: Told, question: Question): readonly Choice[] {
  const groups = new Map<string, { option: GuideOption; alike: string[] }>()
  for (const option of optionsOf(question)) {
    const effect = effectOf(told, question, option)
    const known = groups.get(effect)
    const name = familyOf(question, option.id) ?? option.id
    if (known === undefined) groups.set(effect, { option, alike: [name] })
    else if (!known.alike.includes(name)) known.alike.push(name)
  }
  return [...groups.values()]
}

/** Choices of every question, answers of equal effect together; at a picker one for each family of lines. */
export function choicesOf(guide: Guide): ReadonlyMap<NodeId, readonly Choice[]> {
  const told = toldApart(guide)
  return new Map(guide.nodes.flatMap((node) => (node.is === 'question' ? [[node.id, group(told, node)] as const] : [])))
}

/** A node as reached: with the answers that conditions may still ask about. */
export type Reached = {
  readonly node: GuideNode
  /** most taps from here to an outcome */
  readonly taps: number
  /** number of distinct paths from here to an outcome */
  readonly paths: number
}

export type Fault = { readonly code: 'cycle' | 'dead-end' | 'start-missing'; readonly node: NodeId }

/**
 * Walks every path that answers can take, conditions judged. Gives what the start reaches (taps, number of paths), the
 * ids reached, and the faults met: cycles and answers that lead nowhere.
 */
export function survey(guide: Guide): {
  readonly start: Reached | undefined
  readonly reached: ReadonlySet<NodeId>
  readonly faults: readonly Fault[]
} {
  const byId = new Map(guide.nodes.map((node) => [node.id, node]))
  const told = toldApart(guide)
  const choices = choicesOf(guide)
  const known = new Map<string, Reached>()
  const onPath = new Set<NodeId>()
  const reached = new Set<NodeId>()
  const faults: Fault[] = []

  const signature = (trail: readonly TrailStep[]): string =>
    trail
      .filter((step) => told.has(step.node.id) || step.node.picker !== undefined)
      .map((step) => `${step.node.id}${marks(told, step.node.id, step.optionId)}${familyOf(step.node, step.optionId)}`)
      .join(' ')

  const follow = (question: Question, choice: Choice, trail: readonly TrailStep[]): Reached | undefined => {
    const step: TrailStep = { node: question, optionId: choice.option.id, label: choice.option.label }
    const path = [...trail, step]
    const next = byId.get(nextOf(choice.option.next, path) ?? '')
    if (next === undefined) faults.push({ code: 'dead-end', node: question.id })
    return next === undefined ? undefined : visit(next, path)
  }

  const visit = (node: GuideNode, trail: readonly TrailStep[]): Reached => {
    const key = `${node.id} ${signature(trail)}`
    const before = known.get(key)
    if (before !== undefined) return before
    reached.add(node.id)
    if (onPath.has(node.id)) {
      faults.push({ code: 'cycle', node: node.id })
      return { node, taps: 0, paths: 0 }
    }
    onPath.add(node.id)
    const following =
      node.is === 'outcome' ? [] : (choices.get(node.id) ?? []).flatMap((choice) => follow(node, choice, trail) ?? [])
    onPath.delete(node.id)
    const found: Reached =
      node.is === 'outcome'
        ? { node, taps: 0, paths: 1 }
        : {
            node,
            taps: 1 + Math.max(0, ...following.map((each) => each.taps)),
            paths: following.reduce((sum, each) => sum + each.paths, 0),
          }
    known.set(key, found)
    return found
  }

  const first = byId.get(guide.start)
  if (first === undefined) return { start: undefined, reached, faults: [{ code: 'start-missing', node: guide.start }] }
  return { start: visit(first, []), reached, faults }
}
