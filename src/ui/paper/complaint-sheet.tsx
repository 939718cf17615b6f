import { untracked } from '@preact/signals'
import { evaluateNow } from '../../calc/line/evaluate.ts'
import { resolve } from '../../calc/line/resolver.ts'
import { CHECKS, checkById } from '../../calc/registry.ts'
import type { Check, Line, Result } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import { isEvidence, nodeById, replay } from '../../guide/engine.ts'
import { FILL_INS, type FillInId, filledRows } from '../../guide/fill-ins.ts'
import type { Event } from '../../guide/investigation.ts'
import { translateEvents } from '../../guide/retired.ts'
import type { Guide, Position, TrailStep } from '../../guide/types.ts'
import { SHEET_CAUTIONS } from '../../reference/safety.ts'
import type { Complaint } from '../../state/complaints.ts'
import { expressionReading } from '../../state/expression.ts'
import { photos } from '../../state/photos.ts'
import { readVariants, type Variants } from '../../state/variants.ts'
import { drawn } from '../parts/answer.tsx'
import { outputText } from '../parts/figure.ts'
import { FilledTable } from '../parts/fill-in.tsx'
import { originWords } from '../parts/origin.ts'
import { PictureView } from '../parts/picture.tsx'
import { type Decided, decided } from '../screens/decided.ts'
import { besides } from '../screens/handover.tsx'
import { factMeaning, factWords, knownFacts } from '../screens/known-facts.ts'
import { dayAndTime } from '../screens/moment.ts'
import { Part, SheetCautions, SheetFoot, SheetHead } from './frame.tsx'
import { lay } from './lay.tsx'
import { SheetVariants } from './sheet-variants.tsx'

/** `address`: what somebody else can open of it; none where nothing of it can be opened elsewhere. */
type Given = { readonly complaint: Complaint; readonly guide: Guide | undefined; readonly address: string | undefined }

/** Lays out a complaint in full: what was reported, seen and tried, why, what to do, and the checks with their figures. */
export function layComplaintSheet(given: Given): () => void {
  return untracked(() => lay(<ComplaintSheet {...given} />))
}

function ComplaintSheet({ complaint, guide, address }: Given) {
  const { title, aircraft = '', note, lines, createdAt, updatedAt, isDemo } = complaint
  return (
    <>
      <SheetHead title={title || 'Untitled complaint'} {...(address !== undefined && { address })}>
        <p>
          Begun {dayAndTime(createdAt)}, changed {dayAndTime(updatedAt)}
          {isDemo ? ', demo (invented)' : ''}.
        </p>
        {aircraft.trim() === '' ? (
          <p class="sign">
            <span>Aircraft: type and registration</span>
          </p>
        ) : (
          <p>
            <strong>Aircraft:</strong> {aircraft}
          </p>
        )}
      </SheetHead>
      {note.trim() !== '' && (
        <Part title="Reported, in the user’s words">
          <p class="as-typed">{note}</p>
        </Part>
      )}
      {guide && <Triage complaint={complaint} guide={guide} />}
      {FILL_IN_IDS.map((id) => (
        <FilledIn key={id} complaint={complaint} id={id} />
      ))}
      <SheetPhotos complaint={complaint} guide={guide} />
      {lines.map((line, index) => (
        <SheetLine key={line.id} complaint={complaint} line={line} number={index + 1} />
      ))}
      <Loose complaint={complaint} />
      <SheetCautions ids={SHEET_CAUTIONS} />
      <SheetFoot />
    </>
  )
}

/** What the answers came to, in the order somebody else needs it: reason, steps, then the answers and readings. */
function Triage({ complaint, guide }: { readonly complaint: Complaint; readonly guide: Guide }) {
  const position = replay(guide, complaint.answers, complaint.events)
  const events = translateEvents(complaint.events ?? [])
  const { current, trail, reasons } = position
  if (trail.length === 0) return null
  const found = decided(complaint, guide)
  return (
    <>
      {found ? (
        <OutcomePart found={found} position={position} />
      ) : (
        <Part title="Result">
          <p>Not finished. Next: {isEvidence(current) ? current.text : current.headline}</p>
        </Part>
      )}
      {reasons.length > 0 && (
        <Part title="Because of these answers" columns={2}>
          {reasons.map(({ step, suspect }) => (
            <p key={`${step.node.id} ${suspect.id}`} class="row">
              {step.node.text} <strong>{step.label}</strong> {step.means} Speaks for: {suspect.name}.
            </p>
          ))}
        </Part>
      )}
      <Answers title="Answers" events={events} steps={trail.filter(({ node }) => node.kind === 'ask')} />
      <Answers
        title="Tests, with what was read"
        events={events}
        steps={trail.filter(({ node }) => node.kind !== 'ask')}
      />
      <Left position={position} />
    </>
  )
}

type DecidedGiven = { readonly found: Decided; readonly position: Position }

function OutcomePart({ found: { outcome, advice, sentence }, position }: DecidedGiven) {
  const { found } = position
  return (
    <>
      <p class="sentence">{sentence}</p>
      <p>
        {found !== undefined && `Cause: ${found.cure.suspect.name}, ${found.sure}. `}
        {outcome.reason}
      </p>
      {advice && advice.steps.length > 0 && (
        <Part title="Do now, in this order">
          <ol class="numbered columns-2">
            {advice.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </Part>
      )}
      <p>
        <strong>Next measurement:</strong> {outcome.nextMeasurement}
      </p>
    </>
  )
}

type AnswersGiven = { readonly title: string; readonly events: readonly Event[]; readonly steps: readonly TrailStep[] }

/** Questions with the answer each was given; readings, repeats and times as far as they were written down. */
function Answers({ title, events, steps }: AnswersGiven) {
  if (steps.length === 0) return null
  return (
    <Part title={title} columns={2}>
      {steps.map(({ node, label, isVoid }) => (
        <p key={node.id} class="row">
          {node.text} <strong>{label}</strong>
          {isVoid ? ' (repeated, it differed: counts as not known)' : ''}
          {besides(events, node.id)}
        </p>
      ))}
    </Part>
  )
}

/** What is ruled out, what is open, and what has to be put back. */
function Left({ position }: { readonly position: Position }) {
  const { standings, openTests, setAside, trail } = position
  const out = standings.filter(({ is }) => is === 'out').map(({ suspect }) => suspect.name)
  const open = (setAside.length > 0 ? setAside : openTests.slice(0, 5)).map(({ text }) => text)
  const opened = trail
    .filter(({ node, optionId }) => node.opens && optionId !== 'set-aside')
    .map(({ node }) => node.text)
  const rows: readonly (readonly [string, readonly string[]])[] = [
    ['Ruled out', out],
    ['Open', open],
    ['To be put back and counted, after', opened],
  ]
  return (
    <Part title="For the next shift">
      {rows.map(([name, items]) => (
        <p key={name} class="row">
          <strong>{name}:</strong> {items.length === 0 ? 'nothing' : items.join('; ')}
        </p>
      ))}
    </Part>
  )
}

const FILL_IN_IDS = Object.keys(FILL_INS) as readonly FillInId[]

/** A table that was filled in, as typed. */
function FilledIn({ complaint: { tables }, id }: { readonly complaint: Complaint; readonly id: FillInId }) {
  const rows = filledRows(tables, id)
  if (rows.length === 0) return null
  return (
    <Part title={FILL_INS[id].title}>
      <FilledTable form={FILL_INS[id]} rows={rows} />
    </Part>
  )
}

/** Photos of this complaint: those the screen has read, each under its test. */
function SheetPhotos({ complaint, guide }: Omit<Given, 'address'>) {
  const owners = [complaint.id, ...complaint.lines.map(({ id }) => id)]
  const own = (photos.peek() ?? []).filter(({ owner }) => owners.includes(owner))
  if (own.length === 0) return null
  return (
    <Part title="Photos" columns={3}>
      {own.map(({ id, url, evidence, takenAt }) => {
        const node = guide && nodeById(guide, evidence)
        const name = node && isEvidence(node) ? node.text : evidence
        return (
          <figure key={id} class="row photo">
            <img src={url} alt={name} />
            <figcaption>
              {name} {dayAndTime(takenAt)}
            </figcaption>
          </figure>
        )
      })}
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
