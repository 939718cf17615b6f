import { classCounts, withClass } from '../../../calc/connector/class-words.ts'
import type { ContactRow } from '../../../calc/connector/contact-row.ts'
import type { ClassRun } from '../../../state/class-run.ts'
import type { KeptConnector } from '../../../state/connectors.ts'
import { Icon } from '../../parts/icon.tsx'
import { ClassProgress } from './class-progress.tsx'
import { Findings } from './whole-findings.tsx'

type Given = {
  readonly connector: KeptConnector
  readonly complaintId: string
  readonly run: ClassRun
  /** undefined while the contacts are being worked out */
  readonly rows: readonly ContactRow[] | undefined
}

/** How many suppressors of which class, each contact struck alone: when asked, with progress and a way to stop. */
export function WholeClasses({ connector, complaintId, run, rows }: Given) {
  const state = run.state.value
  const counted =
    state.is === 'done'
      ? classCounts(rows?.map((row) => withClass(row, state.said.get(row.contact.id))) ?? [])
      : undefined
  return (
    <section aria-label="Suppressor classes" class="stack">
      <h2>Suppressor classes</h2>
      {state.is === 'working' ? (
        <>
          <ClassProgress state={state} />
          <button type="button" class="button" onClick={run.stop}>
            <Icon name="close" />
            Cancel
          </button>
        </>
      ) : (
        <button
          type="button"
          class="button wide"
          disabled={rows === undefined}
          onClick={() => rows && run.start(connector, rows)}
        >
          Find the power classes
        </button>
      )}
      {state.is === 'done' && counted === undefined && (
        <p role="status">No suppressor is proposed: no contact has a test, or none of its volts are known.</p>
      )}
      {counted !== undefined && <Findings findings={[counted]} complaintId={complaintId} connectorId={connector.id} />}
      {state.is !== 'working' && <ClassProgress state={state} />}
    </section>
  )
}
