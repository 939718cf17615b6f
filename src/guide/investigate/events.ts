/** The history of a complaint: events are appended and never changed; the newest of each item counts. */
import type { Event } from '../investigation.ts'
import type { Answers, NodeId } from '../types.ts'

/** Id of the event that closes a complaint; its option is the suspect that was the cause. */
export const CLOSED: NodeId = 'closed'

/** The answers that count, in the order each item was first met. */
export function answersOf(events: readonly Event[]): Answers {
  const newest = new Map<string, string>()
  for (const { evidence, option } of events) newest.set(evidence, option)
  return Object.fromEntries(newest)
}

/**
 * Answers kept before there were events, as events of that time. They keep the ids they were given under; the kept table
 * (retired.ts) says what those mean today, wherever they are read.
 */
export function eventsFrom(answers: Answers, at: string): readonly Event[] {
  return Object.entries(answers).map(([evidence, option]) => ({ at, evidence, option }))
}

/** The newest event of an item, or undefined. */
export const newestOf = (events: readonly Event[], evidence: string): Event | undefined =>
  events.findLast((event) => event.evidence === evidence)

/**
 * Trials whose newest repetition differed. On, off, on that does not come out alike proves nothing and clears nothing: the
 * answer stays in the history and counts as not known until it is repeated.
 */
export function voidedBy(events: readonly Event[], answers: Answers): ReadonlySet<NodeId> {
  const newest = new Map(events.map((event) => [event.evidence, event]))
  return new Set(
    [...newest.values()].flatMap(({ evidence, option, repeats }) =>
      repeats === 'differed' && answers[evidence] === option ? [evidence] : [],
    ),
  )
}
