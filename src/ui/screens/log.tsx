import { useState } from 'preact/hooks'
import { type Complaint, complaints, remove } from '../../state/complaints.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { Head } from '../shell/head.tsx'
import { dayAndTime } from './moment.ts'

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
      <Files />
    </>
  )
}

function Empty() {
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

const BringIn = lazy(async () => (await import('./bring-in.tsx')).BringIn)

/** Files in and out, fetched when somebody asks for it. */
function Files() {
  const [isOpen, setOpen] = useState(false)
  return (
    <details class="fold" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
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

function Rows({ list }: { readonly list: readonly Complaint[] }) {
  return (
    <ul class="rows">
      {list.map((complaint) => (
        <li key={complaint.id} class="row-with-button">
          <a href={hashOf('log', complaint.id)}>
            <span>
              <strong>{complaint.title || untitled(complaint)}</strong>
              <span class="row-note">
                {dayAndTime(complaint.updatedAt)}
                {complaint.isDemo ? ' · demo, invented' : ''}
                {complaint.purpose === 'design' ? ' · design' : ''}
                {complaint.checks.length > 0 ? ` · ${complaint.checks.length} checks` : ''}
              </span>
            </span>
            <Icon name="go" />
          </a>
          <button type="button" class="icon-button" onClick={() => remove(complaint.id)}>
            <Icon name="close" />
            <span class="unseen">Delete {complaint.title || untitled(complaint).toLowerCase()}</span>
          </button>
        </li>
      ))}
    </ul>
  )
}
