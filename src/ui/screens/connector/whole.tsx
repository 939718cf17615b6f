import { useEffect, useMemo } from 'preact/hooks'
import { createStrikeRun, createWholeRun, type WholeBody, type WholeRun } from '../../../state/whole-run.ts'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'
import { WholeBond } from './whole-bond.tsx'
import { WholeFacts } from './whole-facts.tsx'
import { Findings, WholeVerdict } from './whole-findings.tsx'
import { WholeShared } from './whole-shared.tsx'
import { WholeStrike } from './whole-strike.tsx'
import './whole.css'

/** What only the whole connector tells: each finding a sentence, its workings one tap away, the strike when it is asked for. */
export function Whole({ complaint, connector }: ViewGiven) {
  const run = useMemo(createWholeRun, [])
  const strike = useMemo(createStrikeRun, [])
  const { lines } = complaint
  useEffect(() => {
    strike.forget()
    run.start(connector, lines)
  }, [run, strike, connector, lines])
  useEffect(
    () => () => {
      run.stop()
      strike.stop()
    },
    [run, strike],
  )
  const state = run.state.value
  const body = 'body' in state ? state.body : undefined
  if (connector.contacts.length === 0)
    return <p>There is no contact yet. Make the contacts, or paste a table of them.</p>
  return (
    <div class="panes whole">
      <div class="pane stack">
        <Standing run={run} onAgain={() => run.start(connector, lines)} />
        {body !== undefined && (
          <Found complaint={complaint} connector={connector} body={body} isLive={state.is === 'done'} />
        )}
      </div>
      <div class="pane stack">
        <WholeStrike
          connector={connector}
          run={strike}
          body={state.is === 'done' ? body : undefined}
          complaintId={complaint.id}
        />
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

/** How far it is, and a way to leave it; nothing once it is done. */
function Standing({ run, onAgain }: { readonly run: WholeRun; readonly onAgain: () => void }) {
  const state = run.state.value
  if (state.is === 'done') return null
  if (state.is === 'working')
    return (
      <div class="stack">
        <label class="progress">
          Working out the whole connector, {Math.round(state.doneFrac * 100)} %
          <progress max="1" value={state.doneFrac} />
        </label>
        <button type="button" class="button" onClick={run.stop}>
          <Icon name="close" />
          Stop
        </button>
      </div>
    )
  return (
    <div class="stack">
      <p role="status">
        {state.is === 'stopped'
          ? 'Stopped: nothing is said of the whole connector.'
          : 'The connector could not be worked out. That is a fault of the app, not of the inputs; what was typed is kept.'}
      </p>
      <button type="button" class="button" onClick={onAgain}>
        Work it out
      </button>
    </div>
  )
}
