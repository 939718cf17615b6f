import { useMemo, useState } from 'preact/hooks'
import { contactPartOf } from '../../../calc/connector/contact-row.ts'
import { partWords } from '../../../calc/connector/said.ts'
import type { Schedule } from '../../../calc/connector/schedule.ts'
import { withTaken } from '../../../calc/connector/take.ts'
import { changeConnector } from '../../../state/connectors.ts'
import { type ScheduleRun, scheduleRun } from '../../../state/schedule.ts'
import { MARK_WORDS, MarkIcon, markOf } from '../../parts/contact-mark.tsx'
import { Windowed } from '../../parts/windowed.tsx'
import type { ViewGiven } from './connector.tsx'
import { DecideContact } from './decide-contact.tsx'
import { DecideGroup } from './decide-group.tsx'
import './decide.css'
import { NoContacts } from './no-contacts.tsx'
import { ConnectorTextField } from './texts.tsx'
import { useSchedule } from './use-schedule.ts'
import { Waiting } from './waiting.tsx'

/** What is decided for every contact: proposed with its reason, taken or chosen, then brought down to few parts. */
export function Decide({ complaint, connector }: ViewGiven) {
  const { is, shown } = useSchedule({ complaint, connector })
  const run = scheduleRun(connector.id)
  const [contactId, setContactId] = useState<string | undefined>(undefined)
  const given = { complaint, connector }
  if (connector.contacts.length === 0) return <NoContacts {...given} so="there is nothing to decide" />
  const onAgain = () => run.want(connector, complaint.lines)
  if (shown === undefined)
    return (
      <UnderWay
        run={run}
        onAgain={onAgain}
        stopped="Stopped: nothing is proposed before every contact is worked out."
      />
    )
  const row = shown.rows.find(({ contact }) => contact.id === contactId)
  return (
    <div class="panes decide">
      <div class="pane stack">
        <Standing run={run} schedule={shown} onAgain={onAgain} />
        {row === undefined ? (
          <>
            <TakeAll {...given} schedule={shown} isLive={is === 'done'} />
            <Rows {...given} schedule={shown} onOpen={setContactId} />
          </>
        ) : (
          <DecideContact key={row.contact.id} {...given} row={row} rows={shown.rows} onOpen={setContactId} />
        )}
      </div>
      <div class="pane stack">
        <Bond connector={connector} schedule={shown} />
        <DecideGroup {...given} schedule={shown} isLive={is === 'done'} />
        <Questions schedule={shown} />
      </div>
    </div>
  )
}

type UnderWayGiven = { readonly run: ScheduleRun; readonly onAgain: () => void; readonly stopped: string }

/** The contacts are being worked out, or were left before they all were; nothing once they are done. */
function UnderWay({ run, onAgain, stopped }: UnderWayGiven) {
  const { is, doneFrac } = run.state.value
  if (is === 'done') return null
  const waiting = { is, doneFrac, onStop: run.stop, onAgain }
  return <Waiting {...waiting} what="The contacts" working="Working out every contact" stopped={stopped} />
}

/** How the figures stand: under way, each line alone, or all in the bond. */
function Standing({ run, schedule, onAgain }: Omit<UnderWayGiven, 'stopped'> & { readonly schedule: Schedule }) {
  const { is, isAlone } = run.state.value
  const counts = new Map<string, number>()
  for (const row of schedule.rows) {
    const word = MARK_WORDS[markOf(row.contact, row)]
    counts.set(word, (counts.get(word) ?? 0) + 1)
  }
  const { rounds } = schedule
  const bond = isAlone
    ? 'each line alone so far'
    : rounds === undefined
      ? 'each line alone'
      : `all in one bond, ${rounds === 1 ? 'settled at once' : `settled in ${rounds} rounds`}`
  return (
    <section aria-label="As it stands" class="stack">
      <p class={is === 'done' ? undefined : 'old'} data-output="decided">
        {[...counts].map(([word, count]) => `${count} ${word}`).join(', ')}; {bond}.
      </p>
      <UnderWay run={run} onAgain={onAgain} stopped="Stopped: this is what stood before." />
      {is === 'broken' && <p>This is what stood before.</p>}
    </section>
  )
}

type Shown = ViewGiven & { readonly schedule: Schedule }

/** Every proposal that nothing speaks against, in one step that can be taken back. */
function TakeAll({ complaint, connector, schedule, isLive }: Shown & { readonly isLive: boolean }) {
  const taken = useMemo(
    () =>
      schedule.rows.flatMap(({ contact, decided, verdict, waits }) =>
        decided.by === 'proposed' && decided.part !== undefined && verdict === 'ok' && waits === undefined
          ? [{ id: contact.id, part: contactPartOf(decided.part) }]
          : [],
      ),
    [schedule],
  )
  if (taken.length === 0) return null
  return (
    <button
      type="button"
      class="button wide"
      // of older facts, or of each line alone, none of them is a yes
      disabled={!isLive}
      onClick={() => changeConnector(complaint.id, connector.id, { contacts: withTaken(connector.contacts, taken) })}
    >
      Take the {taken.length === 1 ? 'one proposal' : `${taken.length} proposals`} that are a clean yes
    </button>
  )
}

function Rows({ schedule, onOpen }: Shown & { readonly onOpen: (id: string) => void }) {
  return (
    <Windowed
      label="Decided for each contact"
      items={schedule.rows}
      keyOf={({ contact }) => contact.id}
      row={(row) => {
        const mark = markOf(row.contact, row)
        const { part, by } = row.decided
        const own = by === 'user' ? 'your choice' : by === 'proposed' ? 'proposed' : undefined
        const value = part && partWords(contactPartOf(part))
        const note = [value, own].filter((one) => one !== undefined).join(', ')
        return (
          <button type="button" class="row-button" onClick={() => onOpen(row.contact.id)}>
            <span class={`contact-row ${mark}`} data-mark={mark}>
              <MarkIcon mark={mark} />
              <span class="contact-words">
                <span class="one-line">
                  <strong>{row.contact.id}</strong> {row.contact.texts.function ?? ''}
                </span>
                <span class="row-note one-line">{note === '' ? row.headline : note}</span>
              </span>
              <span class="contact-mark">{MARK_WORDS[mark]}</span>
            </span>
          </button>
        )
      }}
    />
  )
}

/** The bond of the connector, and what is said of all contacts in it. */
function Bond({ connector, schedule }: Pick<Shown, 'connector' | 'schedule'>) {
  return (
    <section aria-label="The shared bond" class="stack">
      <h2>The shared bond</h2>
      <p class="small">
        From the filter plate to the case the circuits refer to, through the shell joint. It carries the current of
        every contact, and outranks what a line states of its own.
      </p>
      <div class="two">
        <ConnectorTextField
          connector={connector}
          field="bondOhm"
          label="Resistance"
          help="2.5m is a DC figure of practice."
        />
        <ConnectorTextField
          connector={connector}
          field="bondH"
          label="Inductance"
          help="All around a shell: well under 1n."
        />
      </div>
      {schedule.findings.map(({ id, sentence, contacts }) => (
        <p key={id} class="finding">
          {sentence} {contacts.length > 0 && <span class="muted">{named(contacts)}</span>}
        </p>
      ))}
    </section>
  )
}

const named = (contacts: readonly string[]): string =>
  `Contacts ${contacts.slice(0, 12).join(', ')}${contacts.length > 12 ? ` and ${contacts.length - 12} more` : ''}.`

function Questions({ schedule: { questions } }: Pick<Shown, 'schedule'>) {
  if (questions.length === 0) return null
  return (
    <section aria-label="Questions for the maker">
      <h2>Questions for the maker</h2>
      <ol class="stack questions">
        {questions.map(({ id, sentence, contacts }) => (
          <li key={id}>
            {sentence} <span class="muted small">{named(contacts)}</span>
          </li>
        ))}
      </ol>
    </section>
  )
}
