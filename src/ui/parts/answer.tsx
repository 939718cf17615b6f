import type { ComponentChildren } from 'preact'
import type { Field } from '../../calc/fields.ts'
import type {
  Basis,
  Bound,
  Cell,
  Check,
  Finding,
  Output,
  Picture,
  Result,
  Rung,
  Success,
  Verdict,
} from '../../calc/types.ts'
import { assumedText, cellText, printed, splitFigure } from './figure.ts'
import { Icon } from './icon.tsx'
import { PictureView } from './picture.tsx'
import { VerdictMark } from './verdict.tsx'
import { Working } from './working.tsx'

/** `live`: this answer belongs to the page's own fields, so that its figures may carry the ids that addresses promise. */
type Live = { readonly live: boolean }

/** The output shown largest: the first `lead` that has a value, else the first number. */
export function leadOutput(check: Check, result: Success): Output | undefined {
  const kind = (output: Output) => result.outputs[output.key]?.cell.is ?? 'none'
  return (
    check.outputs.find((output) => output.lead && kind(output) !== 'none') ??
    check.outputs.find((output) => kind(output) === 'si')
  )
}

/** Whether there is anything to read yet, or only fields to fill in. */
export function isAnswered(result: Success): boolean {
  return Object.values(result.outputs).some((shown) => shown?.cell.is === 'si')
}

/** Pictures with something in them. */
function drawn(result: Success): readonly Picture[] {
  return result.pictures.filter(
    (picture) => picture.is !== 'strip' || picture.rows.some((row) => row.state !== 'none' || row.permittedF),
  )
}

type Given = Live & { readonly check: Check; readonly fields: readonly Field[]; readonly result: Success }

/** The answer: the largest thing on the screen, then its margin in words, its picture, and what it rests on. */
export function AnswerCard({
  check,
  fields,
  result,
  live,
  children,
}: Given & { readonly children?: ComponentChildren }) {
  const lead = leadOutput(check, result)
  const shown = lead ? result.outputs[lead.key] : undefined
  const [picture] = drawn(result)
  return (
    <section class={live ? 'answer' : 'answer stale'} aria-label="Answer" aria-busy={!live}>
      <div class="answer-top">
        {lead && <p class="answer-label">{lead.label}</p>}
        {result.verdict && (
          <output
            aria-live="off"
            class="verdict"
            {...(live ? { id: 'verdict', 'data-verdict': result.verdict } : { 'data-output': 'verdict' })}
          >
            <VerdictMark verdict={result.verdict} />
          </output>
        )}
      </div>
      {lead && shown && (
        <p class="lead">
          <Figure outputKey={lead.key} cell={shown.cell} output={lead} live={live} />
        </p>
      )}
      <p class="headline">{result.headline}</p>
      {children}
      {picture && <PictureView picture={picture} bounds={result.bounds} />}
      {lead && shown && (
        <details class="fold">
          <summary>Working and source</summary>
          <Working basis={shown.basis} />
        </details>
      )}
      <Assumed fields={fields} verdict={result.verdict} />
    </section>
  )
}

/** One result, machine-readable at full precision. */
export function Figure(given: Live & { readonly outputKey: string; readonly cell: Cell; readonly output: Output }) {
  const { outputKey, cell, output, live } = given
  const si = cell.is === 'si' ? String(cell.si) : ''
  const names = live ? { id: outputKey, 'data-si': si } : { 'data-output': outputKey }
  if (cell.is === 'word' && cell.verdict) {
    return (
      <output aria-live="off" class="figure word" {...names} data-verdict={live ? cell.verdict : undefined}>
        <VerdictMark verdict={cell.verdict} word={cell.word} />
      </output>
    )
  }
  const text = cellText(cell, output.quantity, output.digits)
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
 * Every assumption stands beside the answer. So does what was not entered, as soon as the verdict could be taken for
 * more than it is; the reasons are one tap away.
 */
function Assumed({ fields, verdict }: { readonly fields: readonly Field[]; readonly verdict: Verdict | undefined }) {
  const assumed = fields.filter((field) => field.state === 'assumed' && field.assumed)
  const left = fields.filter((field) => field.state === 'omitted' || field.state === 'missing')
  const isJudged = verdict === 'ok' || verdict === 'marginal'
  return (
    <>
      <AssumedLine words="assumed" fields={assumed.filter((field) => !field.assumed?.favourable)} />
      <AssumedLine words="assumed in your favour" fields={assumed.filter((field) => field.assumed?.favourable)} />
      {isJudged && left.length > 0 && (
        <p class="beside">
          <strong>not entered, not judged:</strong> {left.map((field) => field.input.label).join(', ')}
        </p>
      )}
      {assumed.length > 0 && (
        <details class="fold">
          <summary>Why these assumptions</summary>
          <ul class="plain">
            {assumed.map((field) => (
              <li key={field.key}>
                {assumedWords(field)}: {field.assumed?.why}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}

function AssumedLine({ words, fields }: { readonly words: string; readonly fields: readonly Field[] }) {
  if (fields.length === 0) return null
  return (
    <p class="beside">
      <strong>{words}:</strong> {fields.map(assumedWords).join('; ')}
    </p>
  )
}

function assumedWords(field: Field): string {
  return `${field.input.label} ${assumedText(field)}`
}

/** Further pictures, reasons, every other figure, bounds and rungs, each with its working one tap away. */
export function AnswerDetail({ check, result, live }: Omit<Given, 'fields'>) {
  const lead = leadOutput(check, result)
  const others = check.outputs.filter((output) => output.key !== lead?.key && result.outputs[output.key] !== undefined)
  return (
    <div class={live ? 'answer-detail' : 'answer-detail stale'}>
      {drawn(result)
        .slice(1)
        .map((picture) => (
          <PictureView key={`${picture.is}${picture.title}`} picture={picture} bounds={result.bounds} />
        ))}
      <Findings findings={unsaid(result)} />
      {others.length > 0 && (
        <FigureList isAnswered={isAnswered(result)}>
          {others.map((output) => {
            const shown = result.outputs[output.key]
            return shown ? (
              <FoldedFigure key={output.key} label={output.label} basis={shown.basis}>
                <Figure outputKey={output.key} cell={shown.cell} output={output} live={live} />
              </FoldedFigure>
            ) : null
          })}
        </FigureList>
      )}
      <Bounds bounds={result.bounds} />
      <Rungs rungs={result.rungs} />
    </div>
  )
}

/** Figures that do not exist yet say why they do not, but stay folded, so that the fields are not far down. */
function FigureList({
  isAnswered: open,
  children,
}: {
  readonly isAnswered: boolean
  readonly children: ComponentChildren
}) {
  if (!open) {
    return (
      <details class="fold figures">
        <summary>No figures yet</summary>
        {children}
      </details>
    )
  }
  return (
    <section aria-label="Figures" class="figures">
      <h2>Figures</h2>
      {children}
    </section>
  )
}

/** Findings that no picture has said already, word for word. */
function unsaid(result: Success): readonly Finding[] {
  const said = new Set(
    result.pictures.flatMap((picture) =>
      picture.is === 'plot' ? picture.flags : picture.is === 'ladder' ? picture.faults : [],
    ),
  )
  return result.findings.filter((finding) => !said.has(finding.sentence))
}

function FoldedFigure(given: { readonly label: string; readonly basis: Basis; readonly children: ComponentChildren }) {
  return (
    <details class="figure-row">
      <summary>
        <span class="figure-label">{given.label}</span>
        {given.children}
      </summary>
      <Working basis={given.basis} />
    </details>
  )
}

export function Findings({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return null
  return (
    <ul class="findings" aria-label="Findings">
      {findings.map((finding) => (
        <li key={finding.sentence} class={`finding ${finding.verdict}`}>
          <Icon name={finding.verdict} />
          <span>{finding.sentence}</span>
        </li>
      ))}
    </ul>
  )
}

const NATURE_WORDS: Readonly<Record<Bound['nature'], string>> = {
  need: 'set by the attenuation needed',
  works: 'set by what the signal can stand',
  permitted: 'set by a document; above it is marginal',
}

function Bounds({ bounds }: { readonly bounds: readonly Bound[] }) {
  if (bounds.length === 0) return null
  return (
    <section aria-label="Bounds" class="figures">
      <h2>Bounds</h2>
      {bounds.map((bound) => (
        <details key={`${bound.id}${bound.topology}`} class="figure-row">
          <summary>
            <span class="figure-label">
              {bound.topology === 'any' ? '' : `${topologyWord(bound.topology)}: `}
              {bound.why}
            </span>
            <span class="figure si">
              {bound.side === 'least' ? '≥ ' : '≤ '}
              {printed(bound.markedF, 'capacitance')}
            </span>
          </summary>
          <p>
            {bound.appliesTo}; {NATURE_WORDS[bound.nature]}.
          </p>
          {bound.openedBy.length > 0 && (
            <ul class="plain">
              {bound.openedBy.map((opener) => (
                <li key={opener.id}>{opener.sentence}</li>
              ))}
            </ul>
          )}
          <Working basis={bound.basis} />
        </details>
      ))}
    </section>
  )
}

export function topologyWord(topology: string): string {
  return topology === 'PI' ? 'Pi' : topology
}

function Rungs({ rungs }: { readonly rungs: readonly Rung[] }) {
  if (rungs.length === 0) return null
  return (
    <section aria-label="Rungs" class="figures">
      <h2>Rungs</h2>
      {rungs.map((rung) => (
        <FoldedFigure key={rung.id} label={rung.label} basis={rung.basis}>
          <span class="figure si">
            {rung.minV === rung.maxV ? '' : `${printed(rung.minV, 'voltage')} to `}
            {printed(rung.maxV, 'voltage')}
          </span>
        </FoldedFigure>
      ))}
    </section>
  )
}

/** What stands in the way of an answer, each with a way to the field. */
export function Refusals(given: {
  readonly result: Extract<Result, { ok: false }>
  readonly fields: readonly Field[]
}) {
  const { result, fields } = given
  return (
    <section class="answer" aria-label="Answer">
      <p class="headline">No answer yet.</p>
      <ul class="plain">
        {result.issues.map((issue) => {
          const field = fields.find((each) => each.key === issue.key)
          return (
            <li key={`${issue.key}${issue.code}`}>
              {field && (
                <button type="button" class="link" onClick={() => focusField(issue.key)}>
                  {field.input.label}
                </button>
              )}
              {field ? ': ' : ''}
              {issue.message}
            </li>
          )
        })}
      </ul>
    </section>
  )
}

/** Opens the fold a field may be in, and puts the cursor there. */
export function focusField(key: string): void {
  const field = document.getElementById(`in-${key}`)
  field?.closest('details:not([open])')?.setAttribute('open', '')
  const target = field?.matches('input, button') ? field : field?.querySelector<HTMLElement>('input:checked, input')
  target?.focus()
  field?.scrollIntoView({ block: 'center' })
}
