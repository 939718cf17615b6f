import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { counted } from '../../calc/quantity/counted.ts'
import { CLOSE_OUT, closingOf, STATUS_WORDS } from '../../guide/close-out.ts'
import { TRACE_COLUMNS } from '../../guide/close-out-trace.ts'
import { type Complaint, complaints, deletedHere, remove } from '../../state/complaints.ts'
import { filesWanted, setFilesWanted } from '../../state/offered-file.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { isStoreOdd } from '../../state/save-queue.ts'
import { readStoredTraces, storedTraces } from '../../state/stored-traces.ts'
import { undoRemove } from '../../state/undo-remove.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { RowLink } from '../parts/row-link.tsx'
import { useTracedLines } from '../parts/traced-lines.ts'
import { Windowed } from '../parts/windowed.tsx'
import { Head } from '../shell/head.tsx'
import { dayAndTime } from './moment.ts'
import { useFound } from './use-found.ts'

/** Saved complaints, newest first. */
export function Log() {
  const list = complaints.value
  return (
    <>
      <Head title="Log">
        <p class="muted">Complaints and designs kept on this device.</p>
      </Head>
      {list === undefined ? (
        <p class="loading" role="status">
          Reading the log…
        </p>
      ) : list.length === 0 ? (
        <Empty />
      ) : (
        <>
          <Rows list={list} />
          <NewDesign />
        </>
      )}
      <Deleted />
      {list !== undefined && <BackupLine isEmpty={list.length === 0} />}
      {list !== undefined && <Files />}
    </>
  )
}

/** Everything deleted in this visit, to be brought back one by one. */
function Deleted() {
  const deleted = deletedHere.value
  if (deleted.length === 0) return null
  return (
    <details class="fold">
      <summary>Deleted in this visit ({deleted.length})</summary>
      <ul class="rows" aria-label="Deleted in this visit">
        {deleted.toReversed().map((one) => (
          <li key={one.line?.id ?? one.id + one.name} class="row-with-button">
            <span>{one.name}</span>
            <button type="button" class="button" onClick={() => undoRemove(one)}>
              Bring back <span class="unseen">{one.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}

function Empty() {
  if (isStoreOdd.value)
    return (
      <p class="empty">What is kept on this device cannot be shown here. The notice says why, and what can be done.</p>
    )
  return (
    <div class="empty stack">
      <p>
        Nothing kept yet. A triage or a check becomes a complaint with one tap on “Keep in the log”; from then on every
        step is saved.
      </p>
      <div class="actions">
        <a class="button strong" href="#/ask">
          Start a triage
        </a>
        <NewDesign />
        <button type="button" class="button" onClick={() => void openDemo()}>
          Load the demo
        </button>
      </div>
      <p class="muted small">
        The demo is an invented complaint in an invented fleet. It can be deleted like any other.
      </p>
    </div>
  )
}

const BackupLine = lazy(async () => (await import('./backup-line.tsx')).BackupLine, null)
const BringIn = lazy(async () => (await import('./bring-in.tsx')).BringIn)

/** Files in and out, fetched when somebody asks for it. */
function Files() {
  const isOpen = filesWanted.value
  const fold = useRef<HTMLDetailsElement>(null)
  useEffect(() => () => setFilesWanted(false), [])
  useEffect(() => {
    // opened from elsewhere: it may stand below what is in view
    if (!isOpen || fold.current?.contains(document.activeElement) !== false) return
    fold.current.querySelector('summary')?.focus()
  }, [isOpen])
  return (
    <details ref={fold} class="fold" open={isOpen} onToggle={({ currentTarget }) => setFilesWanted(currentTarget.open)}>
      <summary>Bring in a file, or save all as one</summary>
      {isOpen && <BringIn />}
    </details>
  )
}

/** A record without a complaint, for connectors that are only being planned. */
function NewDesign() {
  const open = async () => {
    const { createDesign } = await import('../../state/connectors.ts')
    goTo(hashOf('log', createDesign('New design').id))
  }
  return (
    <button type="button" class="button" onClick={() => void open()}>
      New design, without a complaint
    </button>
  )
}

async function openDemo(): Promise<void> {
  const { addDemo } = await import('../../state/demo.ts')
  const demo = addDemo()
  goTo(hashOf('log', demo.id))
}

const untitled = ({ purpose }: Complaint): string => (purpose === 'design' ? 'Untitled design' : 'Untitled complaint')

/** Kept while the app is open, so that coming back from a complaint shows what was found. */
const sought = signal('')

/** Shorter logs are read at a glance. */
const SEARCHED_FROM = 10

function Rows({ list }: { readonly list: readonly Complaint[] }) {
  const isSearched = list.length >= SEARCHED_FROM || sought.value !== ''
  const { exact, alike } = useFound(list, isSearched ? sought.value : '')
  const found = alike.length === 0 ? exact : [...exact, ...alike]
  return (
    <>
      {isSearched && <Search count={exact.length} alike={alike.length} of={list.length} />}
      <Windowed
        label="Complaints"
        items={found}
        keyOf={({ id }) => id}
        row={(complaint) => <Row complaint={complaint} />}
        rowClass="row-with-button"
      />
    </>
  )
}

function Search({ count, alike, of }: { readonly count: number; readonly alike: number; readonly of: number }) {
  return (
    <search class="find stack">
      <label class="search">
        <span>Find a complaint</span>
        <input
          id="log-search"
          type="search"
          value={sought.value}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          enterkeyhint="search"
          onInput={(event) => {
            sought.value = event.currentTarget.value
          }}
        />
      </label>
      <p class="muted small" role="status">
        {sought.value.trim() === ''
          ? `${of} complaints.`
          : count + alike === 0
            ? 'None holds all these words in its title, aircraft or note. Write fewer words, or the beginning of one.'
            : `${count} of ${of}${alike === 0 ? '' : `, and ${alike} spelt nearly so`}.`}
      </p>
    </search>
  )
}

/** How it was closed, and that a trial adapter is not written out yet. */
function closingWords({ tables, lines }: Complaint): string {
  const { status, adapters } = closingOf(tables, lines, storedTraces(lines))
  const closed = status === 'open' ? '' : ` · ${STATUS_WORDS[status].toLowerCase()}`
  return `${closed}${adapters.length === 0 ? '' : ' · trial adapter not written out'}`
}

/** Reads the stored traces only of what rests on one. */
function useProofTraces({ tables, lines }: Complaint): void {
  const isByTrace = (tables?.[CLOSE_OUT]?.[0]?.[TRACE_COLUMNS.after] ?? '') !== ''
  const traced = useTracedLines(lines)
  useEffect(() => {
    if (isByTrace) void readStoredTraces(traced)
  }, [isByTrace, traced])
}

function Row({ complaint }: { readonly complaint: Complaint }) {
  useProofTraces(complaint)
  return (
    <>
      <RowLink href={hashOf('log', complaint.id)} title={complaint.title || untitled(complaint)}>
        {dayAndTime(complaint.updatedAt)}
        {complaint.isDemo ? ' · demo, invented' : ''}
        {complaint.purpose === 'design' ? ' · design' : ''}
        {complaint.checks.length > 0 ? ` · ${counted(complaint.checks.length, 'check')}` : ''}
        {closingWords(complaint)}
      </RowLink>
      <button type="button" class="icon-button" onClick={() => remove(complaint.id)}>
        <Icon name="close" />
        <span class="unseen">Delete {complaint.title || untitled(complaint).toLowerCase()}</span>
      </button>
    </>
  )
}
