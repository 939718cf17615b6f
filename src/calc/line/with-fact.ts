import type { Fact, FactKey, Line } from '../types.ts'

/** The Line with one fact written, or taken off (undefined); the same Line where nothing changes. */
export function withFact(line: Line, fact: FactKey, next: Fact | undefined): Line {
  if (line.facts[fact] === next) return line
  const { [fact]: _old, ...others } = line.facts
  return { ...line, facts: next === undefined ? others : { ...others, [fact]: next } }
}
