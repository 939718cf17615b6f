// @vitest-environment happy-dom
/** What travels of an outcome, from its page and from the Log: sentence, steps, cautions, and the screening notice last. */
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { decisionSentence } from '../../src/guide/decision-sentence.ts'
import { isEvidence, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { advise } from '../../src/guide/rules.ts'
import { isSafetyId, SAFETY_TEXTS, SHEET_CAUTIONS } from '../../src/reference/safety.ts'
import { loadComplaints } from '../../src/state/complaints.ts'
import { addDemo } from '../../src/state/demo.ts'
import { triageDesk } from '../../src/state/desk.ts'
import { expressionReading } from '../../src/state/expression.ts'
import { loadGuide } from '../../src/state/guide-content.ts'
import { setAnswers } from '../../src/state/session.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { Ask } from '../../src/ui/screens/ask.tsx'
import { ComplaintScreen } from '../../src/ui/screens/complaint.tsx'
import { isResumed } from '../../src/ui/shell/start.ts'
import { by, settle, show, tap, until } from './support.ts'

const sent = vi.fn(async (_data: ShareData) => undefined)
const textSent = (): readonly string[] => (sent.mock.calls[0]?.[0].text ?? '').split('\n')

const numbered = (steps: readonly string[]) => steps.map((step, index) => `${index + 1}. ${step}`)
const asCautions = (ids: readonly string[]) =>
  ids
    .filter(isSafetyId)
    .filter((id) => id !== 'screening')
    .map((id) => `Caution: ${SAFETY_TEXTS[id].title}. ${SAFETY_TEXTS[id].text}`)

function outcomeOf(answers: Readonly<Record<string, string>>) {
  const { current, gate } = replay(GUIDE, answers)
  if (isEvidence(current)) throw new Error('The answers lead to no outcome.')
  return { outcome: current, gate }
}

beforeEach(async () => {
  sent.mockClear()
  isResumed.value = true
  Object.defineProperty(navigator, 'share', { configurable: true, value: sent })
  await loadComplaints()
  await loadGuide()
})
afterEach(() => {
  Reflect.deleteProperty(navigator, 'share')
})

it('of an outcome: its sentence, its reason, every step in order, its cautions, and the screening notice', async () => {
  const { answers } = demoComplaint()
  setAnswers(answers, GUIDE.version)
  const { outcome, gate } = outcomeOf(answers)
  show(<Ask nodeId={outcome.id} />)
  await until('section.answer')
  const advice = advise({
    guide: GUIDE,
    outcome,
    line: triageDesk.line.peek(),
    gate,
    answers,
    express: expressionReading,
  })
  expect(advice.steps.length).toBeGreaterThan(2)
  expect(asCautions(outcome.cautions).length).toBeGreaterThan(0)
  await tap(by('button', 'Share'))
  expect(textSent()).toEqual([
    decisionSentence(outcome, advice),
    outcome.reason,
    ...numbered(advice.steps),
    ...asCautions(outcome.cautions),
    SAFETY_TEXTS.screening.text,
  ])
})

it('of a complaint: its aircraft and note before it, and the cautions of every sheet', async () => {
  const demo = addDemo()
  const [line] = demo.lines
  const { outcome, gate } = outcomeOf(demo.answers)
  if (line === undefined) throw new Error('The example has no line.')
  const advice = advise({ guide: GUIDE, outcome, line, gate, answers: demo.answers, express: expressionReading })
  show(<ComplaintScreen id={demo.id} />)
  await settle()
  await tap(by('button', 'Share'))
  expect(textSent()).toEqual([
    `Aircraft: ${demo.aircraft}`,
    ...demo.note.split('\n'),
    decisionSentence(outcome, advice),
    outcome.reason,
    ...numbered(advice.steps),
    ...asCautions(SHEET_CAUTIONS),
    SAFETY_TEXTS.screening.text,
  ])
})
