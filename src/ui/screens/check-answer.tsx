import { useEffect, useRef, useState } from 'preact/hooks'
import type { Field } from '../../calc/line/fields.ts'
import type { Check, Result, Success } from '../../calc/types.ts'
import { sentenceOf, VERDICT_WORDS } from '../../calc/verdict.ts'
import type { Answer, CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { AnswerCard, isAnswered, leadOutput } from '../parts/answer.tsx'
import { AnswerDetail } from '../parts/answer-detail.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { outputText } from '../parts/figure.ts'
import { Icon } from '../parts/icon.tsx'
import { focusField, Refusals } from '../parts/refusals.tsx'
import { Actions, hasFigures } from './check-actions.tsx'

/** A screen reader hears the verdict once it stands, not at every key. */
const SPEAK_AFTER_MS = 900

/** The answer as far as it has come: asked for, worked out, refused, stopped or there. */
export function AnswerPane({ model }: { readonly model: CheckModel }) {
  const { check } = model
  const answer = model.answer.value
  const fields = model.fields.value
  const result = resultOf(answer)
  const live = answer.is === 'done'
  return (
    <>
      <Spoken answer={answer} />
      {answer.is === 'working' && answer.slow && <Working model={model} doneFrac={answer.doneFrac} />}
      {answer.is === 'stopped' && <Stopped model={model} />}
      {answer.is === 'broken' && <Broken message={answer.message} />}
      {result?.ok === false && <Refusals result={result} fields={fields} />}
      {result?.ok === true && (
        <>
          <Mini check={check} result={result} live={live} />
          <AnswerCard check={check} fields={fields} result={result} live={live}>
            <button type="button" class="link jump" onClick={() => focusFirst(fields)}>
              {isAnswered(result) ? 'Change the figures' : 'Fill in what is known'}
            </button>
          </AnswerCard>
        </>
      )}
    </>
  )
}

/** What explains the answer: on a phone it follows the fields, so that figure and fields stay together. */
export function DetailPane({ model, desk }: { readonly model: CheckModel; readonly desk: Desk }) {
  const answer = model.answer.value
  const result = resultOf(answer)
  const live = answer.is === 'done'
  return (
    <>
      {live && hasFigures(answer.result) && <Actions model={model} desk={desk} result={answer.result} />}
      {result?.ok === true && (
        <>
          <AnswerDetail check={model.check} result={result} live={live} />
          {isAnswered(result) && <Cautions ids={result.cautions} />}
        </>
      )}
    </>
  )
}

function resultOf(answer: Answer): Result | undefined {
  if (answer.is === 'done') return answer.result
  return answer.is === 'working' ? answer.previous : undefined
}

function focusFirst(fields: readonly Field[]): void {
  const wanted =
    fields.find((field) => field.state === 'missing') ?? fields.find((field) => field.input.type.is === 'number')
  if (wanted) focusField(wanted.key)
}

function Working({ model, doneFrac }: { readonly model: CheckModel; readonly doneFrac: number }) {
  return (
    <section class="answer" aria-label="Working">
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

/** The answer in one line, while its card is out of sight and fields are being typed. */
function Mini({ check, result, live }: { readonly check: Check; readonly result: Success; readonly live: boolean }) {
  const mark = useRef<HTMLDivElement>(null)
  const [isAway, setAway] = useState(false)
  useEffect(() => {
    const card = mark.current?.nextElementSibling
    if (!card || typeof IntersectionObserver === 'undefined') return
    const watcher = new IntersectionObserver(([entry]) => setAway(entry !== undefined && !entry.isIntersecting))
    watcher.observe(card)
    return () => watcher.disconnect()
  }, [])
  const lead = leadOutput(check, result)
  const cell = lead ? result.outputs[lead.key]?.cell : undefined
  return (
    <div ref={mark} class={isAway ? 'mini shown' : 'mini'} aria-hidden="true">
      <span class="mini-label">{lead?.label}</span>
      <strong>{live && lead && cell ? outputText(cell, lead) : '…'}</strong>
      {result.verdict && live && (
        <span class={`verdict-mark ${result.verdict}`}>
          <Icon name={result.verdict} />
          {VERDICT_WORDS[result.verdict]}
        </span>
      )}
    </div>
  )
}
