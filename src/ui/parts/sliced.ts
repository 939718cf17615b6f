import { useEffect, useState } from 'preact/hooks'

/**
 * How many of `count` parts are drawn so far: none at first, and one more with each frame once the screen was painted, so
 * that no turn takes as long as all of them. `isAtOnce`: all, as where they are in sight.
 */
export function useSliced(count: number, isAtOnce = false): number {
  const [drawn, setDrawn] = useState(0)
  const isDone = isAtOnce || drawn >= count
  useEffect(() => {
    if (isDone) return
    let timer: ReturnType<typeof setTimeout> | undefined
    const frame = requestAnimationFrame(() => {
      timer = setTimeout(() => setDrawn(drawn + 1))
    })
    return () => {
      cancelAnimationFrame(frame)
      clearTimeout(timer)
    }
  }, [drawn, isDone])
  return isDone ? count : drawn
}
