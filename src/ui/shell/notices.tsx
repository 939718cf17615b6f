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
import { keepSmallText, smallText } from '../../store/browser-storage.ts'
import { lazy } from '../lazy.tsx'
import { Bar, PutAway } from './bar.tsx'

/** Stored work is read after the first screen stands; until then there is nothing to say of it. */
const WorkNotices = lazy(async () => (await import('./work-notices.tsx')).WorkNotices, null)

const SAID = 'offline-said'

/** Whether "works offline" was said before; it is said once in a browser's life. */
const wasSaid = (): boolean => smallText(SAID) !== undefined

/** Bars for what the user should know now: an update, no way to reload, trouble with what is stored. */
export function Notices() {
  return (
    <section class="notices" aria-label="Notices">
      <Update />
      <NoCopy />
      <WorkNotices />
      <OfflineReady />
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
