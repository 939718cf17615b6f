import { useEffect } from 'preact/hooks'
import {
  CLOSE_OUT,
  CLOSE_TEXTS,
  type Closing,
  closingOf,
  hasTrials,
  mayBeNone,
  proofSentence,
  RESTORE_ITEMS,
  STATUS_WORDS,
} from '../../guide/close-out.ts'
import { type StoredTrace, TRACE_ALIKE, TRACE_COLUMNS, traceKey } from '../../guide/close-out-trace.ts'
import type { FilledRow } from '../../guide/fill-ins.ts'
import type { Complaint } from '../../state/complaints.ts'
import { writeFilled } from '../../state/fill-in.ts'
import { hashOfKept } from '../../state/router.ts'
import { readStoredTraces, storedTraces } from '../../state/stored-traces.ts'
import { useFilled } from '../parts/filled.ts'
import { Pad } from '../parts/pad.tsx'
import { useTracedLines } from '../parts/traced-lines.ts'
import { useTyped } from '../parts/typed.ts'
import { dayAndTime } from './moment.ts'
import '../styles/trial.css'

const REPEATS = [
  { value: 'agreed', label: 'three times, agreed' },
  { value: 'differed', label: 'differed' },
  { value: 'once', label: 'once only' },
]

/** Closing a complaint out: before and after, proof, everything put back. */
export function CloseOut({ complaint }: { readonly complaint: Complaint }) {
  const { id, lines } = complaint
  const traced = useTracedLines(lines)
  useEffect(() => void readStoredTraces(traced), [traced])
  const traces = storedTraces(lines)
  const closing = closingOf(useFilled(id), lines, traces)
  const { row, status } = closing
  const write = (column: string, text: string, base = row[column] ?? '') =>
    writeFilled(id, { table: CLOSE_OUT, row: 0, column, text, base })
  return (
    <section aria-label="Close-out" class="close-out">
      <h2>Close-out</h2>
      <p data-output="close-out" data-status={status}>
        <strong>{STATUS_WORDS[status]}</strong>
      </p>
      <details class="fold">
        <summary>Before, after, cause and cure</summary>
        {CLOSE_TEXTS.map((field) => (
          <CloseText
            key={field.id}
            field={field}
            text={row[field.id] ?? ''}
            onType={(text, base) => write(field.id, text, base)}
          />
        ))}
      </details>
      <details class="fold">
        <summary>Proof</summary>
        <Pad
          label="On, off, on"
          words={REPEATS}
          value={row['repeats'] ?? ''}
          onPick={(value) => write('repeats', value)}
        />
        <ProofTraces complaint={complaint} traces={traces} row={row} onPick={write} />
        {PROOF_TEXTS.map((field) => (
          <CloseText
            key={field.id}
            field={field}
            text={row[field.id] ?? ''}
            onType={(text, base) => write(field.id, text, base)}
          />
        ))}
      </details>
      <p role="status">{proofSentence(closing)}</p>
      <Restore
        complaintId={id}
        closing={closing}
        isTried={hasTrials(lines)}
        onPick={(item, value) => write(`restore-${item}`, value)}
      />
      <CloseButtons closing={closing} onClose={(as) => write('closed', as)} />
      {closing.others.length > 0 && (
        <p class="notice" role="status">
          Typed in another window meanwhile:{' '}
          {closing.others
            .flatMap((other) => Object.values(other))
            .filter((text) => text.trim() !== '')
            .join('; ')}
        </p>
      )}
    </section>
  )
}

const PROOF_TEXTS = [
  { id: 'trace', label: 'About the trace', hint: 'instrument, place, settings' },
  { id: 'meanInterval', label: 'It came once in, on average', hint: '6 h' },
  { id: 'exposure', label: 'Since then without it', hint: '20 h in the same conditions' },
] as const

const ALIKE = [
  { value: 'same', label: 'as in the trace check' },
  { value: 'other', label: 'others' },
]

const TRACE_LABELS = { before: 'Trace before the cure', after: 'Trace after the cure' } as const

/** The stored traces that may be the proof, by name, date and line; or where to open the first. */
function ProofTraces(given: {
  readonly complaint: Complaint
  readonly traces: readonly StoredTrace[] | undefined
  readonly row: FilledRow
  readonly onPick: (column: string, key: string) => void
}) {
  const { complaint, traces, row, onPick } = given
  const { id, lines } = complaint
  if (traces === undefined) return null
  const lineName = (owner: string) => {
    const at = lines.findIndex((line) => line.id === owner)
    return lines[at]?.name.trim() || `line ${at + 1}`
  }
  return (
    <>
      {(['before', 'after'] as const).map((role) => {
        const ofRole = traces.filter((trace) => trace.role === role)
        const column = TRACE_COLUMNS[role]
        const value = row[column] ?? ''
        const isGone = value !== '' && ofRole.every((trace) => traceKey(trace) !== value)
        const words = ofRole.map((trace) => ({
          value: traceKey(trace),
          label: `${trace.name}, ${dayAndTime(trace.takenAt)}, ${lineName(trace.owner)}`,
        }))
        // one that is gone stays where it can be taken back
        if (isGone) words.push({ value, label: 'not stored any more' })
        return words.length === 0 ? null : (
          <Pad
            key={role}
            label={TRACE_LABELS[role]}
            words={words}
            value={value}
            onPick={(key) => onPick(column, key)}
          />
        )
      })}
      {traces.some(({ role }) => role === 'after') && (
        <Pad
          label="Bandwidth, detector, place and settings of the trace after"
          words={ALIKE}
          value={row[TRACE_ALIKE] ?? ''}
          onPick={(value) => onPick(TRACE_ALIKE, value)}
        />
      )}
      {traces.every(({ role }) => role !== 'after') && (
        <p class="muted small">
          A measured trace counts once its file is stored with a line as “after”
          {lines.length === 0 ? '; there is no line yet.' : ': '}
          {lines.map((line, index) => (
            <a key={line.id} class="button" href={hashOfKept(id, line.id, 'trace')}>
              Trace of {lineName(lines[index]?.id ?? '')}
            </a>
          ))}
        </p>
      )}
    </>
  )
}

function CloseText(given: {
  readonly field: { readonly id: string; readonly label: string; readonly hint?: string }
  readonly text: string
  readonly onType: (text: string, base: string) => void
}) {
  const { field, text, onType } = given
  const { shown, type, leave } = useTyped(text, onType)
  const name = `close-${field.id}`
  return (
    <div class="field wide">
      <label for={name}>{field.label}</label>
      <input
        id={name}
        type="text"
        value={shown}
        autocomplete="off"
        {...(field.hint !== undefined && { placeholder: field.hint })}
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={leave}
      />
    </div>
  )
}

function Restore(given: {
  readonly complaintId: string
  readonly closing: Closing
  readonly isTried: boolean
  readonly onPick: (item: string, value: string) => void
}) {
  const { complaintId, closing, isTried, onPick } = given
  const { row, restore, adapters } = closing
  return (
    <details class="fold" open={restore.length > 0}>
      <summary>Put back{restore.length === 0 ? ': all of it' : `: ${restore.length} open`}</summary>
      {RESTORE_ITEMS.map(({ id, label }) => (
        <Pad
          key={id}
          label={label}
          words={[
            { value: 'done', label: 'done' },
            ...(mayBeNone(id, isTried) ? [{ value: 'none', label: 'none touched' }] : []),
          ]}
          value={row[`restore-${id}`] ?? ''}
          onPick={(value) => onPick(id, value)}
        />
      ))}
      {adapters.map(({ lineId, name }) => (
        <p key={lineId} class="notice">
          The trial on {name} is not written out.{' '}
          <a href={hashOfKept(complaintId, lineId, 'trial')}>Removed by whom, and when</a>
        </p>
      ))}
    </details>
  )
}

function CloseButtons({ closing, onClose }: { readonly closing: Closing; readonly onClose: (as: string) => void }) {
  const { restore, missing, proof, status } = closing
  if (status !== 'open')
    return (
      <button type="button" class="button" onClick={() => onClose('')}>
        Open it again
      </button>
    )
  const waits = [...missing.map((name) => name.toLowerCase()), ...restore.map((name) => name.toLowerCase())]
  return (
    <>
      {waits.length > 0 && <p class="muted">Closing waits for: {waits.join('; ')}.</p>}
      <div class="actions">
        <button
          type="button"
          class="button strong"
          disabled={waits.length > 0 || proof.is === 'none'}
          onClick={() => onClose('cured')}
        >
          Close as cured
        </button>
        <button type="button" class="button" disabled={waits.length > 0} onClick={() => onClose('not-proved')}>
          Close, not proved
        </button>
      </div>
    </>
  )
}
