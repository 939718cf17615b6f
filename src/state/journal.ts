/**
 * What is typed but not yet on disk, copied at once into storage that is written synchronously: a window that is closed
 * or reloaded in the few milliseconds a database write takes loses nothing. Empty whenever nothing is waiting.
 *
 * `noteUnsaved(steps)`  replaces this window's copy
 * `takeUnsaved(take)`   hands over what earlier windows left behind, through the gate; then their copies are removed
 */
import { keepSmallText, smallNames } from '../store/browser-storage.ts'
import { readKeys } from '../store/db.ts'
import type { Take } from '../store/restore-left.ts'
import type { Step } from '../store/steps.ts'

const PREFIX = 'unsaved:'
/** Texts from this length on are kept by long-text.ts, by what each key changes in them. */
export const LONG_LETTERS = 20_000
/** Under such names. */
export const TYPING = 'typing:'
/** Each window keeps its own copy: two of them may be writing. */
const mine = `${PREFIX}${Math.random().toString(36).slice(2)}`

export function noteUnsaved(steps: readonly Step[]): void {
  // Without this storage, or with a full one, the database alone has to do.
  keepSmallText(mine, steps.length === 0 ? undefined : JSON.stringify(steps))
}

/** What cannot be read yet stays where it is. `done`: called once these steps are written. */
export async function takeUnsaved(take: Take): Promise<void> {
  const names = [...smallNames(), ...(await readKeys('meta').catch(() => []))]
  if (!names.some((name) => name !== mine && isLeft(String(name)))) return
  const { takeLeft } = await import('../store/restore-left.ts')
  await takeLeft({ unsaved: PREFIX, typing: TYPING, mine, take })
}

const isLeft = (name: string): boolean => name.startsWith(PREFIX) || name.startsWith(TYPING)
