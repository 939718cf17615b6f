/**
 * The quick checks done last on this device, for the list of checks.
 *
 * `recents`             the newest first; undefined until they are read
 * `loadRecents()`       reads them, once
 * `noteRecent(recent)`  puts one on top
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { type Recent, readRecents, withRecent, writeRecent } from '../store/recents.ts'
import { StoreError } from '../store/trouble.ts'
import { enqueue } from './save-queue.ts'

const list = signal<readonly Recent[] | undefined>(undefined)
/** noted here before the list was read, the newest last: it may not be on disk yet */
const noted: Recent[] = []
export const recents: ReadonlySignal<readonly Recent[] | undefined> = list

export async function loadRecents(): Promise<void> {
  if (list.peek() !== undefined) return
  try {
    const stored = await readRecents()
    list.value = noted.reduce(withRecent, stored)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    list.value = noted.reduce<readonly Recent[]>(withRecent, [])
  }
}

export function noteRecent(recent: Recent): void {
  const shown = list.peek()
  if (shown === undefined) noted.push(recent)
  else list.value = withRecent(shown, recent)
  void enqueue(() => writeRecent(recent))
}
