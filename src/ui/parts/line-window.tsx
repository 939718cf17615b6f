import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { checkById } from '../../calc/registry.ts'
import type { Check, Result } from '../../calc/types.ts'
import { type CheckModel, createCheck } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { standing } from '../../state/runner.ts'
import { drawn, leadOutput } from './answer.tsx'
import { EachField } from './each-field.tsx'
import { outputText } from './figure.ts'
import { Strip } from './strip.tsx'
import { AnswerSentence } from './verdict.tsx'

type Given = { readonly desk: Desk; readonly title?: string }

/** The window of a line, computed from its facts; what is missing is asked for here, nothing is filled in. */
export function LineWindow({ desk, title = 'Window' }: Given) {
  const check = checkById('window')
  return check ? <OpenWindow key={desk.line.value.id} check={check} desk={desk} title={title} /> : null
}

function OpenWindow({ check, desk, title }: Required<Given> & { readonly check: Check }) {
  const model = useMemo(() => createCheck(check, desk, expressionReading), [check, desk])
  useEffect(() => model.dispose, [model])
  const answer = model.answer.value
  const { shown, isLive, refused } = standing(answer)
  const result = refused ?? shown
  return (
    <section class="answer line-window" aria-label={title}>
      <h2>{title}</h2>
      {answer.is === 'working' && result === undefined && (
        <p class="loading" role="status">
          Working out the window…
        </p>
      )}
      {result && (
        <div class={isLive || refused ? 'stack' : 'stack stale'}>
          <Shown check={check} result={result} />
        </div>
      )}
      <Asked model={model} desk={desk} wanted={result?.ok ? (result.asks ?? []) : []} />
      <a class="button" href={desk.addressOf(check.id)} onClick={desk.enter}>
        Open the window check
      </a>
    </section>
  )
}

function Shown({ check, result }: { readonly check: Check; readonly result: Result }) {
  if (!result.ok) return <p class="muted">No window yet: {result.issues.map((issue) => issue.message).join(' ')}</p>
  const strip = drawn(result).find((picture) => picture.is === 'strip')
  const lead = leadOutput(check, result)
  const cell = lead ? result.outputs[lead.key]?.cell : undefined
  return (
    <>
      <p class="sentence" data-verdict={result.verdict}>
        <AnswerSentence result={result} />
      </p>
      {lead && cell && (
        <p>
          {lead.label}:{' '}
          <output aria-live="off" data-output={lead.key} data-si={cell.is === 'si' ? String(cell.si) : ''}>
            <strong>{outputText(cell, lead)}</strong>
          </output>
        </p>
      )}
      {strip?.is === 'strip' && <Strip picture={strip} bounds={result.bounds} />}
    </>
  )
}

type AskedGiven = {
  readonly model: CheckModel
  readonly desk: Desk
  /** fields this line needs though they may stay empty on others */
  readonly wanted: readonly string[]
}

/** Fields for what was missing when the window was opened, or turned out to be; they stay while they are being filled in. */
function Asked({ model, desk, wanted }: AskedGiven) {
  const fields = model.fields.value
  const [missing] = useState(() => fields.filter((field) => field.state === 'missing').map(({ key }) => key))
  const asked = useRef(new Set(missing))
  for (const key of wanted) asked.current.add(key)
  const shown = fields.filter((field) => asked.current.has(field.key) || field.state === 'refused')
  if (shown.length === 0) return null
  return (
    <form aria-label="Still to find out" onSubmit={(event) => event.preventDefault()}>
      <h3>Still to find out</h3>
      <EachField model={model} desk={desk} fields={shown} />
    </form>
  )
}
