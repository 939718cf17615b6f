import { useEffect, useState } from 'preact/hooks'
import { useLasting } from './parts/later.ts'
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

/**
 * Whether what a phone has out of sight on a first screen waits for something that is being worked out for it, no longer than `mostMs`;
 * the rest of the app is held as long. Where the app stands nothing waits.
 */
export function useFirstWait(isComing: boolean, mostMs: number): boolean {
  const isFirst = isComing && !isAtRest.value
  const isLong = useLasting(isFirst, mostMs)
  const waits = isFirst && !isLong
  useEffect(() => (waits ? holdRest() : undefined), [waits])
  return waits
}
