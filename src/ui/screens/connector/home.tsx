import { useState } from 'preact/hooks'
import { hashOfConnector } from '../../../state/connector-address.ts'
import { removeConnector } from '../../../state/connectors.ts'
import { goTo, hashOf } from '../../../state/router.ts'
import { type ScheduleRun, scheduleRun } from '../../../state/schedule.ts'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'
import { ContactList } from './contact-list.tsx'
import { Description } from './description.tsx'
import { EditMany } from './edit-many.tsx'
import { FacePane } from './face-pane.tsx'
import { MakeContacts } from './make-contacts.tsx'
import { SafetyQuestion } from './safety-question.tsx'
import { ConnectorTextField } from './texts.tsx'
import { useRows } from './use-schedule.ts'
import { Waiting } from './waiting.tsx'

/** A connector: its face, its contacts, what it is, and the ways on. */
export function Home({ complaint, connector }: ViewGiven) {
  if (connector.contacts.length === 0) return <Begin complaint={complaint} connector={connector} />
  return <Contacts complaint={complaint} connector={connector} />
}

/** A connector begins with its contacts: from a table, or by scheme and count. */
function Begin({ complaint, connector }: ViewGiven) {
  return (
    <div class="panes">
      <section aria-label="Contacts" class="pane stack">
        <h2>Contacts</h2>
        <p>Paste them from a spreadsheet with what is known of each, or make them by name and number.</p>
        <a class="button strong wide" href={hashOfConnector(complaint.id, connector.id, 'paste')}>
          Paste a table
        </a>
        <MakeContacts connector={connector} />
      </section>
      <div class="pane stack">
        <section aria-label="What it is">
          <h2>What it is</h2>
          <WhatItIs connector={connector} />
        </section>
        <Delete complaint={complaint} connector={connector} />
      </div>
    </div>
  )
}

function WhatItIs({ connector }: Pick<ViewGiven, 'connector'>) {
  return (
    <>
      <ConnectorTextField connector={connector} field="name" label="Label" help="As on the drawing: J2, P104." />
      <Description connector={connector} />
    </>
  )
}

function Delete({ complaint, connector }: ViewGiven) {
  return (
    <div class="actions">
      <button
        type="button"
        class="button"
        onClick={() => {
          removeConnector(complaint.id, connector.id)
          goTo(hashOf('log', complaint.id))
        }}
      >
        <Icon name="close" />
        Delete the connector
      </button>
    </div>
  )
}

/** The face and the list beside it; several contacts can be chosen in either. */
function Contacts({ complaint, connector }: ViewGiven) {
  const [chosen, setChosen] = useState<ReadonlySet<string> | undefined>(undefined)
  const choosing = chosen && {
    chosen,
    toggle: (id: string) => {
      const next = new Set(chosen)
      if (!next.delete(id)) next.add(id)
      setChosen(next)
    },
  }
  const run = scheduleRun(connector.id)
  const rows = useRows({ complaint, connector })
  const shown = { complaint, connector, rows, choosing }
  return (
    <div class="panes">
      <div class="pane stack">
        <FacePane {...shown} />
        <Standing run={run} onAgain={() => run.want(connector, complaint.lines)} />
        {chosen === undefined && <SafetyQuestion complaint={complaint} connector={connector} />}
        {chosen === undefined ? (
          <>
            <div class="actions">
              <button type="button" class="button" onClick={() => setChosen(new Set())}>
                Edit several
              </button>
              <a class="button" href={hashOfConnector(complaint.id, connector.id, 'paste')}>
                Paste a table
              </a>
            </div>
            <details class="fold">
              <summary>What it is, more contacts, delete</summary>
              <div class="stack">
                <WhatItIs connector={connector} />
                <section aria-label="More contacts">
                  <h2>More contacts</h2>
                  <MakeContacts connector={connector} />
                </section>
                <Delete complaint={complaint} connector={connector} />
              </div>
            </details>
          </>
        ) : (
          <EditMany
            complaint={complaint}
            connector={connector}
            chosen={chosen}
            choose={(ids) => setChosen(new Set(ids))}
            onEnd={() => setChosen(undefined)}
          />
        )}
      </div>
      <div class="pane">
        <ContactList {...shown} />
      </div>
    </div>
  )
}

/** How far the schedule is, and the ways to leave it and take it up again; nothing once it stands. */
function Standing({ run, onAgain }: { readonly run: ScheduleRun; readonly onAgain: () => void }) {
  const { is, doneFrac, shown, isAlone } = run.state.value
  if (is === 'done') return null
  const waiting = { is, doneFrac, onStop: run.stop, onAgain }
  return (
    <>
      <Waiting
        {...waiting}
        what="The contacts"
        working="Working out every contact"
        stopped="Stopped before every contact was worked out."
      />
      {shown !== undefined && (
        <p class="muted small">What stands here is {isAlone ? 'of each line alone' : 'from before'}.</p>
      )}
    </>
  )
}
