import { untracked } from '@preact/signals'
import type { Connector } from '../../calc/connector/types.ts'
import { evaluateNow } from '../../calc/line/evaluate.ts'
import { resolve } from '../../calc/line/resolver.ts'
import { CHECKS, checkById } from '../../calc/registry.ts'
import type { Check, Line, Result } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import type { Guide } from '../../guide/types.ts'
import { SHEET_CAUTIONS } from '../../reference/safety.ts'
import type { Complaint } from '../../state/complaints.ts'
import { expressionReading } from '../../state/expression.ts'
import { storedTraces } from '../../state/stored-traces.ts'
import { readVariants, type Variants } from '../../state/variants.ts'
import { drawn } from '../parts/answer.tsx'
import { outputText } from '../parts/figure.ts'
import { originWords } from '../parts/origin.ts'
import { PictureView } from '../parts/picture.tsx'
import { factMeaning, factWords, knownFacts } from '../screens/known-facts.ts'
import { dayAndTime } from '../screens/moment.ts'
import { CloseOutPart } from './close-out-part.tsx'
import { Part, SheetCautions, SheetFoot, SheetHead } from './frame.tsx'
import { lay } from './lay.tsx'
import { SheetAircraft, SheetStory } from './sheet-story.tsx'
import { SheetVariants } from './sheet-variants.tsx'

/** `address`: what somebody else can open of it; none where nothing of it can be opened elsewhere. */
type Given = {
  readonly complaint: Complaint
  readonly guide: Guide | undefined
  readonly address: string | undefined
  /** each has a sheet of its own, with the lines its contacts carry */
  readonly connectors?: readonly Connector[]
}

/** Lays out a complaint in full: what was reported, seen and tried, why, what to do, and the checks with their figures. */
export function layComplaintSheet(given: Given): () => void {
  return untracked(() => lay(<ComplaintSheet {...given} />))
}

function ComplaintSheet({ complaint, guide, address, connectors = [] }: Given) {
  const { title, aircraft = '', lines, createdAt, updatedAt, isDemo } = complaint
  const carried = new Set(connectors.flatMap(({ contacts }) => contacts.map(({ lineId }) => lineId)))
  return (
    <>
      <SheetHead title={title || 'Untitled complaint'} {...(address !== undefined && { address })}>
        <p>
          Begun {dayAndTime(createdAt)}, changed {dayAndTime(updatedAt)}
          {isDemo ? ', demo (invented)' : ''}.
        </p>
        <SheetAircraft aircraft={aircraft} />
      </SheetHead>
      <SheetStory complaint={complaint} guide={guide} />
      {connectors.length > 0 && <OwnSheets connectors={connectors} />}
      {lines.map((line, index) =>
        carried.has(line.id) ? null : <SheetLine key={line.id} complaint={complaint} line={line} number={index + 1} />,
      )}
      <Loose complaint={complaint} />
      <CloseOutPart complaint={complaint} traces={storedTraces(lines)} />
      <SheetCautions ids={SHEET_CAUTIONS} />
      <SheetFoot />
    </>
  )
}

function OwnSheets({ connectors }: { readonly connectors: readonly Connector[] }) {
  return (
    <Part title="Connectors">
      {connectors.map(({ id, name, contacts }) => (
        <p key={id}>
          {name || 'Connector without a label'}: {contacts.length} contacts, on a sheet of its own with the lines they
          carry.
        </p>
      ))}
    </Part>
  )
}

type LineGiven = { readonly complaint: Complaint; readonly line: Line; readonly number: number }

/** One line: its facts, its window, and every check kept on it. */
function SheetLine({ complaint, line, number }: LineGiven) {
  const isKept = ({ id }: Check) =>
    id === 'window' || complaint.checks.some(({ check, lineId }) => check === id && lineId === line.id)
  const facts = knownFacts(line)
  return (
    <>
      <Part title={`Line: ${line.name || `number ${number}`}`}>
        <dl class="inputs columns-2">
          {facts.map(({ key, fact }) => (
            <div key={key} class="row">
              <dt>{factMeaning(key)}:</dt>{' '}
              <dd>
                <strong>{factWords(key, fact)}</strong> <em>{originWords(fact.origin)}</em>
                {fact.conflicts.map((other) => `; against it: ${factWords(key, other)}, ${originWords(other.origin)}`)}
              </dd>
            </div>
          ))}
        </dl>
        {facts.length === 0 && <p>No fact yet.</p>}
      </Part>
      {CHECKS.filter(isKept).map((check) => (
        <SheetCheck key={check.id} check={check} line={line} beside={besideOf(complaint, check, line)} />
      ))}
    </>
  )
}

function besideOf({ checks }: Complaint, { id, inputs }: Check, line: Line): Variants {
  const saved = checks.find(({ check, lineId }) => check === id && lineId === line.id)
  return readVariants(inputs, saved?.beside ?? '')
}

type CheckGiven = { readonly check: Check; readonly line: Line; readonly beside: Variants }

/** A check in short: its sentence, its figures, its strip, and what it was compared with. */
function SheetCheck({ check, line, beside }: CheckGiven) {
  const result = evaluateNow(check, resolve(line, expressionReading).fields(check))
  return (
    <section class="part">
      <h2>{`Check: ${check.title}`}</h2>
      <p>
        <strong>{result.ok ? sentenceOf(result) : result.issues.map(({ message }) => message).join(' ')}</strong>
      </p>
      <Figures check={check} result={result} />
      {result.ok &&
        drawn(result)
          .filter(({ is }) => is === 'strip')
          .map((picture) => <PictureView key={picture.title} picture={picture} bounds={result.bounds} />)}
      <SheetVariants check={check} line={line} variants={beside} />
    </section>
  )
}

function Figures({ check, result }: { readonly check: Check; readonly result: Result }) {
  if (!result.ok) return null
  const shown = check.outputs.flatMap((output) => {
    const cell = result.outputs[output.key]?.cell
    return cell && cell.is !== 'none' ? [`${output.label} ${outputText(cell, output)}`] : []
  })
  return shown.length === 0 ? null : <p>{shown.join('; ')}.</p>
}

/** Checks that no line holds: of a version that has more of them than this one. */
function Loose({ complaint: { checks, lines } }: { readonly complaint: Complaint }) {
  const loose = checks.filter(({ address, lineId }) => address !== undefined && !lines.some(({ id }) => id === lineId))
  if (loose.length === 0) return null
  return (
    <Part title="Other checks">
      {loose.map(({ check, address }) => (
        <p key={address} class="row">
          <strong>{checkById(check)?.title ?? check}:</strong> {address}
        </p>
      ))}
    </Part>
  )
}
