/** What a screen notes of its address: the typed text, and with its entry of the history the Line it was opened on. */
import { routed } from './router.ts'

/** The address of the screen that is drawn now. */
export const addressHere = (): string => routed.hash ?? location.hash

/**
 * Whether a screen still has the address bar. That another place is there is told of a little later, and a little later
 * still the screen goes: what it would note of its address then would be noted of that place, which would be opened on its
 * Line.
 */
export const isStillAt = (address: string): boolean => location.hash === address && addressHere() === address

/**
 * Rewrites the address so that a reload keeps the typed text; the screen that asks for it stays as it is. The Line the
 * address was opened on goes with the entry of the history, not with the address. Says whether it was done: browsers
 * refuse when it is asked too often, and the entry of a place that comes next is not touched.
 */
export function noteAddress(hash: string, lineId?: string): boolean {
  if (location.hash !== addressHere()) return false
  if (location.hash === hash && lineOfEntry() === lineId) return true
  try {
    history.replaceState({ ...history.state, line: lineId }, '', hash)
    if (routed.hash !== undefined) routed.hash = location.hash
    return true
  } catch {
    return false
  }
}

/** The Line this entry of the history was working on, if any. */
export function lineOfEntry(): string | undefined {
  const state: unknown = history.state
  const line = typeof state === 'object' && state !== null && 'line' in state ? state.line : undefined
  return typeof line === 'string' ? line : undefined
}
