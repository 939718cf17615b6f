/**
 * Where a complaint stands. Nothing of it is stored: it is derived from the answers each time, so an early answer can
 * be changed and every later one stays.
 */
import type { Fact, FactKey, Line } from '../calc/types.ts'
import { LINE_KINDS } from '../reference/line-kinds.ts'
import { causesOf } from './investigate/causes.ts'
import { foundCause } from './investigate/ending.ts'
import { CLOSED, newestOf, voidedBy } from './investigate/events.ts'
import { applies, FIRST, nextEvidence, openTestsOf } from './investigate/next.ts'
import { measureEnd, partStep, planStep, type Step } from './investigate/part.ts'
import { afterRepair, type Standing, standings as standingsOf, symptomOf } from './investigate/standing.ts'
import { SET_ASIDE, UNKNOWN } from './investigate/table.ts'
import type { Event, Evidence, Reading } from './investigation.ts'
import { RETIRED, translateAnswers, translated, translateEvents } from './retired.ts'
import type {
  Answers,
  Guide,
  GuideNode,
  NodeId,
  Outcome,
  Position,
  Reason,
  SetFact,
  Shown,
  TrailStep,
} from './types.ts'

/** Said where a node is opened by address before the gate is answered. */
export const GATE_UNANSWERED =
  'The safety questions are not answered yet: figures may be read, but no part is advised until they are.'
/** Said where the node of an address is not where the answers lead. */
export const OFF_PATH = 'You came here by address; your answers lead to another place.'
/** Said where an address names a node the guide does not have, for instance from another edition. */
export const NO_SUCH_NODE = 'This address names no question or result of this guide; here is where your answers lead.'

/** Whether a node asks. */
export const isEvidence = (node: GuideNode): node is Evidence => 'options' in node

/** The item or outcome with this id, or undefined. */
export function nodeById(guide: Guide, id: NodeId): GuideNode | undefined {
  return guide.evidence.find((node) => node.id === id) ?? guide.outcomes.find((node) => node.id === id)
}

const ASIDE: Reading = {
  id: SET_ASIDE,
  label: 'Cannot be done now',
  says: {},
  means: 'It stays in the list of open tests.',
}

/**
 * What can be answered, in the order shown. At a picker: every line kind (barred ones included, so that they can be
 * named and stopped), then the item's own answers. Retired answers are understood and not offered.
 */
export function optionsOf(item: Evidence): readonly Reading[] {
  if (item.picker === undefined) return item.options
  const kinds = LINE_KINDS.map((kind): Reading => {
    const sets: readonly SetFact[] = [{ fact: 'lineKind', text: kind.id }]
    const means = kind.barredWhy ?? 'The kind says what its signal can stand.'
    const row = { id: kind.id, label: kind.name, sets, says: {}, means }
    return kind.barredWhy === undefined ? row : { ...row, gate: 'barred', stop: 'stop-kind' }
  })
  return [...kinds, ...item.options]
}

/** The reading an answer stands for; a test may also be set aside. */
export function readingOf(item: Evidence, optionId: string): Reading | undefined {
  return optionsOf(item).find(({ id }) => id === optionId) ?? (optionId === SET_ASIDE ? ASIDE : undefined)
}

type Answered = TrailStep & { readonly reading: Reading }

function trailOf(guide: Guide, answers: Answers, voided: ReadonlySet<NodeId>): readonly Answered[] {
  const byId = new Map(guide.evidence.map((each) => [each.id, each]))
  return Object.entries(answers).flatMap(([id, optionId]) => {
    const node = byId.get(id)
    const reading = node && readingOf(node, optionId)
    if (node === undefined || reading === undefined) return []
    const isVoid = voided.has(id) && { isVoid: true as const }
    return [{ node, optionId, label: reading.label, means: reading.means, reading, ...isVoid }]
  })
}

function gateOf(readings: readonly Reading[], danger: string | undefined): Position['gate'] {
  if (readings.some(({ gate }) => gate === 'barred')) return 'barred'
  return danger === 'none' && readings.some(({ gate }) => gate === 'clear') ? 'clear' : 'unknown'
}

/** The stop that the answers ask for; danger comes before the line. */
function stopOf(guide: Guide, readings: readonly Reading[]): Outcome | undefined {
  const id = readings.find(({ stop }) => stop !== undefined)?.stop
  return guide.outcomes.find((each) => each.id === id)
}

function reasonsOf(trail: readonly TrailStep[], members: readonly Standing[]): readonly Reason[] {
  return members.flatMap(({ suspect, because }) =>
    because.flatMap(({ evidence, say }) => {
      const step = trail.find(({ node }) => node.id === evidence)
      return step && (say === 'for' || say === 'proves') ? [{ step, suspect }] : []
    }),
  )
}

type Stage = { readonly step: Step; readonly found?: Position['found'] }

function stageOf(guide: Guide, answers: Answers, all: readonly Standing[], gate: Position['gate']): Stage {
  const first = FIRST.find((id) => {
    const item = guide.evidence.find((each) => each.id === id)
    return item !== undefined && answers[id] === undefined && applies(item, answers)
  })
  if (first !== undefined) return { step: { ask: first } }
  if (symptomOf(answers) === 'plan') return { step: planStep(answers) }
  const found = foundCause(causesOf(all))
  if (found !== undefined) return { step: partStep(found, answers), found }
  const next = nextEvidence(guide, answers, all, gate === 'clear')
  return { step: next === undefined ? { end: measureEnd(answers) } : { ask: next.id } }
}

/** The node a step leads to; a guide without it would not pass its own test. */
function nodeOf(guide: Guide, step: Step): GuideNode {
  const id = 'ask' in step ? step.ask : step.end
  const node = nodeById(guide, id)
  if (node === undefined) throw new RangeError(`The guide has no "${id}".`)
  return node
}

/** The option that counts: a trial whose repetition differed tells nothing. */
const counted = ({ optionId, isVoid }: TrailStep): string => (isVoid ? UNKNOWN : optionId)

/**
 * Where the answers lead: what is asked next or the outcome, who still fits and because of what, and what the safety
 * gate says. Answers of earlier editions are understood; answers this guide does not know are kept aside. `history`: the
 * events behind the answers; a trial whose repetition differed counts as not known.
 * @throws RangeError if the guide lacks a node its own engine leads to
 */
export function replay(guide: Guide, stored: Answers, history: readonly Event[] = []): Position {
  const answers = translateAnswers(stored)
  const voided = voidedBy(translateEvents(history), answers)
  const trail = trailOf(guide, answers, voided)
  const readings = trail.map(({ reading }) => reading)
  const gate = gateOf(readings, answers['gate-danger'])
  const known = Object.fromEntries(trail.map((step) => [step.node.id, counted(step)]))
  const withRepairs: Answers = { ...known, ...repairsOf(answers, voided) }
  const closed = closedBy(withRepairs, answers)
  const standings = standingsOf(guide, withRepairs)
  const { step, found } = stageOf(guide, withRepairs, standings, gate)
  const isUsed = (id: NodeId): boolean => Object.hasOwn(known, id) || REPAIR.test(id) || id === CLOSED
  const stop = stopOf(guide, readings)
  let openTests: Position['openTests'] | undefined
  return {
    answers: withRepairs,
    trail,
    current: nodeOf(guide, step),
    gate,
    isPaperOnly: answers['gate-lines'] === 'dead-design' && answers['gate-danger'] === 'none',
    ...(stop === undefined ? {} : { stop }),
    standings,
    fits: standings.filter(({ fits }) => fits).length,
    ...(found === undefined ? {} : { found }),
    ...(closed === undefined ? {} : { closed }),
    reasons: reasonsOf(trail, found === undefined ? [] : found.members.length > 0 ? found.members : [found.cure]),
    // Only a few screens list them, and ranking them all takes longer than everything else here.
    get openTests() {
      openTests ??= openTestsOf(guide, withRepairs, standings)
      return openTests
    },
    setAside: trail.flatMap(({ node, optionId }) => (optionId === SET_ASIDE ? [node] : [])),
    unusedAnswers: Object.keys(answers).filter((id) => !isUsed(id)),
  }
}

const REPAIR = /^after-/

function repairsOf(answers: Answers, voided: ReadonlySet<NodeId>): Answers {
  return Object.fromEntries(Object.entries(answers).filter(([id]) => REPAIR.test(id) && !voided.has(id)))
}

/** Closed with this suspect, as long as its repair still counts as the cure. */
function closedBy(known: Answers, answers: Answers): string | undefined {
  const suspect = answers[CLOSED]
  return suspect !== undefined && known[afterRepair(suspect)] === 'gone' ? suspect : undefined
}

/**
 * The answers with this one given or changed; every other one is kept, whatever it leads to.
 * @throws RangeError if the node is no item of the guide or has no such answer
 */
export function answer(guide: Guide, answers: Answers, nodeId: NodeId, optionId: string): Answers {
  const node = nodeById(guide, nodeId)
  if (node === undefined || !isEvidence(node)) throw new RangeError(`"${nodeId}" is not a question of this guide.`)
  if (readingOf(node, optionId) === undefined) throw new RangeError(`"${optionId}" is not an answer to "${nodeId}".`)
  return { ...translateAnswers(answers), [nodeId]: optionId }
}

/** The stop that an answer leads to first, or undefined. */
export function stopAfter(guide: Guide, nodeId: NodeId, optionId: string): Outcome | undefined {
  const node = nodeById(guide, nodeId)
  const reading = node !== undefined && isEvidence(node) ? readingOf(node, optionId) : undefined
  return guide.outcomes.find((each) => each.id === reading?.stop)
}

function factFrom(node: NodeId, set: SetFact): Fact {
  return set.assumed === true
    ? { text: set.text, origin: { by: 'assumed', why: set.why ?? 'not answered', favourable: false } }
    : { text: set.text, origin: { by: 'answer', node } }
}

/** A typed reading as the text of a fact: a bare number takes the unit of its card. */
const withUnit = (text: string, unit = ''): string => (/\p{L}\s*$/u.test(text) ? text : `${text} ${unit}`.trim())

/**
 * The facts the answers state, each with the item it came from, and the readings typed on their cards (in `events`). A
 * later answer replaces an earlier.
 */
export function factsFrom(_guide: Guide, position: Position, events: readonly Event[] = []): Line['facts'] {
  const facts: { [K in FactKey]?: Fact } = {}
  for (const step of position.trail) {
    const { id, card } = step.node
    for (const set of readingOf(step.node, counted(step))?.sets ?? []) facts[set.fact] = factFrom(id, set)
    const typed = newestOf(events, id)?.reading?.trim() ?? ''
    if (card?.reads?.options.includes(counted(step)) && typed !== '')
      facts[card.reads.fact] = { text: withUnit(typed, card.unit), origin: { by: 'answer', node: id } }
  }
  return facts
}

/** A fact of the line that the advice of the outcome reached may still miss; its answer leads back there. */
const isWanted = (node: GuideNode, { current, gate, answers }: Position): boolean =>
  isEvidence(node) && node.about === 'line' && gate === 'clear' && !isEvidence(current) && applies(node, answers)

/**
 * What an address shows. Without a node, or with one the guide does not have: where the answers lead. An item that is
 * asked next or was answered: with its answer, ready to be changed. Any other node is shown too, with a notice.
 */
export function shownNode(guide: Guide, answers: Answers, address?: NodeId, history: readonly Event[] = []): Shown {
  const position = replay(guide, answers, history)
  const id = address !== undefined && Object.hasOwn(RETIRED, address) ? translated(address, '').evidence : address
  if (id === undefined || id === position.current.id) return { node: position.current, position, onPath: true }
  const node = nodeById(guide, id)
  if (node === undefined) return { node: position.current, position, onPath: true, notice: NO_SUCH_NODE }
  const step = position.trail.find((each) => each.node.id === node.id)
  if (step !== undefined) return { node, position, onPath: true, chosen: step.optionId }
  if (position.stop?.id === id || position.openTests.some((each) => each.id === id))
    return { node, position, onPath: true }
  if (isWanted(node, position)) return { node, position, onPath: true }
  const notice = position.gate === 'clear' ? OFF_PATH : `${OFF_PATH} ${GATE_UNANSWERED}`
  return { node, position, onPath: false, notice }
}

/** Whether an answer tells nothing: not known, or set aside. */
export const isOpenAnswer = (optionId: string): boolean => optionId === UNKNOWN || optionId === SET_ASIDE
