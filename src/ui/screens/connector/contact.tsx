import { useState } from 'preact/hooks'
import { PHASES, ZONES } from '../../../calc/connector/contact-words.ts'
import { withType } from '../../../calc/connector/edit-many.ts'
import { CONTACT_TYPES, type Contact as ContactOf } from '../../../calc/connector/types.ts'
import { lineKindById } from '../../../reference/line-kinds.ts'
import { hashOfConnector, hashOfContact } from '../../../state/connector-address.ts'
import { changeConnector, writeContactText } from '../../../state/connectors.ts'
import { lazy } from '../../lazy.tsx'
import { MARK_WORDS, MarkIcon, markOf } from '../../parts/contact-mark.tsx'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'
import { ContactLine } from './contact-line.tsx'
import { ChoiceRow, ContactTextField } from './texts.tsx'
import { useSchedule } from './use-schedule.ts'

const WindowCode = lazy(async () => (await import('./window-code.tsx')).WindowCode)

const TYPES = CONTACT_TYPES.map((type) => ({ value: type, label: type }))
const UNSAID = { value: '', label: 'not stated' }
const ZONE_OPTIONS = [...ZONES.map((zone) => ({ value: zone, label: zone })), UNSAID]
const PHASE_OPTIONS = [...PHASES.map((phase) => ({ value: phase, label: phase })), UNSAID]

/** One contact: what it is, the line it carries with all that is known of it, and its neighbours in the list. */
export function Contact({ complaint, connector, contactId }: ViewGiven & { readonly contactId: string }) {
  const contact = connector.contacts.find(({ id }) => id === contactId)
  if (contact === undefined)
    return (
      <p>
        {connector.name === '' ? 'This connector' : `“${connector.name}”`} has no contact “{contactId}”.{' '}
        <a href={hashOfConnector(complaint.id, connector.id)}>Its contacts</a> stand on its own page.
      </p>
    )
  const line = complaint.lines.find(({ id }) => id === contact.lineId)
  return (
    <>
      <Around complaint={complaint} connector={connector} contact={contact} />
      <Decided complaint={complaint} connector={connector} contact={contact} />
      <div class="panes">
        <div class="pane">
          <About complaint={complaint} connector={connector} contact={contact} />
        </div>
        <div class="pane stack">
          {contact.type === 'line' && (
            <ContactLine
              key={contact.lineId}
              complaint={complaint}
              connector={connector}
              contact={contact}
              line={line}
            />
          )}
          <Code complaint={complaint} connector={connector} contact={contact} />
        </div>
      </div>
    </>
  )
}

export type ContactGiven = ViewGiven & { readonly contact: ContactOf }

/** What the schedule says of it: its sign, its sentence and why, with the connector's bond. */
function Decided({ complaint, connector, contact }: ContactGiven) {
  const schedule = useSchedule({ complaint, connector })
  const row = schedule.shown?.rows.find((one) => one.contact.id === contact.id)
  const mark = markOf(contact, row)
  return (
    <section aria-label="In the connector" class={schedule.is === 'done' ? 'decided' : 'decided stale'}>
      <p class="sentence contact-row">
        <MarkIcon mark={mark} />
        <span>{row?.headline ?? MARK_WORDS[mark]}</span>
      </p>
      {row !== undefined && row.why !== row.headline && <p>{row.why}</p>}
      {row?.waits !== undefined && <p>{row.waits}</p>}
      {(row?.findings ?? []).map(({ id, sentence }) => (
        <p key={id}>{sentence}</p>
      ))}
    </section>
  )
}

/** Drawn where it is opened; a barred line has no window to go to. */
function Code({ complaint, connector, contact }: ContactGiven) {
  const [isOpen, setOpen] = useState(false)
  const { is, shown } = useSchedule({ complaint, connector })
  const row = shown?.rows.find((one) => one.contact.id === contact.id)
  if (is !== 'done' || row?.line === undefined || row.decided.by === 'barred') return null
  const { line, decided, choice } = row
  const chosenH = choice?.inductanceH
  return (
    <details class="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Code of this window, for another device</summary>
      {isOpen && (
        <WindowCode connector={connector} window={{ line, decided, ...(chosenH === undefined ? {} : { chosenH }) }} />
      )}
    </details>
  )
}

function Around({ complaint, connector, contact }: ContactGiven) {
  const at = connector.contacts.findIndex(({ id }) => id === contact.id)
  const [before, next] = [connector.contacts[at - 1], connector.contacts[at + 1]]
  const link = (to: ContactOf | undefined, word: string, icon: 'back' | 'go') =>
    to === undefined ? (
      <span />
    ) : (
      <a class="button" href={hashOfContact(complaint.id, connector.id, to.id)}>
        {icon === 'back' && <Icon name="back" />}
        <span>
          <span class="unseen">{word} contact, </span>
          {to.id}
        </span>
        {icon === 'go' && <Icon name="go" />}
      </a>
    )
  return (
    <nav class="around" aria-label="Neighbours in the list">
      {link(before, 'Previous', 'back')}
      <span class="muted small">
        {at + 1} of {connector.contacts.length}
      </span>
      {link(next, 'Next', 'go')}
    </nav>
  )
}

function About({ complaint, connector, contact }: ContactGiven) {
  const { id, texts, type } = contact
  const kind = complaint.lines.find((line) => line.id === contact.lineId)?.facts.lineKind?.text ?? ''
  const isPhased = (lineKindById(kind)?.supply?.nominalHz ?? 0) > 0 || texts.phase !== undefined
  const write = (field: 'zone' | 'phase') => (text: string) =>
    writeContactText(complaint.id, connector.id, id, field, text)
  return (
    <section aria-label="The contact">
      <h2 class="unseen">The contact</h2>
      <ChoiceRow
        name="type"
        label="It is"
        options={TYPES}
        chosen={type}
        onChoose={(value) => {
          const next = CONTACT_TYPES.find((one) => one === value)
          if (next === undefined) return
          changeConnector(complaint.id, connector.id, {
            contacts: connector.contacts.map((one) => (one.id === id ? withType(one, next) : one)),
          })
        }}
      />
      <ContactTextField connector={connector} contact={id} field="function" label="Function" />
      <details class="fold">
        <summary>
          <span class="few-lines">Wire, pin part, zone, remark{saidOf(contact)}</span>
        </summary>
        <ContactTextField connector={connector} contact={id} field="wire" label="Wire" />
        <ContactTextField connector={connector} contact={id} field="pin" label="Pin part" />
        <ChoiceRow name="zone" label="Zone" options={ZONE_OPTIONS} chosen={texts.zone ?? ''} onChoose={write('zone')} />
        {isPhased && (
          <ChoiceRow
            name="phase"
            label="Phase"
            options={PHASE_OPTIONS}
            chosen={texts.phase ?? ''}
            onChoose={write('phase')}
          />
        )}
        <ContactTextField connector={connector} contact={id} field="remark" label="Remark" rows={2} />
      </details>
    </section>
  )
}

/** What a fold holds, so that it need not be opened to see it. */
function saidOf({ texts: { wire, pin, zone, phase, remark } }: ContactOf): string {
  const said = [wire, pin, zone, phase === undefined ? undefined : `phase ${phase}`, remark]
  const words = said.flatMap((text) => (text === undefined || text.trim() === '' ? [] : [text.trim()]))
  return words.length === 0 ? '' : `: ${words.join(', ')}`
}
