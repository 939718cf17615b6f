import { useEffect, useState } from 'preact/hooks'
import type { Result } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import type { Answer, CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { standing } from '../../state/runner.ts'
import { AnswerCard } from '../parts/answer.tsx'
import { AnswerDetail } from '../parts/answer-detail.tsx'
import { FoldedCautions } from '../parts/cautions.tsx'
import { Refusals } from '../parts/refusals.tsx'
import { Actions, hasFigures } from './check-actions.tsx'

/** A screen reader hears the verdict once it stands, not at every key. */
const SPEAK_AFTER_MS = 900

/** The answer as far as it has come: asked for, worked out, refused, stopped or there. */
export function AnswerPane({ model }: { readonly model: CheckModel }) {
  const answer = model.answer.value
  const fields = model.fields.value
  const { shown, isLive, refused } = standing(answer)
  return (
    <>
      <Spoken answer={answer} />
      {shown && (
        <AnswerCard check={model.check} fields={fields} result={shown} live={isLive} isBusy={answer.is === 'working'} />
      )}
      {shown && !isLive && <p class="old-mark">Old answer, for other figures</p>}
      {refused && <Refusals result={refused} fields={fields} over={shown !== undefined} />}
      {answer.is === 'working' && answer.slow && (
        <Working model={model} doneFrac={answer.doneFrac} over={shown !== undefined} />
      )}
      {answer.is === 'working' && !answer.slow && shown === undefined && <Coming />}
      {answer.is === 'stopped' && <Stopped model={model} />}
      {answer.is === 'broken' && <Broken message={answer.message} />}
    </>
  )
}

type Given = { readonly model: CheckModel; readonly desk: Desk }

/** What explains the answer: on a phone it follows the fields, so that figure and fields stay together. */
export function EvidencePane({ model }: { readonly model: CheckModel }) {
  const { shown, isLive } = standing(model.answer.value)
  if (shown === undefined) return null
  return (
    <div inert={!isLive}>
      <AnswerDetail check={model.check} result={shown} live={isLive} />
    </div>
  )
}

/** What may be done with the answer, and what to mind. */
export function AfterAnswer({ model, desk }: Given) {
  const { shown, isLive } = standing(model.answer.value)
  if (shown === undefined || !hasFigures(shown)) return null
  return (
    <div class="stack" inert={!isLive}>
      <Actions model={model} desk={desk} result={shown} />
      <FoldedCautions ids={shown.cautions} verdict={shown.verdict} />
    </div>
  )
}

type WorkingGiven = { readonly model: CheckModel; readonly doneFrac: number; readonly over: boolean }

/** Progress, and a way to stop; where an older answer stands it lies over that, so that nothing moves. */
function Working({ model, doneFrac, over }: WorkingGiven) {
  return (
    <section class={over ? 'answer over' : 'answer coming'} aria-label="Working">
      <label class="progress">
        Working, {Math.round(doneFrac * 100)} %
        <progress max="1" value={doneFrac} />
      </label>
      <button type="button" class="button" onClick={model.stop}>
        Cancel
      </button>
    </section>
  )
}

/** Keeps the place of a first answer that takes more than a moment, so that the fields do not move when it comes. */
function Coming() {
  return (
    <section class="answer coming" aria-label="Answer" aria-busy="true">
      <p class="muted">Working…</p>
    </section>
  )
}

function Stopped({ model }: { readonly model: CheckModel }) {
  return (
    <section class="answer" aria-label="Answer">
      <p class="headline">Stopped. There is no answer for these figures yet.</p>
      <button type="button" class="button" onClick={model.runAgain}>
        Compute
      </button>
    </section>
  )
}

function Broken({ message }: { readonly message: string }) {
  return (
    <section class="answer" aria-label="Answer" role="alert">
      <p class="headline">This check could not be computed. That is a fault of the app, not of your figures.</p>
      <p class="muted small">{message}</p>
    </section>
  )
}

/** Says the verdict to screen readers when it has come to rest. */
function Spoken({ answer }: { readonly answer: Answer }) {
  const [said, setSaid] = useState('')
  const words = answer.is === 'done' ? spokenResult(answer.result) : ''
  useEffect(() => {
    if (words === '') return
    const timer = setTimeout(() => setSaid(words), SPEAK_AFTER_MS)
    return () => clearTimeout(timer)
  }, [words])
  return (
    <div class="unseen" role="status">
      {said}
    </div>
  )
}

function spokenResult(result: Result): string {
  if (!result.ok) return 'No answer yet.'
  return sentenceOf(result)
}
