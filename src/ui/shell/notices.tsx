import { useEffect, useState } from 'preact/hooks'
import {
  applyUpdate,
  isCopyMissing,
  isNetworkGone,
  offlineReady,
  reloadAdvised,
  updatedElsewhere,
  updateReady,
} from '../../offline/updates.ts'
import { lazy } from '../lazy.tsx'
import { Bar, PutAway } from './bar.tsx'
import { OfflineReady } from './offline-ready.tsx'

/** Stored work is read after the first screen stands; until then there is nothing to say of it. */
const WorkNotices = lazy(async () => (await import('./work-notices.tsx')).WorkNotices, null)

/** Bars for what the user should know now: an update, no way to reload, trouble with what is stored. */
export function Notices() {
  return (
    <section class="notices" aria-label="Notices">
      <Update />
      <NoCopy />
      <WorkNotices />
      {offlineReady.value && <OfflineReady />}
    </section>
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

/** Only where both are known: there is no network, and this browser holds no copy to start from. */
function NoCopy() {
  const isTrue = isNetworkGone.value && isCopyMissing.value
  const [isPutAway, setPutAway] = useState(false)
  useEffect(() => {
    if (!isTrue) setPutAway(false)
  }, [isTrue])
  if (!isTrue || isPutAway) return null
  return (
    <Bar>
      <p>No network, and no offline copy on this device yet. What is open goes on; do not close or reload the page.</p>
      <PutAway onTap={() => setPutAway(true)} />
    </Bar>
  )
}
