import { useEffect, useMemo } from 'preact/hooks'
import { lineName } from '../../../calc/connector/edit-many.ts'
import { mateOf, swapped, withLine } from '../../../calc/connector/pairing.ts'
import type { Contact } from '../../../calc/connector/types.ts'
import { checkById } from '../../../calc/registry.ts'
import type { Check, Line } from '../../../calc/types.ts'
import { lineKindById } from '../../../reference/line-kinds.ts'
import { createCheck } from '../../../state/check.ts'
import { hashOfContact } from '../../../state/connector-address.ts'
import { changeConnector } from '../../../state/connectors.ts'
import { keptDesk } from '../../../state/desk.ts'
import { expressionReading } from '../../../state/expression.ts'
import { newLine } from '../../../store/line.ts'
import { LineCardLink } from '../../parts/line-card-link.tsx'
import { Fields } from '../check-fields.tsx'
import { KeptLine } from '../kept-line.tsx'
import { DeleteLine, LineName } from '../line-name.tsx'
import type { ContactGiven } from './contact.tsx'
import { PickOne } from './pick-one.tsx'

type Given = ContactGiven & { readonly line: Line | undefined }

/** The line a contact carries: chosen, named, with its facts, its window and its checks. */
export function ContactLine({ line, ...given }: Given) {
  return line === undefined ? <NoLine {...given} /> : <OwnLine {...given} line={line} />
}

/** A line is new, or one of the complaint, or that of another contact: its other leg. */
function NoLine({ complaint, connector, contact }: ContactGiven) {
  const { contacts } = connector
  const carry = (lineId: string, lines: readonly Line[] = []) =>
    changeConnector(complaint.id, connector.id, { contacts: withLine(contacts, contact.id, lineId) }, lines)
  const carriers = (lineId: string) => contacts.filter((one) => one.lineId === lineId)
  const free = complaint.lines.filter(({ id }) => carriers(id).length === 0)
  const mates = contacts.filter(
    ({ id, lineId }) =>
      id !== contact.id &&
      lineId !== undefined &&
      carriers(lineId).length === 1 &&
      complaint.lines.some((line) => line.id === lineId),
  )
  return (
    <section aria-label="Its line" class="stack">
      <h2>Its line</h2>
      <p>No line yet: a line holds what is known of the circuit, and its checks.</p>
      <div class="actions">
        <button
          type="button"
          class="button strong"
          onClick={() => {
            const line = newLine(lineName(connector, contact))
            carry(line.id, [line])
          }}
        >
          New line
        </button>
        {free.length > 0 && (
          <PickOne
            label="A line of this complaint"
            options={free.map((line) => ({ value: line.id, label: labelOf(line) }))}
            onPick={(lineId) => carry(lineId)}
          />
        )}
        {mates.length > 0 && (
          <PickOne
            label="The other leg of a pair"
            options={mates.map((mate) => ({
              value: mate.lineId ?? '',
              label: [mate.id, mate.texts.function ?? ''].filter((part) => part !== '').join(' '),
            }))}
            onPick={(lineId) => carry(lineId)}
          />
        )}
      </div>
    </section>
  )
}

const labelOf = ({ name, facts }: Line): string =>
  name || lineKindById(facts.lineKind?.text ?? '')?.name || 'line without a name'

function OwnLine({ complaint, connector, contact, line }: ContactGiven & { readonly line: Line }) {
  const desk = useMemo(() => keptDesk(complaint.id, line.id), [complaint.id, line.id])
  const check = checkById('window')
  const mate = mateOf(connector.contacts, contact)
  return (
    <>
      <section aria-label="Its line" class="stack">
        <h2>Its line</h2>
        <LineName complaintId={complaint.id} line={line} />
        <LineCardLink kind={line.facts.lineKind?.text ?? ''} />
        {mate && <Pair complaint={complaint} connector={connector} contact={contact} mate={mate} />}
        <div class="actions">
          <button
            type="button"
            class="button"
            onClick={() =>
              changeConnector(complaint.id, connector.id, {
                contacts: withLine(connector.contacts, contact.id, undefined),
              })
            }
          >
            Take it off this contact
          </button>
          {mate?.leg !== undefined && (
            <button
              type="button"
              class="button"
              onClick={() =>
                changeConnector(complaint.id, connector.id, { contacts: swapped(connector.contacts, line.id) })
              }
            >
              Change the legs over
            </button>
          )}
          <DeleteLine complaintId={complaint.id} line={line} />
        </div>
      </section>
      {check && <LineFacts check={check} desk={desk} />}
      <KeptLine
        complaintId={complaint.id}
        line={line}
        title=""
        checks={complaint.checks}
        windowTitle="Window of the line alone, without the bond the contacts share"
      />
    </>
  )
}

function Pair({ complaint, connector, contact, mate }: ContactGiven & { readonly mate: Contact }) {
  return (
    <p>
      {contact.leg === undefined ? 'The same line' : `Leg ${contact.leg} of a pair`}, with{' '}
      <a href={hashOfContact(complaint.id, connector.id, mate.id)}>contact {mate.id}</a>: what is said here is said of
      both.
    </p>
  )
}

/** The fields of the window: what every contact of a line needs first. */
function LineFacts({ check, desk }: { readonly check: Check; readonly desk: ReturnType<typeof keptDesk> }) {
  const model = useMemo(() => createCheck(check, desk, expressionReading), [check, desk])
  useEffect(() => model.dispose, [model])
  return (
    <details class="fold">
      <summary>Facts of the line</summary>
      <form aria-label="Facts of the line" onSubmit={(event) => event.preventDefault()}>
        <Fields model={model} desk={desk} />
      </form>
    </details>
  )
}
