/** The paths of a guide: answers of equal effect taken together, and what can follow what when conditions are judged. */
import { lineKindById } from '../reference/line-kinds.ts'
import { nextOf, optionsOf } from './engine.ts'
import type { Guide, GuideNode, GuideOption, Next, NodeId, Question, TrailStep } from './types.ts'

/** Answers that lead the same way and state the same; the first stands for all. */
export type Choice = { readonly option: GuideOption; readonly alike: readonly string[] }

/** What the conditions of a guide tell apart: per question, the option lists they name. */
type Told = ReadonlyMap<NodeId, readonly (readonly string[])[]>

/** Every `next` a question holds, the picker's first. */
export const nextsOf = (question: Question): readonly Next[] => [
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

/** What a walk met that no path may have. */
export type Fault = { readonly code: 'cycle' | 'dead-end' | 'start-missing'; readonly node: NodeId }

/** What the walk of `survey` carries along. */
type Walk = {
  readonly byId: ReadonlyMap<NodeId, GuideNode>
  readonly told: Told
  readonly choices: ReadonlyMap<NodeId, readonly Choice[]>
  /** by node and by the answers that conditions can still ask about */
  readonly known: Map<string, Reached>
  readonly onPath: Set<NodeId>
  readonly reached: Set<NodeId>
  readonly faults: Fault[]
}

function keyOf({ told }: Walk, node: GuideNode, trail: readonly TrailStep[]): string {
  const heard = trail
    .filter((step) => told.has(step.node.id) || step.node.picker !== undefined)
    .map((step) => `${step.node.id}${marks(told, step.node.id, step.optionId)}${familyOf(step.node, step.optionId)}`)
  return [node.id, ...heard].join(' ')
}

function follow(walk: Walk, trail: readonly TrailStep[], question: Question, { option }: Choice): readonly Reached[] {
  const path = [...trail, { node: question, optionId: option.id, label: option.label }]
  const next = walk.byId.get(nextOf(option.next, path) ?? '')
  if (next !== undefined) return [visit(walk, path, next)]
  walk.faults.push({ code: 'dead-end', node: question.id })
  return []
}

function visitQuestion(walk: Walk, trail: readonly TrailStep[], question: Question): Reached {
  walk.onPath.add(question.id)
  const following = (walk.choices.get(question.id) ?? []).flatMap((choice) => follow(walk, trail, question, choice))
  walk.onPath.delete(question.id)
  return {
    node: question,
    taps: 1 + Math.max(0, ...following.map((each) => each.taps)),
    paths: following.reduce((sum, each) => sum + each.paths, 0),
  }
}

function visit(walk: Walk, trail: readonly TrailStep[], node: GuideNode): Reached {
  walk.reached.add(node.id)
  if (node.is === 'outcome') return { node, taps: 0, paths: 1 }
  if (walk.onPath.has(node.id)) {
    walk.faults.push({ code: 'cycle', node: node.id })
    return { node, taps: 0, paths: 0 }
  }
  const key = keyOf(walk, node, trail)
  const found = walk.known.get(key) ?? visitQuestion(walk, trail, node)
  walk.known.set(key, found)
  return found
}

/**
 * Walks every path that answers can take, conditions judged. Gives what the start reaches (taps, number of paths), the
 * ids reached, and the faults met: cycles and answers that lead nowhere.
 */
export function survey(guide: Guide): {
  readonly start: Reached | undefined
  readonly reached: ReadonlySet<NodeId>
  readonly faults: readonly Fault[]
} {
  const walk: Walk = {
    byId: new Map(guide.nodes.map((node) => [node.id, node])),
    told: toldApart(guide),
    choices: choicesOf(guide),
    known: new Map(),
    onPath: new Set(),
    reached: new Set(),
    faults: [],
  }
  const first = walk.byId.get(guide.start)
  if (first === undefined) walk.faults.push({ code: 'start-missing', node: guide.start })
  const start = first === undefined ? undefined : visit(walk, [], first)
  return { start, reached: walk.reached, faults: walk.faults }
}
