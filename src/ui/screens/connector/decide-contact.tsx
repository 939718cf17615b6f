import { useEffect, useMemo } from 'preact/hooks'
import { buildWords, choiceWords, thinAirWords, toleranceWords } from '../../../calc/connector/build-words.ts'
import { withClass } from '../../../calc/connector/class-words.ts'
import { type ContactPart, type ContactRow, contactPartOf } from '../../../calc/connector/contact-row.ts'
import { partWords } from '../../../calc/connector/said.ts'
import { withoutTaken, withTaken } from '../../../calc/connector/take.ts'
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../../calc/network/circuit.ts'
import { type ClassState, createClassRun } from '../../../state/class-run.ts'
import { hashOfContact } from '../../../state/connector-address.ts'
import { changeConnector, writeContactText } from '../../../state/connectors.ts'
import { MARK_WORDS, MarkIcon, markOf } from '../../parts/contact-mark.tsx'
import { Icon } from '../../parts/icon.tsx'
import { ClassProgress } from './class-progress.tsx'
import type { ViewGiven } from './connector.tsx'
import { ChoiceRow, ContactTextField } from './texts.tsx'

type Given = ViewGiven & {
  readonly row: ContactRow
  readonly rows: readonly ContactRow[]
  readonly onOpen: (id: string | undefined) => void
}

/** One contact: the proposal and why, the user's own choice, what can be built of it, and what is found of it. */
export function DecideContact({ complaint, connector, row, rows, onOpen }: Given) {
  const { contact, headline, why, findings, waits } = row
  const mark = markOf(contact, row)
  const place = rows.indexOf(row)
  const classes = useClass(connector, row)
  const classed = classes.is === 'done' ? withClass(row, classes.said.get(contact.id)) : row
  const beside = (step: 1 | -1, word: string) => {
    const other = rows[place + step]?.contact.id
    return (
      <button type="button" class="button" disabled={other === undefined} onClick={() => onOpen(other)}>
        <span class="unseen">{word} contact </span>
        {step < 0 && <Icon name="back" />}
        {other ?? ''}
        {step > 0 && <Icon name="go" />}
      </button>
    )
  }
  return (
    <section aria-label={`Contact ${contact.id}`} class="stack decide-contact">
      <nav class="around" aria-label="Neighbours in the list">
        {beside(-1, 'Previous')}
        <button type="button" class="button" onClick={() => onOpen(undefined)}>
          All contacts
        </button>
        {beside(1, 'Next')}
      </nav>
      <h2>
        <span class={`contact-row ${mark}`} data-mark={mark}>
          <MarkIcon mark={mark} />
          <span>
            {contact.id} {contact.texts.function ?? ''}: {MARK_WORDS[mark]}
          </span>
        </span>
      </h2>
      <p>{headline}</p>
      {why !== '' && !headline.includes(why) && <p class="muted">{why}</p>}
      {waits !== undefined && <p class="finding">{waits}</p>}
      {findings.map(({ id, sentence }) => (
        <p key={id} class="finding">
          {sentence}
        </p>
      ))}
      {contact.type === 'line' && row.decided.by !== 'barred' && (
        <Choosing complaint={complaint} connector={connector} row={row} />
      )}
      <Built row={classed} classes={classes} />
      <a class="button" href={hashOfContact(complaint.id, connector.id, contact.id)}>
        Its line and facts
      </a>
    </section>
  )
}

/** The power class of its suppressor, worked out while the contact is open. */
function useClass(connector: ViewGiven['connector'], row: ContactRow): ClassState {
  const run = useMemo(createClassRun, [])
  useEffect(() => {
    run.start(connector, [row])
    return run.forget
  }, [run, connector, row])
  return run.state.value
}

const OPTIONS = [
  ...TOPOLOGIES.map((topology) => ({ value: topology as string, label: TOPOLOGY_LABEL[topology] })),
  { value: 'none', label: 'bare' },
  { value: '', label: 'as proposed' },
]

function Choosing({ complaint, connector, row }: ViewGiven & { readonly row: ContactRow }) {
  const { contact, proposal, offer, waits, choice } = row
  const take = (part: ContactPart) =>
    changeConnector(complaint.id, connector.id, {
      contacts: withTaken(connector.contacts, [{ id: contact.id, part }]),
    })
  const isChosen = choice?.topology !== undefined || choice?.valueF !== undefined || choice?.isBare === true
  const moved = row.aloneF === undefined ? undefined : row.decided.part && contactPartOf(row.decided.part)
  const isDefeated = row.verdict === 'fails' && !isChosen
  const offered = isDefeated ? offer : (moved ?? proposal?.part ?? offer)
  return (
    <>
      {offered !== undefined && waits === undefined && (
        <button type="button" class="button strong wide" onClick={() => take(offered)}>
          Take {partWords(offered)}
        </button>
      )}
      {isDefeated && row.together !== undefined && (
        <p class="finding">
          Nothing it may carry keeps its need here: a better bond, or less of the noise at its source.
        </p>
      )}
      {proposal !== undefined && isChosen && <p class="muted">Proposed by its bounds: {proposal.why}</p>}
      {isChosen && (
        <button
          type="button"
          class="button"
          onClick={() =>
            changeConnector(complaint.id, connector.id, {
              contacts: withoutTaken(connector.contacts, matesOf(connector, row)),
            })
          }
        >
          <Icon name="undo" />
          Back to the proposal
        </button>
      )}
      <details class="fold" open={isChosen}>
        <summary>Your own choice</summary>
        <div class="stack">
          <ChoiceRow
            name="chosen-topology"
            label="Topology"
            options={OPTIONS}
            chosen={contact.texts.chosenTopology ?? ''}
            onChoose={(value) => writeContactText(complaint.id, connector.id, contact.id, 'chosenTopology', value)}
          />
          <div class="two">
            <ContactTextField
              connector={connector}
              contact={contact.id}
              field="chosenF"
              label="Capacitance"
              help="One capacitor, as marked."
            />
            <ContactTextField
              connector={connector}
              contact={contact.id}
              field="chosenH"
              label="Inductance"
              help="Least at its current."
            />
          </div>
          <ContactTextField connector={connector} contact={contact.id} field="chosenSuppressor" label="Suppressor" />
          <ContactTextField connector={connector} contact={contact.id} field="chosenPlace" label="Place" />
        </div>
      </details>
    </>
  )
}

const matesOf = ({ contacts }: ViewGiven['connector'], { contact }: ContactRow): readonly string[] =>
  contact.lineId === undefined
    ? [contact.id]
    : contacts.filter(({ lineId }) => lineId === contact.lineId).map(({ id }) => id)

/** What can be built, where it goes, and its suppressor. */
function Built({
  row: { build, place, suppressor },
  classes,
}: {
  readonly row: ContactRow
  readonly classes: ClassState
}) {
  if (build === undefined && place === undefined && suppressor === undefined) return null
  const air = build && thinAirWords(build)
  return (
    <dl class="built">
      {build !== undefined && (
        <>
          <dt>What can be built</dt>
          <dd>
            {buildWords(build)}. {toleranceWords(build)}
            {air !== undefined && <span class="finding"> {air}</span>}
            <ul class="small">
              {build.dielectrics.map((one) => (
                <li key={one.id}>{choiceWords(one)}</li>
              ))}
            </ul>
          </dd>
        </>
      )}
      {place !== undefined && (
        <>
          <dt>Where</dt>
          <dd>{place}</dd>
        </>
      )}
      {suppressor !== undefined && (
        <>
          <dt>Suppressor</dt>
          <dd>
            {suppressor.class === undefined ? '' : `${suppressor.class}. `}
            {suppressor.why}
            <ClassProgress state={classes} />
          </dd>
        </>
      )}
    </dl>
  )
}
