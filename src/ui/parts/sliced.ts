import { useEffect, useState } from 'preact/hooks'
import { isAtRest, whenIdle } from '../rest.ts'

/**
 * How many of `count` parts are drawn so far: none until the screen stands, and then one more whenever the browser has a
 * moment, so that no turn takes as long as all of them. `isAtOnce`: all, as where they are in sight.
 */
export function useSliced(count: number, isAtOnce = false): number {
  const [drawn, setDrawn] = useState(0)
  const isWaiting = !isAtRest.value
  const isDone = isAtOnce || drawn >= count
  useEffect(() => {
    if (isDone || isWaiting) return
    return whenIdle(() => setDrawn(drawn + 1))
  }, [drawn, isDone, isWaiting])
  return isDone ? count : drawn
}
