/**
 * Nothing left on this device.
 *
 * `eraseEverything()`   the database and the small texts; from then on this window writes nothing any more
 */
import { keepSmallText, smallNames } from '../store/browser-storage.ts'
import { eraseStore } from '../store/erase-store.ts'
import { tell } from './other-windows.ts'
import { stopSaving } from './save-queue.ts'

/** Erases what this app has stored, and tells the other windows to write nothing of it again. Fails with a `StoreError`. */
export async function eraseEverything(): Promise<void> {
  stopSaving()
  tell({ is: 'erased' })
  await eraseStore()
  for (const name of smallNames()) keepSmallText(name, undefined)
}
