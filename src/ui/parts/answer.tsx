import { useContext, useMemo, useRef } from 'preact/hooks'
import { type Field, isUsual } from '../../calc/line/fields.ts'
import type { Cell, Check, Output, Picture, Success, Verdict } from '../../calc/types.ts'
import { assumedText, outputText, splitFigure } from './figure.ts'
import { IsLive } from './live.ts'
import { NextTurn } from './next-turn.tsx'
import { focusField } from './refusals.tsx'
import { AnswerSentence, VerdictMark } from './verdict.tsx'

/** The output shown largest: the first `lead` that has a value, else the first number. */
export function leadOutput(check: Check, result: Success): Output | undefined {
  return check.outputs.find((output) => output.lead && (result.outputs[output.key]?.cell.is ?? 'none') !== 'none')
}

/** Whether there is anything to read yet, or only fields to fill in. */
export function isAnswered(result: Success): boolean {
  return Object.values(result.outputs).some((shown) => shown?.cell.is === 'si')
}

/** Pictures with something in them. */
export function drawn(result: Success): readonly Picture[] {
  return result.pictures.filter(
    (picture) => picture.is !== 'strip' || picture.rows.some((row) => row.state !== 'none' || row.permittedF),
  )
}

type Given = { readonly check: Check; readonly fields: readonly Field[]; readonly result: Success }

type CardGiven = Given & {
  /** the answer belongs to the fields as they are */
  readonly live: boolean
  /** it has not for a while */
  readonly isOld: boolean
  readonly isBusy: boolean
}

/** The answer; an old one keeps the fields it was worked out from, and is dimmed without being drawn again. */
export function AnswerCard({ check, fields, result, live, isOld, isBusy }: CardGiven) {
  const judged = useRef(fields)
  if (live) judged.current = fields
  const of = judged.current
  const body = useMemo(() => <CardBody check={check} fields={of} result={result} />, [check, of, result])
  return (
    <section class={isOld ? 'answer stale' : 'answer'} aria-label="Answer" aria-busy={isBusy}>
      <IsLive.Provider value={live}>{body}</IsLive.Provider>
    </section>
  )
}

/** Its sentence is the largest thing on the screen, then its figure and what it rests on; pictures follow the fields. */
function CardBody({ check, fields, result }: Given) {
  const lead = leadOutput(check, result)
  const shown = lead ? result.outputs[lead.key] : undefined
  return (
    <>
      <p class="sentence">
        <AnswerSentence result={result} />
      </p>
      {result.needs && <Needs needs={result.needs} fields={fields} />}
      {lead && shown && (
        <p class="lead">
          <span class="answer-label">{lead.label}</span> <Figure outputKey={lead.key} cell={shown.cell} output={lead} />
        </p>
      )}
      <Assumed fields={fields} verdict={result.verdict} />
    </>
  )
}

/** The one fact that would decide: a way to its field, and how it is found out. */
function Needs({
  needs,
  fields,
}: {
  readonly needs: NonNullable<Success['needs']>
  readonly fields: readonly Field[]
}) {
  const field = fields.find(({ key }) => key === needs.key)
  if (field === undefined) return null
  return (
    <p class="needs">
      <button type="button" class="link" onClick={() => focusField(needs.key)}>
        {field.input.label}
      </button>
      <span class="muted small">{needs.sentence}</span>
    </p>
  )
}

/** One result, machine-readable at full precision. `isRepeated`: it stands elsewhere on the page under its id. */
export function Figure(given: {
  readonly outputKey: string
  readonly cell: Cell
  readonly output: Output
  readonly isRepeated?: boolean
}) {
  const { outputKey, cell, output, isRepeated = false } = given
  const live = useContext(IsLive) && !isRepeated
  const si = cell.is === 'si' ? String(cell.si) : ''
  const names = live ? { id: outputKey, 'data-si': si } : { 'data-output': outputKey }
  if (cell.is === 'word' && cell.verdict) {
    return (
      <output aria-live="off" class="figure word" {...names} data-verdict={live ? cell.verdict : undefined}>
        <VerdictMark verdict={cell.verdict} word={cell.word} />
      </output>
    )
  }
  const text = outputText(cell, output)
  const { number, unit } = cell.is === 'si' ? splitFigure(text) : { number: text, unit: '' }
  return (
    <output aria-live="off" class={`figure ${cell.is}`} {...names}>
      {number}
      {unit !== '' && (
        <>
          {'\u00a0'}
          <span class="unit">{unit}</span>
        </>
      )}
    </output>
  )
}

/**
 * Every assumption stands beside the answer, counted in one line that names the favourable ones and opens to all of them
 * with their reasons. So does what was not entered, as soon as the verdict could be taken for more than it is.
 */
function Assumed({ fields, verdict }: { readonly fields: readonly Field[]; readonly verdict: Verdict | undefined }) {
  const assumed = fields.filter((field) => field.state === 'assumed' && field.assumed)
  const favourable = assumed.filter((field) => field.assumed?.favourable)
  const usual = fields.filter(isUsual)
  const isJudged = verdict === 'ok' || verdict === 'marginal'
  const left = isJudged ? fields.filter(({ state }) => state === 'omitted' || state === 'missing') : []
  const counts = [
    favourable.length > 0 && `${favourable.length} assumed in your favour`,
    assumed.length > favourable.length && `${assumed.length - favourable.length} assumed`,
    usual.length > 0 && `${usual.length} as usual`,
    left.length > 0 && `${left.length} not entered`,
  ].filter((part) => part !== false)
  if (counts.length === 0) return null
  return (
    <details class="fold beside">
      <summary>{counts.join(', ')}</summary>
      <NextTurn>
        <AssumedLine words="assumed" fields={assumed.filter((field) => !field.assumed?.favourable)} />
        {usual.length > 0 && (
          <p>
            <strong>usual values, change them if yours differ:</strong>{' '}
            {usual.map((field) => `${field.input.label} ${usualText(field)}`).join('; ')}
          </p>
        )}
        <AssumedLine words="assumed in your favour" fields={favourable} />
        {left.length > 0 && (
          <p>
            <strong>not entered, not judged:</strong> {left.map((field) => field.input.label).join(', ')}
          </p>
        )}
        {assumed.length + usual.length > 0 && (
          <>
            <p>
              <strong>why:</strong>
            </p>
            <ul class="plain">
              {assumed.map((field) => (
                <li key={field.key}>
                  {assumedWords(field)}: {field.assumed?.why}
                </li>
              ))}
              {usual.map((field) => (
                <li key={field.key}>
                  {field.input.label} {usualText(field)}:{' '}
                  {field.input.whenEmpty.do === 'assume' && field.input.whenEmpty.why}
                </li>
              ))}
            </ul>
          </>
        )}
      </NextTurn>
    </details>
  )
}

/** The words of a choice, yes or no of a switch, otherwise the text as it stands in the field. */
function usualText({ input, text }: Field): string {
  if (input.type.is === 'flag') return text.trim() === 'true' ? 'yes' : 'no'
  if (input.type.is === 'choice') return input.type.options.find(({ value }) => value === text.trim())?.label ?? text
  return text
}

function AssumedLine({ words, fields }: { readonly words: string; readonly fields: readonly Field[] }) {
  if (fields.length === 0) return null
  return (
    <p>
      <strong>{words}:</strong> {fields.map(assumedWords).join('; ')}
    </p>
  )
}

function assumedWords(field: Field): string {
  return `${field.input.label} ${assumedText(field)}`
}
