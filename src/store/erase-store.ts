/** Nothing left of the database. Apart from the rest, since it is seldom wanted. */
import { databases } from './browser-storage.ts'
import { DB_NAME, letGo } from './db.ts'
import { asStoreError, StoreError } from './trouble.ts'

/** Another window that has not let go of the database after this long will not. */
const HELD_AFTER_MS = 5000

/** Removes the whole database; other windows let go of it when asked, and this one opens none again. Fails with a `StoreError`. */
export async function eraseStore(): Promise<void> {
  letGo(true)
  const all = databases()
  if (all === undefined) return
  let timer: ReturnType<typeof setTimeout> | undefined
  try {
    await new Promise<void>((done, failed) => {
      timer = setTimeout(() => failed(new StoreError('blocked')), HELD_AFTER_MS)
      const asked = all.deleteDatabase(DB_NAME)
      asked.onsuccess = () => done()
      asked.onerror = () => failed(asked.error)
    })
  } catch (error) {
    letGo(false)
    throw asStoreError(error)
  } finally {
    clearTimeout(timer)
  }
}
