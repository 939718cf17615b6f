import { useEffect, useMemo } from 'preact/hooks'
import { createClassRun } from '../../../state/class-run.ts'
import { scheduleRun } from '../../../state/schedule.ts'
import { createStrikeRun, createWholeRun, type WholeBody } from '../../../state/whole-run.ts'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'
import { NoContacts } from './no-contacts.tsx'
import { WholeBond } from './whole-bond.tsx'
import { WholeClasses } from './whole-classes.tsx'
import { WholeFacts } from './whole-facts.tsx'
import { Findings, WholeVerdict } from './whole-findings.tsx'
import { WholeShared } from './whole-shared.tsx'
import { WholeStrike } from './whole-strike.tsx'
import './whole.css'

/** Share of the waiting in which the contacts are decided, before they are summed. */
const DECIDED_FRAC = 0.6

/** What only the whole connector tells: each finding a sentence, its workings one tap away, the strike when it is asked for. */
export function Whole({ complaint, connector }: ViewGiven) {
  const planned = scheduleRun(connector.id)
  const run = useMemo(createWholeRun, [])
  const strike = useMemo(createStrikeRun, [])
  const classes = useMemo(createClassRun, [])
  const { lines } = complaint
  const { is, shown, doneFrac } = planned.state.value
  const schedule = is === 'done' ? shown : undefined
  useEffect(() => {
    strike.forget()
    classes.forget()
    planned.want(connector, lines)
  }, [planned, strike, classes, connector, lines])
  useEffect(() => {
    if (schedule !== undefined) run.start(connector, schedule)
  }, [run, schedule])
  useEffect(
    () => () => {
      run.stop()
      strike.stop()
      classes.stop()
    },
    [run, strike, classes],
  )
  if (connector.contacts.length === 0)
    return <NoContacts complaint={complaint} connector={connector} so="there is nothing to say of all of them" />
  const state = run.state.value
  const body = 'body' in state ? state.body : undefined
  const isLive = schedule !== undefined && state.is === 'done'
  // before the schedule is done, what the run came to last is of no account
  const ended = is === 'done' ? state.is : is
  return (
    <div class="panes whole">
      <div class="pane stack">
        {!isLive && (
          <Standing
            is={ended === 'done' ? 'working' : ended}
            doneFrac={
              schedule === undefined
                ? DECIDED_FRAC * doneFrac
                : DECIDED_FRAC + (1 - DECIDED_FRAC) * ('doneFrac' in state ? state.doneFrac : 0)
            }
            onStop={() => {
              planned.stop()
              run.stop()
            }}
            onAgain={() => {
              if (schedule === undefined) planned.want(connector, lines)
              else run.start(connector, schedule)
            }}
          />
        )}
        {body !== undefined && <Found complaint={complaint} connector={connector} body={body} isLive={isLive} />}
      </div>
      <div class="pane stack">
        <WholeStrike connector={connector} run={strike} body={isLive ? body : undefined} complaintId={complaint.id} />
        <WholeClasses connector={connector} run={classes} rows={schedule?.rows} complaintId={complaint.id} />
        <WholeFacts connector={connector} />
        <WholeShared connector={connector} />
      </div>
    </div>
  )
}

function Found({
  complaint,
  connector,
  body,
  isLive,
}: ViewGiven & { readonly body: WholeBody; readonly isLive: boolean }) {
  const { findings, bond } = body.whole
  return (
    <div class={isLive ? 'stack' : 'stack stale'}>
      <WholeVerdict findings={findings} />
      <section aria-label="Findings">
        <Findings findings={findings} complaintId={complaint.id} connectorId={connector.id} />
      </section>
      <WholeBond bond={bond} complaintId={complaint.id} connectorId={connector.id} />
    </div>
  )
}

type StandingGiven = {
  readonly is: 'working' | 'stopped' | 'broken'
  readonly doneFrac: number
  readonly onStop: () => void
  readonly onAgain: () => void
}

/** How far it is, and a way to leave it. */
function Standing({ is, doneFrac, onStop, onAgain }: StandingGiven) {
  if (is === 'working')
    return (
      <div class="stack">
        <label class="progress">
          Working out the whole connector, {Math.round(doneFrac * 100)} %
          <progress max="1" value={doneFrac} />
        </label>
        <button type="button" class="button" onClick={onStop}>
          <Icon name="close" />
          Stop
        </button>
      </div>
    )
  return (
    <div class="stack">
      <p role="status">
        {is === 'stopped'
          ? 'Stopped: nothing is said of the whole connector.'
          : 'The connector could not be worked out. That is a fault of the app, not of the inputs; what was typed is kept.'}
      </p>
      <button type="button" class="button" onClick={onAgain}>
        Work it out
      </button>
    </div>
  )
}
