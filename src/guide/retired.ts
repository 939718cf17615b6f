/**
 * The kept table of ids: what questions and answers of earlier editions mean today. It only grows. Everything that is
 * not listed means what it meant.
 */
import type { Event } from './investigation.ts'
import type { Answers, NodeId } from './types.ts'

/** The question that took the place of a retired one, and each of its answers as an answer of today. */
export type Retired = {
  readonly now: NodeId
  readonly options: Readonly<Record<string, { readonly evidence: NodeId; readonly option: string }>>
}

/** Questions that are not asked any more. */
export const RETIRED: Readonly<Record<NodeId, Retired>> = {
  path: {
    now: 'antenna-load',
    options: {
      gone: { evidence: 'antenna-load', option: 'gone' },
      weak: { evidence: 'squelch', option: 'weak' },
      handheld: { evidence: 'handheld', option: 'hangar' },
      everything: { evidence: 'extent', option: 'several' },
      tuning: { evidence: 'squelch', option: 'steps' },
      volume: { evidence: 'volume', option: 'still' },
      'no-antenna': { evidence: 'antenna-port', option: 'no' },
      'dont-know': { evidence: 'antenna-load', option: 'dont-know' },
    },
  },
}

/** Answers of questions that are still asked, but which now belong to another one. */
const MOVED: Readonly<Record<string, { readonly evidence: NodeId; readonly option: string }>> = {
  'bond.shield': { evidence: 'shield-ends', option: 'open' },
  'bond.shared': { evidence: 'grounds-mv', option: 'follows' },
}

/** One stored answer as an answer of today. */
export function translated(evidence: NodeId, option: string): { readonly evidence: NodeId; readonly option: string } {
  const old = Object.hasOwn(RETIRED, evidence) ? RETIRED[evidence] : undefined
  if (old !== undefined) return old.options[option] ?? { evidence: old.now, option }
  const key = `${evidence}.${option}`
  return (Object.hasOwn(MOVED, key) ? MOVED[key] : undefined) ?? { evidence, option }
}

/** Stored events under the ids of today. */
export const translateEvents = (events: readonly Event[]): readonly Event[] =>
  events.map((event) => ({ ...event, ...translated(event.evidence, event.option) }))

/** Stored answers as answers of today. An answer given under today's id wins over one that moved there. */
export function translateAnswers(answers: Answers): Answers {
  const now: [string, string][] = []
  for (const [node, option] of Object.entries(answers)) {
    const { evidence, option: meaning } = translated(node, option)
    if (evidence === node || !Object.hasOwn(answers, evidence)) now.push([evidence, meaning])
  }
  return Object.fromEntries(now)
}
