/** One step of the triage: the answer is appended to the history, and the line learns what the answers state. */
import type { Fact, FactKey, Line } from '../calc/types.ts'
import { answer, factsFrom, replay } from '../guide/engine.ts'

import { type Closed, earlierLike } from '../guide/investigate/earlier.ts'
import { CLOSED, newestOf } from '../guide/investigate/events.ts'
import { afterRepair } from '../guide/investigate/standing.ts'
import type { Event } from '../guide/investigation.ts'
import { translateEvents } from '../guide/retired.ts'
import type { Guide, NodeId, Position } from '../guide/types.ts'
import { complaints } from './complaints.ts'

import { triageDesk } from './desk.ts'
import { setAnswers, setTriageLine, triage } from './session.ts'

/** What may be written down with an answer. */
export type Beside = Pick<Event, 'reading' | 'note' | 'repeats'>

/** How a repair or trial ended. */
export type Repaired = 'gone' | 'less' | 'same' | 'same-measured' | 'worse'

/**
 * The line after the answers have changed: what earlier answers stated goes, what the present ones state comes, what
 * the user typed stays. The gate is that of the answers.
 */
export function lineAfter(guide: Guide, position: Position, line: Line, events: readonly Event[] = []): Line {
  const facts: { [K in FactKey]?: Fact } = {}
  const isStale = (fact: Fact) => fact.origin.by === 'answer' || fact.origin.by === 'assumed'
  for (const [key, fact] of Object.entries(line.facts)) if (!isStale(fact)) facts[key as FactKey] = fact
  for (const [key, fact] of Object.entries(factsFrom(guide, position, events))) facts[key as FactKey] ??= fact
  return { ...line, gate: position.gate, facts }
}

function record(guide: Guide, answers: Position['answers'], event: Event): Position {
  const events = [...(triage.peek().events ?? []), event]
  const position = replay(guide, answers, events)
  setAnswers(answers, guide.version, event)
  setTriageLine(lineAfter(guide, position, triageDesk.line.peek(), translateEvents(events)))
  return position
}

/** Gives an answer, with what was read or noted, saves it, and says where it leads. */
export function give(guide: Guide, nodeId: NodeId, optionId: string, beside: Beside = {}): Position {
  const answers = answer(guide, triage.peek().answers, nodeId, optionId)
  return record(guide, answers, { at: new Date().toISOString(), evidence: nodeId, option: optionId, ...beside })
}

/** Writes down what the repair of a suspect did, and says where that leads. */
export function giveRepair(guide: Guide, suspect: string, how: Repaired, beside: Beside = {}): Position {
  const evidence = afterRepair(suspect)
  const answers = { ...triage.peek().answers, [evidence]: how }
  return record(guide, answers, { at: new Date().toISOString(), evidence, option: how, ...beside })
}

/** What closes a complaint beside its cause: what was done, and how that was proven. */
export type Closing = { readonly cure: string; readonly proof: string }

/** Closes the complaint with its cause, its cure and the proof. */
export function closeWith(guide: Guide, suspect: string, { cure, proof }: Closing): Position {
  const answers = { ...triage.peek().answers, [CLOSED]: suspect }
  const at = new Date().toISOString()
  return record(guide, answers, { at, evidence: CLOSED, option: suspect, reading: cure, note: proof })
}

/** Types the exact frequency of the noise: a fact of the line, and the answer to the question about the band. */
export function giveFrequency(guide: Guide, text: string): Position {
  const line = triageDesk.line.peek()
  setTriageLine({ ...line, facts: { ...line.facts, noiseHz: { text, origin: { by: 'user' } } } })
  return give(guide, 'frequency', 'exact', { reading: text })
}

/** The newest thing written down for an item of the triage under way. */
export const lastEvent = (nodeId: NodeId): Event | undefined =>
  newestOf(translateEvents(triage.value.events ?? []), nodeId)

/** Earlier complaints of this device with the same answers, and what they turned out to be. */
export function earlierComplaints(answers: Position['answers']): readonly Closed[] {
  const mine = triage.value.complaintId
  const closed = (complaints.value ?? []).flatMap(({ id, title, answers: given, events }): readonly Closed[] => {
    if (id === mine || given[CLOSED] === undefined) return []
    const { reading: cure = '', note: proof = '' } = newestOf(events ?? [], CLOSED) ?? {}
    return [{ id, title, answers: given, cure, proof }]
  })
  return earlierLike(answers, closed)
}
