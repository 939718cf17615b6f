import { useEffect, useState } from 'preact/hooks'
import { keepSmallText, smallText } from '../../store/browser-storage.ts'

const SAID = 'offline-said'

/** Whether "works offline" was said before; it is said once in a browser's life. */
const wasSaid = (): boolean => smallText(SAID) !== undefined

/** Who has not read it by then has all the time until the next touch; About says it at any time. */
const READY_FOR_MS = 12_000
/** What tells that somebody goes on. Not a finger coming down: what it is put on may not move away before it is lifted. */
const GOES_ON = ['hashchange', 'click', 'keydown', 'scroll'] as const

/**
 * Says that the copy is complete: one low line over the places that takes no touch and moves nothing. It goes with the
 * first thing done once there was time to read it: never by the clock alone.
 */
export function OfflineReady() {
  const [isRead, setRead] = useState(wasSaid)
  useEffect(() => {
    if (isRead) return
    const end = new AbortController()
    const go = () => {
      keepSmallText(SAID, '1')
      setRead(true)
    }
    const timer = setTimeout(() => {
      for (const one of GOES_ON) addEventListener(one, go, { signal: end.signal })
    }, READY_FOR_MS)
    return () => {
      clearTimeout(timer)
      end.abort()
    }
  }, [isRead])
  if (isRead) return null
  return (
    <p class="ready" role="status">
      Ready: from now on this works without a network.
    </p>
  )
}
