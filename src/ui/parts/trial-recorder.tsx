import { useMemo, useState } from 'preact/hooks'
import { aloneOn, offeredOn } from '../../calc/line/trial-offer.ts'
import { formatEstimate, printText } from '../../calc/quantity/format.ts'
import { parseQuantity } from '../../calc/quantity/parse.ts'
import { type ColumnTexts, orderOf, rowsOf, withEntry, withValue } from '../../calc/trial/edit.ts'
import { TRIAL_COLUMNS, type TrialColumn } from '../../calc/trial/note.ts'
import { NOISE_WORDS, REPEAT_WORDS } from '../../calc/trial/steps.ts'
import type { Line } from '../../calc/types.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { EarlierTrials, PutAway } from './earlier-trials.tsx'
import { asWords, Pad } from './pad.tsx'
import { PrintTrialCard } from './trial-card-button.tsx'
import '../styles/trial.css'

type Given = { readonly model: CheckModel; readonly desk: Desk }

/** A trial noted with one thumb: a step at a time, large buttons; every tap is written to the columns below it. */
export function TrialRecorder({ model, desk }: Given) {
  const line = desk.line.value
  const kind = lineKindById(line.facts.lineKind?.text ?? '')
  const refusal =
    line.gate === 'barred' ? 'The safety questions bar this line: no trial.' : (kind?.barredWhy ?? kind?.noTrialWhy)
  if (refusal !== undefined)
    return (
      <p class="notice" role="note">
        No trial on this line. {refusal}
      </p>
    )
  return <Recorder model={model} desk={desk} />
}

function textsOf(model: CheckModel): ColumnTexts {
  const text = (key: TrialColumn) => model.fields.value.find((field) => field.key === key)?.text ?? ''
  return {
    steps: text('steps'),
    places: text('places'),
    noise: text('noise'),
    signal: text('signal'),
    repeats: text('repeats'),
    times: text('times'),
  }
}

const now = (): string => {
  const at = new Date()
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`
}

function Recorder({ model, desk }: Given) {
  const texts = textsOf(model)
  const rows = rowsOf(texts)
  const [opened, setOpened] = useState<number | undefined>(undefined)
  const firstOpen = rows.findIndex(({ steps, noise }, row) => steps !== '' && noise === '' && row > 0)
  const current = opened ?? (firstOpen < 0 ? rows.length - 1 : firstOpen)
  const write = (next: Partial<ColumnTexts>) =>
    model.use(TRIAL_COLUMNS.flatMap((key) => (next[key] === undefined ? [] : [{ key, text: next[key] }])))
  const note = (column: TrialColumn, entry: string) => {
    const row = rows[current]
    // the step stays open for what else is seen at it
    setOpened(current)
    const stamped =
      column === 'noise' && entry !== '' && row?.times === '' ? { times: withEntry(texts.times, current, now()) } : {}
    write({ [column]: withEntry(texts[column], current, entry), ...stamped })
  }
  return (
    <section class="trial-recorder" aria-label="Note the trial">
      <h2>Note the trial</h2>
      {rows.length === 0 ? (
        <Begin desk={desk} onBegin={(values) => write({ steps: orderOf(values) })} />
      ) : (
        <>
          <ol class="trial-steps">
            {rows.map((row, index) => (
              <li key={index}>
                <button
                  type="button"
                  class="answer-row"
                  aria-pressed={index === current}
                  onClick={() => setOpened(index)}
                >
                  <span>
                    {row.steps === 'empty' ? 'empty adapter' : row.steps}
                    {row.places === 'between' && ', between the wires'}
                  </span>
                  <span class="row-note">{saidOf(row, index)}</span>
                </button>
              </li>
            ))}
          </ol>
          <StepPad
            row={rows[current]}
            number={current + 1}
            onNote={note}
            onNext={current < rows.length - 1 ? () => setOpened(current + 1) : undefined}
          />
          <AddValue desk={desk} onAdd={(value) => write(withValue(texts, value))} />
        </>
      )}
      <div class="actions">
        <PrintTrialCard desk={desk} steps={rows.map(({ steps }) => steps)} />
        <PutAway model={model} desk={desk} texts={texts} />
      </div>
      <EarlierTrials desk={desk} />
    </section>
  )
}

function saidOf({ noise, signal, repeats, times }: ReturnType<typeof rowsOf>[number], index: number): string {
  const said = [
    ...(noise === '' ? [] : [`noise ${noise}`]),
    ...(signal === '' ? [] : [`signal ${signal}`]),
    ...(repeats === '' ? [] : [repeats]),
    ...(times === '' ? [] : [times]),
  ]
  return said.length > 0 ? said.join(', ') : index === 0 ? 'as it is' : 'not noted'
}

/** Nothing is offered before the safety questions are answered. */
function Begin({ desk, onBegin }: { readonly desk: Desk; readonly onBegin: (values: readonly string[]) => void }) {
  const line = desk.line.value
  const offered = useMemo(() => offeredOn(line, expressionReading), [line])
  if (line.gate !== 'clear')
    return (
      <p class="notice" role="note">
        Values to try are offered once <a href="#/ask">the safety questions</a> are answered. What was done may be
        noted.{' '}
        <button type="button" class="button" onClick={() => onBegin([])}>
          Note bare, empty, bare
        </button>
      </p>
    )
  const values = offered.map((farads) => printText(farads, 'capacitance'))
  return (
    <div class="stack">
      <p>
        {values.length === 0
          ? 'The window offers no values yet; begin, and add what you have.'
          : `The window offers ${values.join(', ')}: under its least, inside, near its most. Take what you have nearest.`}
      </p>
      <button type="button" class="button strong" onClick={() => onBegin(values)}>
        Begin: bare, empty, {values.length === 0 ? '' : `${values.length} values, `}empty, bare
      </button>
    </div>
  )
}

const SIGNALS = ['good', 'degraded', 'not looked at'] as const

function StepPad(given: {
  readonly row: ReturnType<typeof rowsOf>[number] | undefined
  readonly number: number
  readonly onNote: (column: TrialColumn, entry: string) => void
  readonly onNext: (() => void) | undefined
}) {
  const { row, number, onNote, onNext } = given
  if (row === undefined) return null
  const part = row.steps === 'empty' ? 'empty adapter' : row.steps
  return (
    <fieldset class="trial-pad">
      <legend>
        Step {number}: {part}
      </legend>
      <Pad label="Noise" words={asWords(NOISE_WORDS)} value={row.noise} onPick={(word) => onNote('noise', word)} />
      <Reading key={number} value={row.noise} onType={(text) => onNote('noise', text)} />
      {row.steps !== 'bare' && (
        <Pad label="Signal" words={asWords(SIGNALS)} value={row.signal} onPick={(word) => onNote('signal', word)} />
      )}
      {row.steps !== 'bare' && (
        <Pad
          label="Repeated"
          words={asWords(REPEAT_WORDS)}
          value={row.repeats}
          onPick={(word) => onNote('repeats', word)}
        />
      )}
      {onNext !== undefined && (
        <button type="button" class="button strong" onClick={onNext}>
          Next step
        </button>
      )}
    </fieldset>
  )
}

/** A reading of the receiver in place of a word, written when the field is left. */
function Reading({ value, onType }: { readonly value: string; readonly onType: (text: string) => void }) {
  const isWord = (NOISE_WORDS as readonly string[]).includes(value)
  const [text, setText] = useState(isWord ? '' : value)
  const leave = () => {
    if (text.trim() !== (isWord ? '' : value)) onType(text)
  }
  return (
    <div class="field wide">
      <label for="trial-reading">or its reading</label>
      <input
        id="trial-reading"
        type="text"
        value={text}
        autocomplete="off"
        placeholder="62 dBµV"
        onInput={(event) => setText(event.currentTarget.value)}
        onBlur={leave}
      />
    </div>
  )
}

/** What is no capacitance, and what is more than the signal stands, is not added; empty = nothing against it. */
function refusalOf(line: Line, text: string): string {
  const read = parseQuantity(text, 'capacitance')
  if (read.is === 'refused') return read.message
  if (read.is !== 'value') return 'Write one value, such as 2.2 nF.'
  const { mostF } = aloneOn(line, expressionReading)
  return mostF === undefined || read.si <= mostF
    ? ''
    : `The signal stands ${formatEstimate(mostF, 'capacitance', 'most')}: a larger one is not tried.`
}

function AddValue({ desk, onAdd }: { readonly desk: Desk; readonly onAdd: (value: string) => void }) {
  const [text, setText] = useState('')
  const [refusal, setRefusal] = useState('')
  const add = () => {
    const said = refusalOf(desk.line.peek(), text)
    setRefusal(said)
    if (said !== '') return
    onAdd(text.trim())
    setText('')
  }
  return (
    <div class="field wide">
      <label for="trial-add">Another value at hand</label>
      <span class="pad-row">
        <input
          id="trial-add"
          type="text"
          value={text}
          autocomplete="off"
          placeholder="2.2 nF"
          data-keys="pnµ"
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <button type="button" class="button" onClick={add} disabled={text.trim() === ''}>
          Add
        </button>
      </span>
      {refusal !== '' && (
        <p class="notice" role="alert">
          {refusal}
        </p>
      )}
    </div>
  )
}
