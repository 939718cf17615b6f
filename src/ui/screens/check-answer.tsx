import { useEffect, useMemo, useState } from 'preact/hooks'
import { isUsual } from '../../calc/line/fields.ts'
import type { Result, Success } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import type { Answer, CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { standing } from '../../state/runner.ts'
import { lazy } from '../lazy.tsx'
import { AnswerCard } from '../parts/answer.tsx'
import { FoldedCautions } from '../parts/cautions.tsx'
import { useLasting } from '../parts/later.ts'
import { NextTurn } from '../parts/next-turn.tsx'
import { Refusals } from '../parts/refusals.tsx'
import { Actions, hasFigures } from './check-actions.tsx'

const COMING_DETAIL = <div class="answer-detail" aria-busy="true" />

/** Out of sight at first, and more to fetch and to draw than the answer itself. */
const AnswerDetail = lazy(async () => (await import('../parts/answer-detail.tsx')).AnswerDetail, COMING_DETAIL)

/** A screen reader hears the verdict once it stands, not at every key. */
const SPEAK_AFTER_MS = 900

/** The answer as far as it has come: asked for, worked out, refused, stopped or there. */
export function AnswerPane({ model }: { readonly model: CheckModel }) {
  const answer = model.answer.value
  const fields = model.fields.value
  const { shown, isLive, refused } = standing(answer)
  const isOld = useOld(model)
  return (
    <>
      <Spoken answer={answer} />
      {shown && (
        <AnswerCard
          check={model.check}
          fields={fields}
          result={shown}
          live={isLive}
          isOld={isOld}
          isBusy={answer.is === 'working'}
        />
      )}
      {shown && isOld && <p class="old-mark">Old answer, for other figures</p>}
      {refused && <Refusals result={refused} fields={fields} over={shown !== undefined} />}
      {answer.is === 'working' && answer.slow && (
        <Working model={model} doneFrac={answer.doneFrac} over={shown !== undefined} />
      )}
      {answer.is === 'working' && !answer.slow && shown === undefined && <Coming model={model} />}
      {answer.is === 'stopped' && <Stopped model={model} />}
      {answer.is === 'broken' && <Broken message={answer.message} />}
    </>
  )
}

/** Answers that come sooner are not worth a flicker. */
const DIM_AFTER_MS = 50

/**
 * Whether the answer that stands there is to be dimmed and named as old: at once where none comes to the fields as they
 * are, else when one is waited for. It loses the ids that addresses promise at the key itself.
 */
function useOld({ answer, unsaidKey }: CheckModel): boolean {
  const isLive = standing(answer.value).isLive
  const isComing = answer.value.is === 'working' && unsaidKey.value === undefined
  const isWaitedFor = useLasting(!isLive, DIM_AFTER_MS)
  return !isLive && (!isComing || isWaitedFor)
}

type Given = { readonly model: CheckModel; readonly desk: Desk }

/** What explains the answer: on a phone it follows the fields, so that figure and fields stay together. */
export function EvidencePane({ model }: { readonly model: CheckModel }) {
  const { shown, isLive } = standing(model.answer.value)
  const isOld = useOld(model)
  if (shown === undefined) return null
  return (
    <div inert={isOld}>
      <NextTurn turns={2} meanwhile={COMING_DETAIL}>
        <AnswerDetail check={model.check} result={shown} live={isLive} isOld={isOld} />
      </NextTurn>
    </div>
  )
}

/** What may be done with the answer, and what to mind. */
export function AfterAnswer({ model, desk }: Given) {
  const { shown } = standing(model.answer.value)
  const isOld = useOld(model)
  if (shown === undefined || !hasFigures(shown)) return null
  return (
    <div class="stack" inert={isOld}>
      <NextTurn>
        <Actions model={model} desk={desk} result={shown} />
        <AnswerCautions result={shown} />
      </NextTurn>
    </div>
  )
}

/** Most answers bring the cautions of the one before: then nothing is drawn. */
function AnswerCautions({ result: { cautions, verdict } }: { readonly result: Success }) {
  return useMemo(() => <FoldedCautions ids={cautions} verdict={verdict} />, [cautions.join(), verdict])
}

/** Of a line that much is said of there is more to answer: its place is kept higher. */
const MUCH_FIELDS = 6

function comingClass({ fields }: CheckModel): string {
  const said = fields.peek().filter((field) => field.state === 'value' && !isUsual(field))
  return said.length < MUCH_FIELDS ? 'answer coming' : 'answer coming much'
}

type WorkingGiven = { readonly model: CheckModel; readonly doneFrac: number; readonly over: boolean }

/** Progress, and a way to stop; where an older answer stands it lies over that, so that nothing moves. */
function Working({ model, doneFrac, over }: WorkingGiven) {
  return (
    <section class={over ? 'answer over' : comingClass(model)} aria-label="Working">
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
function Coming({ model }: { readonly model: CheckModel }) {
  return (
    <section class={comingClass(model)} aria-label="Answer" aria-busy="true">
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
  const result = answer.is === 'done' ? answer.result : undefined
  useEffect(() => {
    if (result === undefined) return
    const timer = setTimeout(() => setSaid(spokenResult(result)), SPEAK_AFTER_MS)
    return () => clearTimeout(timer)
  }, [result])
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
