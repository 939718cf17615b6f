/** The theme in the store. Apart from theme.ts, which paints the first screen before the store is fetched. */
import { readTheme, type ThemeChoice, writeTheme } from '../store/meta.ts'
import { StoreError } from '../store/trouble.ts'
import { enqueue } from './save-queue.ts'

/** The choice that is stored; undefined where the storage does not answer. */
export async function storedTheme(): Promise<ThemeChoice | undefined> {
  try {
    return await readTheme()
  } catch (error) {
    if (error instanceof StoreError) return undefined
    throw error
  }
}

/** Writes a choice behind whatever is being written. */
export function keepTheme(choice: ThemeChoice): void {
  void enqueue(() => writeTheme(choice), 'theme')
}
