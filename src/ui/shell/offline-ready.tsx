import { useEffect, useState } from 'preact/hooks'
import { keepSmallText, smallText } from '../../store/browser-storage.ts'
import { Bar, PutAway } from './bar.tsx'

const SAID = 'offline-said'

/** Whether "works offline" was said before; it is said once in a browser's life. */
const wasSaid = (): boolean => smallText(SAID) !== undefined

/** Who has not read it by then has all the time until the next screen; it covers the lowest answers while it stands. */
const READY_FOR_MS = 12_000

/** Says that the copy is complete. It goes by a tap, or with the screen once there was time to read it: never by itself. */
export function OfflineReady() {
  const [isPutAway, setPutAway] = useState(wasSaid)
  const putAway = () => {
    keepSmallText(SAID, '1')
    setPutAway(true)
  }
  useEffect(() => {
    if (isPutAway) return
    const timer = setTimeout(() => addEventListener('hashchange', putAway), READY_FOR_MS)
    return () => {
      clearTimeout(timer)
      removeEventListener('hashchange', putAway)
    }
  }, [isPutAway])
  if (isPutAway) return null
  return (
    <Bar>
      <p>Ready: from now on this works without a network.</p>
      <PutAway onTap={putAway} />
    </Bar>
  )
}
