import { useEffect, useRef, useState } from 'preact/hooks'
import type { FrequencyUnit } from '../../../calc/trace/types.ts'
import { stopTraceWork, traceWork } from '../../../state/trace-work.ts'
import {
  droppedTrace,
  dropTrace,
  kept,
  type OpenTrace,
  type TraceFile,
  type TraceRefusal,
  type TraceRole,
  takeFile,
  traceRefusals,
  traceTrouble,
  undoDropTrace,
} from '../../../state/traces.ts'
import { Icon } from '../../parts/icon.tsx'

const ROLE_LABEL: Readonly<Record<TraceRole, string>> = {
  before: 'Before',
  after: 'After, with the filter',
  filter: 'Measured filter',
}
const FREQUENCY_UNITS: readonly FrequencyUnit[] = ['Hz', 'kHz', 'MHz', 'GHz']

/** Opening a file, by picker, paste or drop; what is under way; what is kept. */
export function TraceFiles() {
  const [role, setRole] = useState<TraceRole>('before')
  const place = useRef<HTMLDivElement>(null)
  const latest = useRef(role)
  latest.current = role
  const [leftOut, setLeftOut] = useState('')
  /** Which of several is which nobody can tell, so that the first is read and the others are named. */
  const takeFirst = ([first, ...others]: readonly TraceFile[]) => {
    if (first === undefined) return
    setLeftOut(others.length === 0 ? '' : leftOutWords(first, latest.current, others))
    void takeFile(first, latest.current)
  }
  const take = (file: TraceFile) => takeFirst([file])
  useEffect(() => (place.current === null ? undefined : dropsOn(place.current, takeFirst)), [])
  return (
    <div ref={place} class="trace-files">
      <h2>From a file</h2>
      <p class="muted small">A spectrum as text, or a Touchstone file of a filter. It never leaves this device.</p>
      <fieldset class="choices">
        <legend class="unseen">What the file is</legend>
        {(['before', 'after'] as const).map((one) => (
          <label key={one}>
            <input
              type="radio"
              class="pick-mark"
              name="trace-role"
              checked={role === one}
              onChange={() => setRole(one)}
            />
            {ROLE_LABEL[one]}
          </label>
        ))}
      </fieldset>
      <Pick onFile={take} />
      <label class="trace-paste">
        Or paste it here
        <textarea
          rows={1}
          value=""
          onPaste={(event) => {
            event.preventDefault()
            const text = event.clipboardData?.getData('text/plain') ?? ''
            if (text.trim() !== '') take(pastedOf(text))
          }}
        />
      </label>
      {leftOut !== '' && (
        <p class="notice" role="status">
          {leftOut}
        </p>
      )}
      <Work />
      {traceRefusals.value.map((one) => (
        <Refusal key={one.file} refused={one} />
      ))}
      {traceTrouble.value !== undefined && (
        <p class="notice" role="alert">
          {traceTrouble.value}
        </p>
      )}
      <Kept />
    </div>
  )
}

/** Files and texts dropped onto it; marked while something is held over it. */
function dropsOn(place: HTMLElement, take: (files: readonly TraceFile[]) => void): () => void {
  const over = (event: DragEvent) => {
    event.preventDefault()
    place.classList.add('over')
  }
  const leave = () => place.classList.remove('over')
  const drop = (event: DragEvent) => {
    event.preventDefault()
    leave()
    const files = [...(event.dataTransfer?.files ?? [])]
    const text = event.dataTransfer?.getData('text/plain') ?? ''
    if (files.length > 0) take(files.map(fileOf))
    else if (text !== '') take([pastedOf(text)])
  }
  place.addEventListener('dragover', over)
  place.addEventListener('dragleave', leave)
  place.addEventListener('drop', drop)
  return () => {
    place.removeEventListener('dragover', over)
    place.removeEventListener('dragleave', leave)
    place.removeEventListener('drop', drop)
  }
}

const leftOutWords = ({ name }: TraceFile, role: TraceRole, others: readonly TraceFile[]): string =>
  `One file at a time: ${name} is read as “${ROLE_LABEL[role]}”. Not read: ${others.map((one) => one.name).join(', ')}. ` +
  'Say which it is, and drop it alone.'

const fileOf = (file: File): TraceFile => ({ name: file.name, source: file })
const pastedOf = (text: string): TraceFile => ({ name: 'pasted', source: text })

function Pick({ onFile }: { readonly onFile: (file: TraceFile) => void }) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <input
        ref={input}
        class="unseen"
        type="file"
        tabIndex={-1}
        aria-label="File of a trace"
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? []
          if (file) onFile(fileOf(file))
          currentTarget.value = ''
        }}
      />
      <button type="button" class="button" onClick={() => input.current?.click()}>
        Open a file
      </button>
    </>
  )
}

function Work() {
  const work = traceWork.value
  if (work === undefined) return null
  return (
    <div role="status">
      <label class="progress">
        {work.what}, {Math.round(work.doneFrac * 100)} %
        <progress max="1" value={work.doneFrac} />
      </label>
      {work.next.length > 0 && <p class="muted small">Then: {work.next.join(', ')}.</p>}
      <button type="button" class="button" onClick={stopTraceWork}>
        Cancel
      </button>
    </div>
  )
}

function Refusal({ refused: { file, role, message, asks } }: { readonly refused: TraceRefusal }) {
  return (
    <div class="notice" role="alert">
      <p>
        {file.name}: {message} Nothing was changed.
      </p>
      {asks === 'frequency-unit' && (
        <div class="actions">
          {FREQUENCY_UNITS.map((unit) => (
            <button
              key={unit}
              type="button"
              class="button"
              onClick={() => void takeFile(file, role, { frequencyUnit: unit })}
            >
              {unit}
            </button>
          ))}
        </div>
      )}
    </div>
  )
}

function Kept() {
  const dropped = droppedTrace.value
  return (
    <>
      <ul class="rows trace-list">
        {(kept.value ?? []).map((trace) => (
          <li key={trace.role}>
            <span>
              <strong>{ROLE_LABEL[trace.role]}</strong>
              <span class="row-note">{[trace.name, sizeOf(trace), ...trace.remarks].join('. ')}</span>
            </span>
            {trace.is === 'spectrum' && trace.again && <OtherColumns role={trace.role} again={trace.again} />}
            <button type="button" class="button" onClick={() => void dropTrace(trace.role)}>
              <Icon name="close" />
              Take out<span class="unseen"> {trace.name}</span>
            </button>
          </li>
        ))}
      </ul>
      {dropped && (
        <p class="notice" role="status">
          {dropped.name} taken out.{' '}
          <button type="button" class="button" onClick={() => void undoDropTrace()}>
            <Icon name="undo" />
            Undo
          </button>
        </p>
      )}
    </>
  )
}

type Again = NonNullable<Extract<OpenTrace, { is: 'spectrum' }>['again']>

/** Another column of the same file as the level. */
function OtherColumns({ role, again: { file, columns, at } }: { readonly role: TraceRole; readonly again: Again }) {
  return (
    <fieldset class="choices">
      <legend>The level is</legend>
      {columns.map((column) => (
        <label key={column.at}>
          <input
            type="radio"
            class="pick-mark"
            name={`level-${role}`}
            checked={column.at === at}
            onChange={() => void takeFile(file, role, { levelAt: column.at })}
          />
          {column.label}
        </label>
      ))}
    </fieldset>
  )
}

function sizeOf(trace: NonNullable<typeof kept.value>[number]): string {
  if (trace.is === 'network') return `${trace.network.hz.length} frequencies, ${trace.network.portCount} ports`
  return `${trace.spectrum.hz.length.toLocaleString('en')} rows in ${trace.spectrum.unit ?? 'dB of a unit it does not name'}`
}
