/** What the answers of a complaint came to: one decision for its sheet and for what is shared of it. */
import { decisionSentence } from '../../guide/decision-sentence.ts'
import { isEvidence, replay } from '../../guide/engine.ts'
import { advise } from '../../guide/rules.ts'
import type { Advice, Guide, Outcome } from '../../guide/types.ts'
import { SHEET_CAUTIONS } from '../../reference/safety.ts'
import type { Complaint } from '../../state/complaints.ts'
import { expressionReading } from '../../state/expression.ts'
import { cautionLines } from '../parts/shared-words.ts'

export type Decided = { readonly outcome: Outcome; readonly advice: Advice | undefined; readonly sentence: string }

/** Undefined while questions are left, and where none was answered. Advice needs a line to give it for. */
export function decided(complaint: Complaint, guide: Guide): Decided | undefined {
  const { current, trail, gate, answers } = replay(guide, complaint.answers, complaint.events)
  if (trail.length === 0 || isEvidence(current)) return undefined
  const [line] = complaint.lines
  const advice = line && advise({ guide, outcome: current, line, gate, answers, express: expressionReading })
  return { outcome: current, advice, sentence: advice ? decisionSentence(current, advice) : `${current.headline}.` }
}

/** What is shared of a complaint: the aircraft, the user's words, the decision, what to do, and the cautions of every sheet. */
export function complaintWords(complaint: Complaint, guide: Guide | undefined): string {
  const found = guide && decided(complaint, guide)
  const steps = (found?.advice?.steps ?? []).map((step, index) => `${index + 1}. ${step}`)
  const { aircraft = '', note } = complaint
  return [
    ...(aircraft.trim() === '' ? [] : [`Aircraft: ${aircraft}`]),
    note,
    ...(found ? [found.sentence, found.outcome.reason] : []),
    ...steps,
    ...cautionLines(SHEET_CAUTIONS),
  ]
    .filter((part) => part !== '')
    .join('\n')
}
