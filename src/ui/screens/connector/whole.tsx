import { useMemo } from 'preact/hooks'
import { createWholeRun, type WholeBody } from '../../../state/whole-run.ts'
import type { ViewGiven } from './connector.tsx'
import { NoContacts } from './no-contacts.tsx'
import { useAfterSchedule, useStrikeAndClasses } from './use-after-schedule.ts'
import { Waiting } from './waiting.tsx'
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
  const run = useMemo(createWholeRun, [])
  const { strike, classes } = useStrikeAndClasses({ complaint, connector })
  const { schedule, body, isLive, waiting } = useAfterSchedule({ complaint, connector }, run, DECIDED_FRAC)
  if (connector.contacts.length === 0)
    return <NoContacts complaint={complaint} connector={connector} so="there is nothing to say of all of them" />
  return (
    <div class="panes whole">
      <div class="pane stack">
        {!isLive && (
          <Waiting
            {...waiting}
            what="The connector"
            working="Working out the whole connector"
            stopped="Stopped: nothing is said of the whole connector."
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
