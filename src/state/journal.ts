/**
 * What is typed but not yet on disk, copied at once into storage that is written synchronously: a window that is closed
 * or reloaded in the few milliseconds a database write takes loses nothing. Empty whenever nothing is waiting.
 *
 * `noteUnsaved(steps)`  replaces this window's copy
 * `takeUnsaved(take)`   hands over what earlier windows left behind, through the gate; then their copies are removed
 */
import { keepSmallText, smallNames, smallText } from '../store/browser-storage.ts'
import type { Late } from '../store/edits.ts'
import type { Step } from '../store/steps.ts'

const PREFIX = 'unsaved:'
/** Each window keeps its own copy: two of them may be writing. */
const mine = `${PREFIX}${Math.random().toString(36).slice(2)}`

export function noteUnsaved(steps: readonly Step[]): void {
  // Without this storage, or with a full one, the database alone has to do.
  keepSmallText(mine, steps.length === 0 ? undefined : JSON.stringify(steps))
}

/** Resolves at once where nothing was left; what cannot be read yet stays where it is. */
export async function takeUnsaved(take: (steps: readonly Step[], late: Late) => void): Promise<void> {
  const names = smallNames().filter((name) => name.startsWith(PREFIX) && name !== mine)
  if (names.length === 0) return
  const [{ restoreSteps }, { beside }] = await Promise.all([
    import('../store/restore-steps.ts'),
    import('../store/beside.ts'),
  ])
  take(
    names.flatMap((name) => restoreSteps(parsed(smallText(name) ?? ''))),
    beside,
  )
  for (const name of names) keepSmallText(name, undefined)
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
