/** What earlier complaints with the same answers turned out to be; this device only, nothing is learned. */
import { isOpenAnswer } from '../engine.ts'
import type { Answers, NodeId } from '../types.ts'
import { CLOSED } from './events.ts'

/** A complaint that was closed with its cause: what was done about it, and how that was proven. */
export type Closed = {
  readonly id: string
  readonly title: string
  readonly answers: Answers
  readonly cure: string
  readonly proof: string
}

/** Answers in common before an earlier complaint is worth a line. */
const ENOUGH = 3

const NOT_COMPARED = new Set(['gate-danger', 'gate-lines', CLOSED])

const isCompared = (id: NodeId, option: string | undefined): boolean =>
  option !== undefined && !NOT_COMPARED.has(id) && !id.startsWith('after-') && !isOpenAnswer(option)

/** Closed complaints that agree in at least three answers and in what goes wrong, and contradict none; best first. */
export function earlierLike(answers: Answers, closed: readonly Closed[]): readonly Closed[] {
  const given = Object.entries(answers).filter(([id, option]) => isCompared(id, option))
  return closed
    .map((one) => {
      const both = given.filter(([id]) => isCompared(id, one.answers[id]))
      const agreed = both.filter(([id, option]) => one.answers[id] === option)
      return {
        one,
        agreed: agreed.length,
        isSame: agreed.length === both.length && one.answers['wrong'] === answers['wrong'],
      }
    })
    .filter(({ agreed, isSame }) => isSame && agreed >= ENOUGH)
    .sort((a, b) => b.agreed - a.agreed)
    .map(({ one }) => one)
}
