import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { applyUpdate, offlineReady, reloadAdvised, updatedElsewhere, updateReady } from '../../offline/updates.ts'
import { forgetRemoved, lastDeleted, undoRemove } from '../../state/complaints.ts'
import { guideNotice } from '../../state/guide-content.ts'
import { erasedElsewhere, retrySave, saveState, storeNotice } from '../../state/save-queue.ts'
import { triageBefore, undoTriage } from '../../state/session.ts'
import { keepSmallText, smallText } from '../../store/browser-storage.ts'
import { Icon } from '../parts/icon.tsx'
import { isResumed } from './start.ts'

const SAID = 'offline-said'

/** Whether "works offline" was said before; it is said once in a browser's life. */
const wasSaid = (): boolean => smallText(SAID) !== undefined

/** Bars for what the user should know now: an update, storage trouble, a deletion that can be undone. */
export function Notices() {
  return (
    <section class="notices" aria-label="Notices">
      <Update />
      <Erased />
      <Storage />
      <TriageBack />
      <GuideNotice />
      <OfflineReady />
      <Undo />
    </section>
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

function Bar({
  children,
  role = 'status',
}: {
  readonly children: ComponentChildren
  readonly role?: 'status' | 'alert'
}) {
  return (
    <div class="bar" role={role}>
      {children}
    </div>
  )
}

function Update() {
  if (updateReady.value || updatedElsewhere.value || reloadAdvised.value) {
    const words = updateReady.value
      ? 'A newer version is ready. Your text is kept.'
      : updatedElsewhere.value
        ? 'Updated in another window. Reload when it suits you; your text is kept.'
        : 'This window is older than the app on the host. Reload to go on; your text is kept.'
    return (
      <Bar>
        <p>{words}</p>
        <button type="button" class="button" onClick={() => applyUpdate()}>
          {updateReady.value ? 'Update now' : 'Reload'}
        </button>
      </Bar>
    )
  }
  return null
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
      <PutAway onTap={() => setSeen(words)} />
    </Bar>
  )
}

function PutAway({ onTap }: { readonly onTap: () => void }) {
  return (
    <button type="button" class="icon-button" onClick={onTap}>
      <Icon name="close" />
      <span class="unseen">Put this notice away</span>
    </button>
  )
}

/** Long enough to be read; it covers the lowest answers while it stands. */
const READY_FOR_MS = 12_000

function OfflineReady() {
  const [isPutAway, setPutAway] = useState(wasSaid)
  const isReady = offlineReady.value
  const putAway = () => {
    keepSmallText(SAID, '1')
    setPutAway(true)
  }
  useEffect(() => {
    if (!isReady || isPutAway) return
    const timer = setTimeout(putAway, READY_FOR_MS)
    return () => clearTimeout(timer)
  }, [isReady, isPutAway])
  if (!isReady || isPutAway) return null
  return (
    <Bar>
      <p>Ready: from now on this works without a network.</p>
      <PutAway onTap={putAway} />
    </Bar>
  )
}

function Undo() {
  const removed = lastDeleted.value
  if (removed === undefined) return null
  return (
    <Bar>
      <p>Deleted “{removed.name}”.</p>
      <button type="button" class="button" onClick={() => undoRemove()}>
        <Icon name="undo" />
        Undo
      </button>
      <PutAway onTap={() => forgetRemoved()} />
    </Bar>
  )
}
