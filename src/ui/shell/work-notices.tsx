import { useEffect, useState } from 'preact/hooks'
import { forgetRemoved, lastDeleted, undoRemove } from '../../state/complaints.ts'
import { guideNotice } from '../../state/guide-content.ts'
import { erasedElsewhere, isStoreOdd, retrySave, saveState, storeNotice } from '../../state/save-queue.ts'
import { triageBefore, undoTriage } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
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
      <Undo />
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
  const count = Object.keys(before.answers).length
  return (
    <Bar>
      <p>The triage before this one ({count === 1 ? 'one answer' : `${count} answers`}) was not kept in the log.</p>
      <button
        type="button"
        class="button"
        onClick={() => {
          undoTriage()
          location.hash = '#/ask'
        }}
      >
        <Icon name="undo" />
        Go back to it
      </button>
      <PutAway onTap={() => setSeen(before.line.id)} />
    </Bar>
  )
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

/** As much of a name as leaves room for what can be done. */
const short = (name: string): string => ([...name].length > 60 ? `${[...name].slice(0, 59).join('')}…` : name)

function Undo() {
  const removed = lastDeleted.value
  if (removed === undefined) return null
  return (
    <Bar>
      <p>Deleted “{short(removed.name)}”.</p>
      <button type="button" class="button" onClick={() => undoRemove()}>
        <Icon name="undo" />
        Undo
      </button>
      <PutAway onTap={() => forgetRemoved()} />
    </Bar>
  )
}
