import { WAVEFORMS, type Waveform } from '../../../reference/waveforms.ts'
import { type KeptConnector, writeConnectorText } from '../../../state/connectors.ts'
import type { StrikeRun, WholeBody } from '../../../state/whole-run.ts'
import { Icon } from '../../parts/icon.tsx'
import { ConnectorTextField } from './texts.tsx'
import { Findings } from './whole-findings.tsx'

type Given = {
  readonly connector: KeptConnector
  readonly complaintId: string
  readonly run: StrikeRun
  /** undefined while the connector is being worked out */
  readonly body: WholeBody | undefined
}

/** Waveforms with printed levels: a pulse of one's own belongs to a line. */
const STRIKES: readonly Waveform[] = WAVEFORMS.filter(
  ({ levels, bundleLevels }) => levels.length > 0 || bundleLevels !== undefined,
)

/** All contacts struck at one moment: when asked, with progress and a way to stop. */
export function WholeStrike({ connector, complaintId, run, body }: Given) {
  const state = run.state.value
  const chosen = connector.texts.strikeWaveform ?? ''
  return (
    <section aria-label="Struck together" class="stack">
      <h2>Struck together</h2>
      <label class="field wide" for="strike-waveform">
        Waveform
        <select
          id="strike-waveform"
          value={chosen}
          onChange={({ currentTarget }) =>
            writeConnectorText(connector.complaintId, connector.id, 'strikeWaveform', currentTarget.value)
          }
        >
          <option value="">not chosen</option>
          {STRIKES.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <ConnectorTextField
        connector={connector}
        field="strikeLevel"
        label="Pin level"
        help="On every contact at once, which no test does: 1 to 5. Empty: not asked."
      />
      <ConnectorTextField
        connector={connector}
        field="bundleLevel"
        label="Bundle level"
        help="Of the test on the whole cable: 1 to 5. Empty: not asked."
      />
      <ConnectorTextField
        connector={connector}
        field="bundleShareFrac"
        label="Share of the bundle current on the contacts"
        help="All contacts together, the shield takes the rest: 20 %."
      />
      {state.is === 'working' ? (
        <>
          <label class="progress">
            Striking, {Math.round(state.doneFrac * 100)} %
            <progress max="1" value={state.doneFrac} />
          </label>
          <button type="button" class="button" onClick={run.stop}>
            <Icon name="close" />
            Cancel
          </button>
        </>
      ) : (
        <button
          type="button"
          class="button strong wide"
          disabled={body === undefined}
          onClick={() => body && run.start(connector, body.decided)}
        >
          Strike all contacts
        </button>
      )}
      <Outcome run={run} complaintId={complaintId} connectorId={connector.id} />
    </section>
  )
}

function Outcome({
  run,
  complaintId,
  connectorId,
}: Pick<Given, 'run' | 'complaintId'> & { readonly connectorId: string }) {
  const state = run.state.value
  switch (state.is) {
    case 'idle':
    case 'working':
      return null
    case 'missing':
      return <p role="status">{state.sentence}</p>
    case 'stopped':
      return <p role="status">Stopped: nothing is said of the strike.</p>
    case 'broken':
      return <p role="alert">The strike could not be worked out ({state.message}). What was typed is kept.</p>
    case 'done':
      return <Findings findings={state.findings} complaintId={complaintId} connectorId={connectorId} />
  }
}
