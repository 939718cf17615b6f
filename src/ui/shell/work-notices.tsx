import { useEffect, useState } from 'preact/hooks'
import { lastDeleted } from '../../state/complaints.ts'
import { guideNotice } from '../../state/guide-content.ts'
import { erasedElsewhere, isStoreOdd, retrySave, saveState, storeNotice } from '../../state/save-queue.ts'
import { triageBefore } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { Bar, PutAway } from './bar.tsx'
import { isResumed } from './start.ts'

/** What the user should know of stored work: storage trouble, a triage set aside, a deletion that can be undone. */
export function WorkNotices() {
  return (
    <>
      <Erased />
      <Storage />
      <TriageBack />
      <GuideNotice />
      {lastDeleted.value !== undefined && <UndoBar removed={lastDeleted.value} />}
    </>
  )
}

/** Where the storage itself has trouble, that is said already. */
function GuideNotice() {
  const [seen, setSeen] = useState<string | undefined>(undefined)
  const words = guideNotice.value
  if (words === undefined || words === seen || storeNotice.value !== undefined) return null
  return (
    <Bar>
      <p>{words}</p>
      <PutAway onTap={() => setSeen(words)} />
    </Bar>
  )
}

function Erased() {
  if (!erasedElsewhere.value) return null
  return (
    <Bar role="alert">
      <p>Everything on this device was erased in another window. What is still shown here is not kept any more.</p>
      <button type="button" class="button" onClick={() => location.reload()}>
        Reload
      </button>
    </Bar>
  )
}

/** A triage that is kept nowhere else has just made room for another one. */
function TriageBack() {
  const before = triageBefore.value
  const [seen, setSeen] = useState(before?.line.id)
  useEffect(() => {
    // what was set aside in an earlier visit is offered at the start of Ask, not here
    if (!isResumed.value) setSeen(before?.line.id)
  }, [before, isResumed.value])
  if (before === undefined || !isResumed.value || before.line.id === seen) return null
  return <TriageBar before={before} onSeen={() => setSeen(before.line.id)} />
}

/** Seldom needed, so fetched when it is. */
const WaysOut = lazy(async () => (await import('./ways-out.tsx')).WaysOut, null)

function Storage() {
  const [seen, setSeen] = useState<string | undefined>(undefined)
  const words = storeNotice.value
  if (words === undefined || words === seen) return null
  return (
    <Bar role="alert">
      <p>{words}</p>
      {saveState.value === 'failed' && (
        <button type="button" class="button" onClick={() => void retrySave()}>
          Try again
        </button>
      )}
      {isStoreOdd.value && <WaysOut />}
      <PutAway onTap={() => setSeen(words)} />
    </Bar>
  )
}

/** Nothing is deleted or replaced before the first screen stands. */
const UndoBar = lazy(async () => (await import('./undo-bar.tsx')).UndoBar, null)
const TriageBar = lazy(async () => (await import('./undo-bar.tsx')).TriageBar, null)
