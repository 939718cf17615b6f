import { useEffect, useMemo, useState } from 'preact/hooks'
import { type GroupAnswer, mergesOf } from '../../../calc/connector/group.ts'
import { curvePicture, mergesPicture, planeWords, pointWords } from '../../../calc/connector/group-pictures.ts'
import type { Grouping } from '../../../calc/connector/grouping.ts'
import type { Schedule } from '../../../calc/connector/schedule.ts'
import { withTaken } from '../../../calc/connector/take.ts'
import { hasInductor } from '../../../calc/network/circuit.ts'
import { changeConnector, writeConnectorText } from '../../../state/connectors.ts'
import { createGroupRun, type GroupRun, type GroupState } from '../../../state/group-run.ts'
import { Icon } from '../../parts/icon.tsx'
import { PictureView } from '../../parts/picture.tsx'
import type { ViewGiven } from './connector.tsx'
import { ChoiceRow, ConnectorTextField } from './texts.tsx'

type Given = ViewGiven & { readonly schedule: Schedule; readonly isLive: boolean }

const PREFER = [
  { value: 'values', label: 'few values' },
  { value: 'topologies', label: 'few topologies' },
  { value: 'planes', label: 'few ceramics' },
  { value: 'margin', label: 'most margin' },
]

/** Few parts instead of many: how few, what it costs, and one tap that takes it. */
export function DecideGroup({ complaint, connector, schedule, isLive }: Given) {
  const run = useMemo(createGroupRun, [])
  useEffect(() => () => run.stop(), [run])
  const state = run.state.value
  const start = () => run.start(schedule, connector)
  const prefer = connector.texts.prefer ?? 'values'
  return (
    <section aria-label="Few parts" class="stack">
      <h2>Few parts</h2>
      <ChoiceRow
        name="prefer"
        label="Look for"
        options={PREFER}
        chosen={prefer}
        onChoose={(value) => writeConnectorText(complaint.id, connector.id, 'prefer', value)}
      />
      <div class="two">
        <ConnectorTextField
          connector={connector}
          field="valueRatio"
          label="Ratio in one ceramic"
          help="As the maker states. Empty: one value."
        />
        <ConnectorTextField
          connector={connector}
          field="mostParts"
          label="At most so many parts"
          help="Empty: up to 12."
        />
      </div>
      <UnderWay run={run} state={state} onStart={start} isLive={isLive} />
      {state.is === 'done' && (
        <>
          {state.of !== schedule && <p role="status">The contacts have changed since: group them again.</p>}
          <div class={state.of === schedule ? undefined : 'old'}>
            <Found
              complaint={complaint}
              connector={connector}
              answer={state.answer}
              rows={schedule.rows}
              prefer={prefer}
            />
          </div>
        </>
      )}
    </section>
  )
}

type UnderWayGiven = {
  readonly run: GroupRun
  readonly state: GroupState
  readonly isLive: boolean
  readonly onStart: () => void
}

const DOING = {
  windows: 'Looking what each contact could carry',
  values: 'Looking for few values',
  topologies: 'Looking for few topologies',
  planes: 'Looking for few ceramics',
} as const

function UnderWay({ run, state, isLive, onStart }: UnderWayGiven) {
  if (state.is === 'working') {
    const { of, best, lowerBound, tried } = state.at
    return (
      <div class="under-way">
        <p role="status">
          {DOING[of]}
          {tried === undefined ? '…' : `: ${best} so far, never fewer than ${lowerBound}; ${tried} steps.`}
        </p>
        <button type="button" class="button" onClick={run.stop}>
          <Icon name="close" />
          Stop
        </button>
      </div>
    )
  }
  return (
    <>
      {state.is === 'stopped' && <p role="status">Stopped: nothing was changed.</p>}
      {state.is === 'broken' && (
        <p role="status">The grouping failed. That is a fault of the app, not of the inputs.</p>
      )}
      <button type="button" class="button wide" disabled={!isLive} onClick={onStart}>
        {state.is === 'done' ? 'Group again' : 'Group the parts'}
      </button>
    </>
  )
}

type FoundGiven = ViewGiven & {
  readonly answer: GroupAnswer
  readonly rows: Schedule['rows']
  readonly prefer: string
}

function Found({ complaint, connector, answer, rows, prefer }: FoundGiven) {
  const { curve, byTopology, planes, contacts } = answer
  const [tapped, setTapped] = useState<number | undefined>(undefined)
  if (contacts.length === 0) return <p>No contact carries a capacitor yet.</p>
  const isCurve = prefer !== 'topologies' && prefer !== 'planes'
  const at = Math.min(tapped ?? (prefer === 'margin' ? curve.length - 1 : 0), curve.length - 1)
  const point = curve[at]
  const shown: Grouping | undefined =
    prefer === 'planes' ? planes.grouping : prefer === 'topologies' ? byTopology : point?.grouping
  const picture = curvePicture(curve)
  const left = contacts.filter((_, i) => (shown?.partOf[i] ?? -1) < 0).map(({ id }) => id)
  const take = (grouping: Grouping) =>
    changeConnector(complaint.id, connector.id, { contacts: withTaken(connector.contacts, takenOf(answer, grouping)) })
  return (
    <div class="stack">
      {isCurve && (
        <>
          {picture !== undefined && <PictureView picture={picture} />}
          <fieldset class="points-set">
            <legend>How many parts</legend>
            <ul class="stack points">
              {curve.map((one, i) => (
                <li key={one.parts}>
                  <label class="point">
                    <input
                      type="radio"
                      class="pick-mark"
                      name="point"
                      checked={i === at}
                      onChange={() => setTapped(i)}
                    />
                    <span>{pointWords(one)}</span>
                  </label>
                </li>
              ))}
            </ul>
          </fieldset>
        </>
      )}
      {!isCurve && shown !== undefined && (
        <p>{pointWords({ parts: shown.parts.length, leastMarginRatio: shown.leastMarginRatio, grouping: shown })}.</p>
      )}
      {left.length > 0 && <p class="finding">No value of the series fits these: contacts {left.join(', ')}.</p>}
      {shown !== undefined && (
        <>
          <button type="button" class="button strong wide" onClick={() => take(shown)}>
            Take {shown.parts.length === 1 ? 'this part' : `these ${shown.parts.length} parts`} for all of them
          </button>
          <p class="small muted">What is taken is judged again with all contacts in the bond, and can be taken back.</p>
          <details class="fold">
            <summary>What each contact gives up</summary>
            <PictureView picture={mergesPicture(mergesOf(contacts, shown))} />
          </details>
        </>
      )}
      <Planes answer={answer} rows={rows} />
    </div>
  )
}

function takenOf({ contacts }: GroupAnswer, { parts, partOf }: Grouping) {
  return contacts.flatMap(({ id, open }, i) => {
    const part = parts[partOf[i] ?? -1]
    if (part === undefined) return []
    const { topology, valueF } = part
    return [{ id, part: { topology, valueF, ...(hasInductor(topology) ? { inductanceH: open.setup.enteredH } : {}) } }]
  })
}

function Planes({ answer, rows }: Pick<FoundGiven, 'answer' | 'rows'>) {
  const { planes, planeRatio } = answer
  if (planes.planes.length === 0) return null
  const proved = planes.lowerBound >= planes.ceramics ? 'proved fewest' : `never fewer than ${planes.lowerBound}`
  return (
    <section aria-label="Ceramics" class="stack">
      <h3>
        {planes.ceramics === 1 ? 'One ceramic' : `${planes.ceramics} ceramics`}, {proved}
      </h3>
      <p class="small muted">
        One dielectric class and one thickness a ceramic, values within {planeRatio} : 1. Practice, a question for the
        maker.
      </p>
      <ul class="stack">
        {planeWords(answer, rows).map(({ id, sentence, contacts }) => (
          <li key={id}>
            {sentence}. <span class="muted small">Contacts {contacts.join(', ')}.</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
