import { START_NODE } from '../../guide/start.ts'
import { complaints } from '../../state/complaints.ts'
import { hashOf } from '../../state/router.ts'
import { restartTriage, triage, triageBefore, undoTriage } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { RowLink } from '../parts/row-link.tsx'
import { isResumed } from '../shell/start.ts'
import { dayAndTime } from './moment.ts'
import { StartLink } from './start-link.tsx'

/** Where the triage stood needs the guide. */
const Resume = lazy(async () => (await import('./ask-resume.tsx')).Resume, null)

/** The way into a triage or back into the one under way, what made room for it, and the last complaint. */
export function GoingOn() {
  const isUnderWay = isResumed.value && Object.keys(triage.value.answers).length > 0
  return (
    <div class="stack" data-going-on={isResumed.value}>
      {isUnderWay ? <UnderWay /> : <StartLink />}
      {isResumed.value && triageBefore.value && (
        <button type="button" class="button wide" onClick={() => undoTriage()}>
          <Icon name="undo" />
          Go back to the triage before, which was not kept
        </button>
      )}
      <LastComplaint />
    </div>
  )
}

function UnderWay() {
  return (
    <>
      <Resume />
      <button
        type="button"
        class="button wide"
        onClick={() => {
          restartTriage()
          location.hash = hashOf('ask', START_NODE)
        }}
      >
        Start afresh
      </button>
    </>
  )
}

/** The complaint of the Log that was worked on last. */
function LastComplaint() {
  const last = complaints.value?.[0]
  if (last === undefined) return null
  return (
    <ul class="rows" aria-label="Last complaint">
      <li>
        <RowLink href={hashOf('log', last.id)} title={last.title || 'Untitled complaint'}>
          Last complaint, {dayAndTime(last.updatedAt)}
          {last.isDemo ? ', invented' : ''}
        </RowLink>
      </li>
    </ul>
  )
}
