import { watchFiles } from './files.ts'
import { watchKeys } from './keys.ts'

/** What is listened to as long as the app is open; fetched after the first screen stands. */
export function listen(): void {
  watchKeys()
  watchFiles()
}
