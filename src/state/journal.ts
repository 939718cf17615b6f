/**
 * What is typed but not yet on disk, copied at once into storage that is written synchronously: a window that is closed
 * or reloaded in the few milliseconds a database write takes loses nothing. Empty whenever nothing is waiting.
 *
 * `noteUnsaved(steps)`  replaces this window's copy
 * `takeUnsaved()`       what earlier windows left behind, through the gate; their copies are removed
 */
import { restoreSteps, type Step } from '../store/steps.ts'

const PREFIX = 'stillpin-unsaved:'
/** Each window keeps its own copy: two of them may be writing. */
const mine = `${PREFIX}${Math.random().toString(36).slice(2)}`

export function noteUnsaved(steps: readonly Step[]): void {
  try {
    if (steps.length === 0) localStorage.removeItem(mine)
    else localStorage.setItem(mine, JSON.stringify(steps))
  } catch {
    // Without this storage, or with a full one, the database alone has to do.
  }
}

export function takeUnsaved(): readonly Step[] {
  try {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX) && key !== mine)
    return keys.flatMap((key) => {
      const text = localStorage.getItem(key)
      localStorage.removeItem(key)
      return text === null ? [] : restoreSteps(parsed(text))
    })
  } catch {
    return []
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
