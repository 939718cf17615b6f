/** One step of the triage: the answer is kept, and the line learns what the answer states. */
import type { Fact, FactKey, Line } from '../calc/types.ts'
import { answer, factsFrom, replay } from '../guide/engine.ts'
import type { Guide, Position } from '../guide/types.ts'
import { triageDesk } from './desk.ts'
import { setAnswers, setTriageLine, triage } from './session.ts'

/**
 * The line after the path has changed: what earlier answers stated goes, what the present path states comes, what the
 * user typed stays. The gate is the path's.
 */
export function lineAfter(guide: Guide, position: Position, line: Line): Line {
  const facts: { [K in FactKey]?: Fact } = {}
  const isStale = (fact: Fact) => fact.origin.by === 'answer' || fact.origin.by === 'assumed'
  for (const [key, fact] of Object.entries(line.facts)) if (!isStale(fact)) facts[key as FactKey] = fact
  for (const [key, fact] of Object.entries(factsFrom(guide, position))) facts[key as FactKey] ??= fact
  return { ...line, gate: position.gate, facts }
}

/** Gives an answer, saves it, and says where it leads. */
export function give(guide: Guide, nodeId: string, optionId: string): Position {
  const answers = answer(guide, triage.peek().answers, nodeId, optionId)
  const position = replay(guide, answers)
  setAnswers(answers, guide.version)
  setTriageLine(lineAfter(guide, position, triageDesk.line.peek()))
  return position
}
