/** Counts the files brought in, here or in another window: what was read before may not be all that is there now. */
import { onNews } from './other-windows.ts'

let count = 0
export const broughtIn = (): number => count

export function noteBroughtIn(): void {
  count++
}

onNews((news) => {
  if (news.is === 'log') noteBroughtIn()
})
