/**
 * The walk through the question tree. Where one stands is never stored: it is derived from the answers by replay from
 * the start, so an early answer can be changed and the later ones that still apply stay.
 */
import type { Fact, FactKey, Line } from '../calc/types.ts'
import { LINE_KINDS } from '../reference/line-kinds.ts'
import type {
  Answers,
  Condition,
  Guide,
  GuideNode,
  GuideOption,
  Next,
  NodeId,
  Position,
  Question,
  SetFact,
  Shown,
  TrailStep,
} from './types.ts'

/** Said where a node is opened by address before the gate is answered. */
export const GATE_UNANSWERED =
  'The safety questions are not answered yet: figures may be read, but no part is advised until they are.'
/** Said where the node of an address is not on the path of the answers. */
export const OFF_PATH = 'You came here by address; your answers lead to another place.'
/** Said where an address names a node the guide does not have, for instance from another edition. */
export const NO_SUCH_NODE = 'This address names no question or result of this guide; here is where your answers lead.'

const kindById = new Map(LINE_KINDS.map((kind) => [kind.id, kind]))

/** The node with this id, or undefined. */
export function nodeById(guide: Guide, id: NodeId): GuideNode | undefined {
  return guide.nodes.find((node) => node.id === id)
}

/**
 * What can be answered to a question, in the order shown. At the picker: every line kind (searchable, barred ones
 * included, so that they can be named and stopped), then the question's own options such as "Don't know".
 */
export function optionsOf(question: Question): readonly GuideOption[] {
  const picker = question.picker
  if (picker === undefined) return question.options
  const kinds = LINE_KINDS.map((kind): GuideOption => {
    const sets: readonly SetFact[] = [{ fact: picker.fact, text: kind.id }]
    return kind.barredWhy === undefined
      ? { id: kind.id, label: kind.name, sets, next: picker.next }
      : { id: kind.id, label: kind.name, sets, gate: 'barred', next: picker.barredNext }
  })
  return [...kinds, ...question.options]
}

function familyOn(trail: readonly TrailStep[]): string | undefined {
  const picked = trail.findLast((step) => step.node.picker !== undefined)
  return picked && kindById.get(picked.optionId)?.family
}

function holds(when: Condition | undefined, trail: readonly TrailStep[]): boolean {
  if (when === undefined) return true
  const { answered, kindFamily } = when
  const isAnswered =
    answered === undefined ||
    trail.some((step) => step.node.id === answered.node && answered.options.includes(step.optionId))
  return isAnswered && (kindFamily === undefined || kindFamily.includes(familyOn(trail) ?? ''))
}

/** The node an option leads to, given the path up to and including the answer; undefined if no branch holds. */
export function nextOf(next: Next, trail: readonly TrailStep[]): NodeId | undefined {
  return typeof next === 'string' ? next : next.find((branch) => holds(branch.when, trail))?.go
}

function gateOn(options: readonly GuideOption[], current: GuideNode): Position['gate'] {
  const isStop = current.is === 'outcome' && current.class === 'stop'
  if (isStop || options.some((option) => option.gate === 'barred')) return 'barred'
  return options.some((option) => option.gate === 'clear') ? 'clear' : 'unknown'
}

/**
 * Where the answers lead: the path from the start, the node one stands on, the answers kept but not on the path, and
 * what the safety gate says. Stops at the first answer that no longer exists; a node is never passed twice.
 * @throws RangeError if the guide has no start node
 */
export function replay(guide: Guide, answers: Answers): Position {
  const byId = new Map(guide.nodes.map((node) => [node.id, node]))
  const trail: TrailStep[] = []
  const taken: GuideOption[] = []
  const seen = new Set<NodeId>()
  let current = byId.get(guide.start)
  if (current === undefined) throw new RangeError(`The guide starts at "${guide.start}", which it does not have.`)
  while (current.is === 'question' && !seen.has(current.id)) {
    const question: Question = current
    const optionId = Object.hasOwn(answers, question.id) ? answers[question.id] : undefined
    const option = optionsOf(question).find((each) => each.id === optionId)
    if (option === undefined) break
    const step: TrailStep = { node: question, optionId: option.id, label: option.label }
    const following = nextOf(option.next, [...trail, step])
    const next = following === undefined ? undefined : byId.get(following)
    if (next === undefined) break
    seen.add(question.id)
    trail.push(step)
    taken.push(option)
    current = next
  }
  const used = new Set(trail.map((step) => step.node.id))
  const unusedAnswers = Object.keys(answers).filter((id) => !used.has(id))
  return { trail, current, unusedAnswers, gate: gateOn(taken, current) }
}

/**
 * The answers with this one given or changed. Later answers are kept; those that do not apply any more simply fall off
 * the path.
 * @throws RangeError if the node is no question of the guide or has no such option
 */
export function answer(guide: Guide, answers: Answers, nodeId: NodeId, optionId: string): Answers {
  const node = nodeById(guide, nodeId)
  if (node?.is !== 'question') throw new RangeError(`"${nodeId}" is not a question of this guide.`)
  if (!optionsOf(node).some((option) => option.id === optionId))
    throw new RangeError(`"${optionId}" is not an answer to "${nodeId}".`)
  return { ...answers, [nodeId]: optionId }
}

function factFrom(node: NodeId, set: SetFact): Fact {
  return set.assumed === true
    ? { text: set.text, origin: { by: 'assumed', why: set.why ?? 'not answered', favourable: false } }
    : { text: set.text, origin: { by: 'answer', node } }
}

/** The facts the answers of the path state, each with the question it came from. A later answer replaces an earlier. */
export function factsFrom(_guide: Guide, position: Position): Line['facts'] {
  const facts: { [K in FactKey]?: Fact } = {}
  for (const { node, optionId } of position.trail) {
    const option = optionsOf(node).find((each) => each.id === optionId)
    for (const set of option?.sets ?? []) facts[set.fact] = factFrom(node.id, set)
  }
  return facts
}

/**
 * What an address shows. Without a node, or with one the guide does not have: where the answers lead. A node of the
 * path: that node with its answer, ready to be changed. Any other node is shown too, with a notice.
 */
export function shownNode(guide: Guide, answers: Answers, nodeIdFromAddress?: NodeId): Shown {
  const position = replay(guide, answers)
  if (nodeIdFromAddress === undefined || nodeIdFromAddress === position.current.id)
    return { node: position.current, position, onPath: true }
  const node = nodeById(guide, nodeIdFromAddress)
  if (node === undefined) return { node: position.current, position, onPath: true, notice: NO_SUCH_NODE }
  const step = position.trail.find((each) => each.node.id === node.id)
  if (step !== undefined) return { node, position, onPath: true, chosen: step.optionId }
  const notice = position.gate === 'clear' ? OFF_PATH : `${OFF_PATH} ${GATE_UNANSWERED}`
  return { node, position, onPath: false, notice }
}
