/** The safety gate as items: it bars parts and trials, never thinking. */
import { GATE_DANGER, GATE_LINES } from '../chapters/safety.ts'
import type { Evidence, Reading } from '../investigation.ts'
import type { GuideOption, Question } from '../types.ts'

const THEN: Readonly<Record<string, string>> = {
  none: 'Parts and trials may be advised once both safety questions are answered.',
  'dead-design': 'Figures and a design on paper only; nothing is fitted or tried.',
}

const isStop = (option: GuideOption): option is GuideOption & { next: string } =>
  typeof option.next === 'string' && option.next.startsWith('stop-')

const readingOf = (option: GuideOption): Reading => ({
  id: option.id,
  label: option.label,
  ...(option.hint === undefined ? {} : { hint: option.hint }),
  ...(option.gate === undefined ? {} : { gate: option.gate }),
  ...(isStop(option) ? { stop: option.next } : {}),
  says: {},
  means: THEN[option.id] ?? 'No part and no trial; looking and thinking go on.',
})

const itemOf = (question: Question): Evidence => ({
  id: question.id,
  chapter: question.chapter,
  kind: 'ask',
  about: 'safety',
  text: question.text,
  why: question.why,
  findOut: question.findOut,
  minutes: 1,
  options: question.options.map(readingOf),
  ...(question.cautions === undefined ? {} : { cautions: question.cautions }),
})

/** What is asked before everything else. */
export const SAFETY_EVIDENCE: readonly Evidence[] = [itemOf(GATE_DANGER), itemOf(GATE_LINES)]
