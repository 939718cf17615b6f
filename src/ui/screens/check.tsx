import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Field } from '../../calc/fields.ts'
import { CHECKS, checkById } from '../../calc/registry.ts'
import type { Check, Result } from '../../calc/types.ts'
import { type Answer, type CheckModel, createCheck, factsOf, lineWith, onwardFrom } from '../../state/check.ts'
import { expressionReading } from '../../state/expression.ts'
import { noteAddress, type Pair } from '../../state/router.ts'
import { scratch, setScratch, triage } from '../../state/session.ts'
import { AnswerCard, AnswerDetail, focusField, isAnswered, leadOutput, Refusals } from '../parts/answer.tsx'
import { Cautions, Screening } from '../parts/cautions.tsx'
import { FieldView } from '../parts/field.tsx'
import { cellText } from '../parts/figure.ts'
import { Icon } from '../parts/icon.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { PrintButton, ShareButton } from '../parts/share-button.tsx'
import { VERDICT_WORDS } from '../parts/verdict.tsx'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'
import { KeepCheck } from './keep-check.tsx'

/** Typing settles for this long before the address and the stored line follow. */
const SETTLE_MS = 250
/** A screen reader hears the verdict once it stands, not at every key. */
const SPEAK_AFTER_MS = 900

/** Any check, rendered from its descriptor; opened on the texts of the address. */
export function CheckScreen({ id, query }: { readonly id: string; readonly query: readonly Pair[] }) {
  const check = checkById(id)
  if (!check) return <Nowhere path={`#/check/${id}`} what="check" />
  return <OpenCheck key={keyOf(id, query)} check={check} query={query} />
}

/** Another address is another check; the same one rewritten while typing is not. */
function keyOf(id: string, query: readonly Pair[]): string {
  return JSON.stringify([id, query])
}

function OpenCheck({ check, query }: { readonly check: Check; readonly query: readonly Pair[] }) {
  const model = useMemo(() => createCheck(check, query, expressionReading), [check, query])
  useEffect(() => model.dispose, [model])
  useSettled(model)
  return (
    <>
      <Head title={check.title}>
        <p class="muted">{check.question}</p>
      </Head>
      <PrintHead />
      <div class="panes">
        <div class="pane answer-pane">
          <AnswerPane model={model} />
        </div>
        <form class="pane field-pane" aria-label="What is known" onSubmit={(event) => event.preventDefault()}>
          <Strangers model={model} />
          <Fields model={model} />
        </form>
        <div class="pane foot-pane">
          <Late model={model} />
          <Onward model={model} />
          <GateLine />
          <Screening />
        </div>
      </div>
    </>
  )
}

/** Address and scratch line follow the typed text, shortly after it rests and whenever a field is left. */
function useSettled(model: CheckModel): void {
  const { texts, hash, isTouched, check } = model
  const text = texts.value
  const settle = () => {
    if (!isTouched.peek()) return
    noteAddress(hash.peek())
    setScratch(lineWith(scratch.peek(), check, texts.peek()))
  }
  const latest = useRef(settle)
  latest.current = settle
  useEffect(() => {
    if (text === undefined) return
    const timer = setTimeout(() => latest.current(), SETTLE_MS)
    return () => clearTimeout(timer)
  }, [text])
  useEffect(() => {
    const now = () => latest.current()
    addEventListener('pagehide', now)
    addEventListener('focusout', now)
    return () => {
      removeEventListener('pagehide', now)
      removeEventListener('focusout', now)
    }
  }, [])
}

function Strangers({ model }: { readonly model: CheckModel }) {
  if (model.strangers.length === 0) return null
  const names = model.strangers.map(({ key, text }) => `${key}=${text}`).join(', ')
  return (
    <p class="notice" role="status">
      The address holds what this check does not know and did not use: <code>{names}</code>. It stays in the address.
    </p>
  )
}

function Fields({ model }: { readonly model: CheckModel }) {
  const fields = model.fields.value
  const grouped = new Map<string, Field[]>()
  for (const field of fields) {
    const group = field.input.group
    if (group !== undefined) grouped.set(group, [...(grouped.get(group) ?? []), field])
  }
  return (
    <>
      <h2 class="unseen">What is known</h2>
      {fields.filter((field) => field.input.group === undefined).map((field) => fieldView(model, field))}
      {[...grouped].map(([group, members]) => (
        <Group key={group} model={model} group={group} members={members} />
      ))}
    </>
  )
}

type GroupGiven = { readonly model: CheckModel; readonly group: string; readonly members: readonly Field[] }

/** Folded, unless it opens with something refused in it; from then on it is the user's to open and close. */
function Group({ model, group, members }: GroupGiven) {
  const [startsOpen] = useState(() => members.some((field) => field.state === 'refused'))
  return (
    <details class="fold group" open={startsOpen}>
      <summary>
        {group}
        <span class="muted small">{groupNote(members)}</span>
      </summary>
      {members.map((field) => fieldView(model, field))}
    </details>
  )
}

function fieldView(model: CheckModel, field: Field) {
  return <FieldView key={field.key} field={field} onType={(text) => model.type(field.key, text)} />
}

function groupNote(members: readonly Field[]): string {
  const count = (state: Field['state']) => members.filter((field) => field.state === state).length
  const parts = [`${count('value')} entered`, `${count('assumed')} assumed`].filter((part) => !part.startsWith('0'))
  return parts.length > 0 ? ` ${parts.join(', ')}` : ' none entered'
}

function AnswerPane({ model }: { readonly model: CheckModel }) {
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
          <AnswerDetail check={check} result={result} live={live} />
          {isAnswered(result) && <Cautions ids={result.cautions} />}
        </>
      )}
      {live && hasFigures(answer.result) && <Actions model={model} result={answer.result} />}
    </>
  )
}

function hasFigures(result: Result): boolean {
  return result.ok && isAnswered(result)
}

/** While there is nothing to read yet, cautions and actions stand under the fields, so that these are near. */
function Late({ model }: { readonly model: CheckModel }) {
  const answer = model.answer.value
  if (answer.is !== 'done' || hasFigures(answer.result)) return null
  return (
    <>
      {answer.result.ok && <Cautions ids={answer.result.cautions} />}
      <Actions model={model} result={answer.result} />
    </>
  )
}

/** Figures may always be read; fitting or trying a part waits for the safety questions. */
function GateLine() {
  if (triage.value.line.gate === 'clear') return null
  return (
    <p class="muted small">
      Before any part is fitted or tried, answer the safety questions.{' '}
      <a class="link" href="#/ask">
        Open Ask
      </a>
    </p>
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
  return result.verdict ? `${VERDICT_WORDS[result.verdict]}. ${result.headline}` : result.headline
}

/** The answer in one line, while its card is out of sight and fields are being typed. */
function Mini({
  check,
  result,
  live,
}: {
  readonly check: Check
  readonly result: Extract<Result, { ok: true }>
  readonly live: boolean
}) {
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
      <strong>{live && lead && cell ? cellText(cell, lead.quantity, lead.digits) : '…'}</strong>
      {result.verdict && live && (
        <span class={`verdict-mark ${result.verdict}`}>
          <Icon name={result.verdict} />
          {VERDICT_WORDS[result.verdict]}
        </span>
      )}
    </div>
  )
}

function Actions({ model, result }: { readonly model: CheckModel; readonly result: Result }) {
  const { check } = model
  const words = result.ok ? sharedWords(check, result) : ''
  return (
    <div class="actions">
      <KeepCheck model={model} />
      <ShareButton title={`${check.title}: ${check.question}`} words={words} hash={model.hash.value} />
      <PrintButton />
    </div>
  )
}

const MOST_ONWARD = 5

function Onward({ model }: { readonly model: CheckModel }) {
  const { check } = model
  const answer = model.answer.value
  const facts = factsOf(check, model.texts.value, answer.is === 'done' ? answer.result : undefined)
  const onward = onwardFrom(check, facts, CHECKS)
  if (onward.length === 0) return null
  return (
    <section class="onward" aria-label="Other checks">
      <h2>Take these facts to</h2>
      <ul class="rows">
        {onward.slice(0, MOST_ONWARD).map(({ check: other, hash, sharedCount }) => (
          <li key={other.id}>
            <a href={hash}>
              <span>
                <strong>{other.title}</strong>
                <span class="row-note">
                  {other.question} {sharedCount === 1 ? 'One fact' : `${sharedCount} facts`} shared.
                </span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}

function sharedWords(check: Check, result: Extract<Result, { ok: true }>): string {
  const figures = check.outputs.flatMap((output) => {
    const cell = result.outputs[output.key]?.cell
    return cell && cell.is !== 'none' ? [`${output.label}: ${cellText(cell, output.quantity, output.digits)}`] : []
  })
  const verdict = result.verdict ? `${VERDICT_WORDS[result.verdict]}. ` : ''
  return [`${verdict}${result.headline}`, ...figures].join('\n')
}
