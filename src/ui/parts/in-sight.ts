import type { RefObject } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** Whether any of an element is on the screen; where nobody can tell, it is. `guess`: until that is known. */
export function useInSight(of: RefObject<Element | null>, guess: () => boolean): boolean {
  const canTell = typeof IntersectionObserver === 'function'
  const [isInSight, setInSight] = useState(() => !canTell || guess())
  useEffect(() => {
    if (of.current === null || !canTell) return
    const watcher = new IntersectionObserver((seen) => setInSight(seen.at(-1)?.isIntersecting === true))
    watcher.observe(of.current)
    return () => watcher.disconnect()
  }, [of, canTell])
  return isInSight
}
