import { CLOSE_TEXTS, closingOf, proofSentence, RESTORE_ITEMS, STATUS_WORDS } from '../../guide/close-out.ts'
import { type StoredTrace, type TraceProof, traceProof } from '../../guide/close-out-trace.ts'
import type { Complaint } from '../../state/complaints.ts'
import { dayAndTime } from '../screens/moment.ts'
import { Part } from './frame.tsx'

const RESTORED: Readonly<Record<string, string>> = { done: 'done', none: 'none touched' }

type Given = {
  readonly complaint: Complaint
  /** those stored with its lines; undefined where they were not read */
  readonly traces: readonly StoredTrace[] | undefined
}

/** How the complaint was closed, what that rests on, and what is still to be put back; a place to sign for both. */
export function CloseOutPart({ complaint: { tables, lines }, traces }: Given) {
  const closing = closingOf(tables, lines, traces)
  const { row, status, adapters } = closing
  if (
    Object.values(row).every((text) => text.trim() === '') &&
    status === 'open' &&
    lines.every(({ trials }) => trials.length === 0)
  )
    return null
  return (
    <Part title={`Close-out: ${STATUS_WORDS[status].toLowerCase()}`} columns={2}>
      {CLOSE_TEXTS.map(({ id, label }) =>
        (row[id] ?? '').trim() === '' ? null : (
          <p key={id} class="row">
            {label}: <strong>{row[id]}</strong>
          </p>
        ),
      )}
      <p class="row">{proofSentence(closing)}</p>
      {closing.proof.is === 'trace' && <Traces proof={traceProof(row, traces)} />}
      {RESTORE_ITEMS.map(({ id, label }) => (
        <p key={id} class="row">
          {label}: <strong>{RESTORED[row[`restore-${id}`] ?? ''] ?? 'open'}</strong>
        </p>
      ))}
      {adapters.map(({ lineId, name }) => (
        <p key={lineId} class="row">
          Trial on {name}, removed and recorded: <strong>open</strong>
        </p>
      ))}
    </Part>
  )
}

/** Which stored traces the proof is, by name and date. */
function Traces({ proof }: { readonly proof: TraceProof }) {
  if (proof.is !== 'stored') return null
  const words = ({ name, takenAt }: StoredTrace) => `${name}, stored ${dayAndTime(takenAt)}`
  return (
    <>
      {proof.before && (
        <p class="row">
          Trace before: <strong>{words(proof.before)}</strong>
        </p>
      )}
      <p class="row">
        Trace after: <strong>{words(proof.after)}</strong>
      </p>
    </>
  )
}
