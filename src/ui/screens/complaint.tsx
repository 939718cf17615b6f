import { useEffect, useState } from 'preact/hooks'
import { FACTS, type FactKey } from '../../calc/ids.ts'
import { resolveFact } from '../../calc/line/resolver.ts'
import { checkById } from '../../calc/registry.ts'
import type { Fact, Line } from '../../calc/types.ts'
import { replay } from '../../guide/engine.ts'
import type { Guide } from '../../guide/types.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import { SHEET_CAUTIONS } from '../../reference/safety.ts'
import {
  type Complaint,
  change,
  complaints,
  openComplaint,
  opened,
  remove,
  rename,
  writeNote,
} from '../../state/complaints.ts'
import { expressionReading } from '../../state/expression.ts'
import { guide, loadGuide } from '../../state/guide-content.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { resumeComplaint } from '../../state/session.ts'
import { Cautions, Screening } from '../parts/cautions.tsx'
import { Icon } from '../parts/icon.tsx'
import { LineWindow } from '../parts/line-window.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { PrintButton, ShareButton } from '../parts/share-button.tsx'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'
import { dayAndTime } from './moment.ts'

/** One complaint of the log: everything known about it, and ways to go on. */
export function ComplaintScreen({ id }: { readonly id: string }) {
  useEffect(() => {
    openComplaint(id)
    loadGuide().catch(() => undefined)
  }, [id])
  const complaint = opened.value?.id === id ? opened.value : complaints.value?.find((each) => each.id === id)
  if (complaints.value === undefined)
    return (
      <p class="loading" role="status">
        Reading the log…
      </p>
    )
  if (!complaint) return <Nowhere path={`#/log/${id}`} what="complaint on this device" />
  return <Open key={id} complaint={complaint} />
}

function Open({ complaint }: { readonly complaint: Complaint }) {
  return (
    <>
      <Head title={complaint.title || 'Untitled complaint'}>
        <a class="up" href="#/log">
          <Icon name="back" />
          All complaints
        </a>
        <p class="muted small">
          begun {dayAndTime(complaint.createdAt)}, changed {dayAndTime(complaint.updatedAt)}
          {complaint.isDemo ? ', demo (invented)' : ''}
        </p>
      </Head>
      <PrintHead />
      <div class="panes">
        <div class="pane stack">
          <TitleAndNote complaint={complaint} />
          <TriageTrail complaint={complaint} guide={guide.value} />
          <SavedChecks complaint={complaint} />
        </div>
        <div class="pane stack">
          {complaint.lines.map((line) => (
            <LineSection key={line.id} line={line} onLine={(changed) => changeLine(complaint, changed)} />
          ))}
        </div>
      </div>
      <ComplaintActions complaint={complaint} />
      <Cautions ids={SHEET_CAUTIONS} />
      <Screening />
    </>
  )
}

function TitleAndNote({ complaint }: { readonly complaint: Complaint }) {
  const [title, setTitle] = useState(complaint.title)
  const [note, setNote] = useState(complaint.note)
  return (
    <>
      <div class="field wide">
        <label for="title">Title</label>
        <input
          id="title"
          type="text"
          value={title}
          autocomplete="off"
          enterkeyhint="done"
          onInput={(event) => {
            setTitle(event.currentTarget.value)
            rename(complaint.id, event.currentTarget.value)
          }}
        />
      </div>
      <div class="field wide">
        <label for="note">Note</label>
        <textarea
          id="note"
          rows={4}
          value={note}
          onInput={(event) => {
            setNote(event.currentTarget.value)
            writeNote(complaint.id, event.currentTarget.value)
          }}
        />
      </div>
    </>
  )
}

function TriageTrail({
  complaint,
  guide: content,
}: {
  readonly complaint: Complaint
  readonly guide: Guide | undefined
}) {
  if (!content) return null
  const position = replay(content, complaint.answers)
  const goOn = () => {
    resumeComplaint(complaint)
    goTo(hashOf('ask', position.current.id))
  }
  const { trail, current } = position
  return (
    <section aria-label="Triage">
      <h2>Triage</h2>
      {trail.length === 0 && <p class="muted">No question answered yet.</p>}
      <dl class="facts">
        {trail.map((step) => (
          <div key={step.node.id}>
            <dt>{step.node.text}</dt>
            <dd>{step.label}</dd>
          </div>
        ))}
        {current.is === 'outcome' && (
          <div>
            <dt>Result</dt>
            <dd>
              <strong>{current.headline}</strong>
            </dd>
          </div>
        )}
      </dl>
      {complaint.guideVersion > 0 && complaint.guideVersion !== content.version && (
        <p class="muted small">Answered with an older guide; answers that no longer exist are skipped.</p>
      )}
      <button type="button" class="button" onClick={goOn}>
        {trail.length === 0
          ? 'Start the triage'
          : current.is === 'outcome'
            ? 'Open the result'
            : 'Go on with the triage'}
      </button>
    </section>
  )
}

function changeLine(complaint: Complaint, changed: Line): void {
  change(complaint.id, { lines: complaint.lines.map((line) => (line.id === changed.id ? changed : line)) })
}

function LineSection({ line, onLine }: { readonly line: Line; readonly onLine: (line: Line) => void }) {
  const facts = Object.entries(line.facts) as [FactKey, Fact][]
  return (
    <>
      <LineWindow line={line} title={line.name ? `Window: ${line.name}` : 'Window'} onLine={onLine} />
      <section aria-label={`Facts ${line.name}`}>
        <h2>Facts {line.name && `of ${line.name}`}</h2>
        {facts.length === 0 && <p class="muted">None yet.</p>}
        <dl class="facts">
          {facts.map(([key, fact]) => (
            <div key={key}>
              <dt>{FACTS[key]}</dt>
              <dd>
                {factWords(key, fact)} <span class="standing">{originWords(fact)}</span>
                <Conflicts line={line} fact={key} />
              </dd>
            </div>
          ))}
        </dl>
      </section>
    </>
  )
}

/** The text of a fact; the kind of line by its name. */
function factWords(key: FactKey, fact: Fact): string {
  return key === 'lineKind' ? (lineKindById(fact.text)?.name ?? fact.text) : fact.text
}

/** What else claims to know a fact: shown, not hidden. */
function Conflicts({ line, fact }: { readonly line: Line; readonly fact: FactKey }) {
  const conflicts = resolveFact(line, fact, expressionReading)?.conflicts ?? []
  return conflicts.map((other) => (
    <span key={`${other.origin.by}${other.text}`} class="row-note">
      against it: {factWords(fact, other)}, {originWords(other)}
    </span>
  ))
}

function originWords({ origin }: Fact): string {
  switch (origin.by) {
    case 'user':
      return 'typed'
    case 'kind':
      return 'from the kind of line'
    case 'answer':
      return 'from an answer'
    case 'trial':
      return 'from a trial'
    case 'check':
      return `from ${origin.check}`
    case 'assumed':
      return `assumed: ${origin.why}`
  }
}

function SavedChecks({ complaint }: { readonly complaint: Complaint }) {
  if (complaint.checks.length === 0) return null
  return (
    <section aria-label="Checks">
      <h2>Checks</h2>
      <ul class="rows">
        {complaint.checks.map(({ check: id, address, lineId }) => {
          const check = checkById(id)
          return (
            <li key={address ?? lineId}>
              <a href={address ?? hashOf('check', id)}>
                <span>
                  <strong>{check?.title ?? id}</strong>
                  {check && <span class="row-note">{check.question}</span>}
                </span>
                <Icon name="go" />
              </a>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

function ComplaintActions({ complaint }: { readonly complaint: Complaint }) {
  const words = complaint.note
  return (
    <div class="actions">
      <ShareButton title={complaint.title} words={words} hash={complaint.checks[0]?.address ?? '#/log'} />
      <PrintButton />
      <button
        type="button"
        class="button"
        onClick={() => {
          remove(complaint.id)
          goTo('#/log')
        }}
      >
        <Icon name="close" />
        Delete
      </button>
    </div>
  )
}
