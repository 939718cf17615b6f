import { useEffect, useState } from 'preact/hooks'
import { holdRest, isAtRest } from './rest.ts'

/**
 * How many of `count` turns a first screen has been given behind its first drawing, each once the one before was painted,
 * so that its parts make no one long turn; all of them where the app stands.
 */
export function useTurns(count: number): number {
  const [given, setGiven] = useState(isAtRest.peek() ? count : 0)
  useEffect(() => {
    if (given >= count) return
    const release = holdRest()
    // a timer set in a frame comes behind its painting
    let turn: ReturnType<typeof setTimeout> | undefined
    const frame = requestAnimationFrame(() => {
      turn = setTimeout(() => setGiven(given + 1))
    })
    return () => {
      cancelAnimationFrame(frame)
      clearTimeout(turn)
      release()
    }
  }, [given, count])
  return given
}
