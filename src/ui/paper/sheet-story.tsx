/** What a complaint came to: decision, reasons, answers, tests with what was read, tables and photos, as typed. */
import { isEvidence, nodeById, replay } from '../../guide/engine.ts'
import { FILL_INS, type FillInId, filledRows } from '../../guide/fill-ins.ts'
import type { Event } from '../../guide/investigation.ts'
import { translateEvents } from '../../guide/retired.ts'
import type { Guide, Position, TrailStep } from '../../guide/types.ts'
import type { Complaint } from '../../state/complaints.ts'
import { photos } from '../../state/photos.ts'
import { FilledTable } from '../parts/fill-in.tsx'
import { type Decided, decided } from '../screens/decided.ts'
import { besides } from '../screens/handover.tsx'
import { dayAndTime } from '../screens/moment.ts'
import { Part } from './frame.tsx'

type Given = { readonly complaint: Complaint; readonly guide: Guide | undefined }

/** The complaint as it was reported and everything that was found out about it. */
export function SheetStory({ complaint, guide }: Given) {
  return (
    <>
      {complaint.note.trim() !== '' && (
        <Part title="Reported, in the user’s words">
          <p class="as-typed">{complaint.note}</p>
        </Part>
      )}
      {guide && <Triage complaint={complaint} guide={guide} />}
      {FILL_IN_IDS.map((id) => (
        <FilledIn key={id} complaint={complaint} id={id} />
      ))}
      <SheetPhotos complaint={complaint} guide={guide} />
    </>
  )
}

/** The aircraft as typed, or a line to write it on. */
export function SheetAircraft({ aircraft }: { readonly aircraft: string }) {
  return aircraft.trim() === '' ? (
    <p class="sign">
      <span>Aircraft: type and registration</span>
    </p>
  ) : (
    <p>
      <strong>Aircraft:</strong> {aircraft}
    </p>
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
function SheetPhotos({ complaint, guide }: Given) {
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
