import { writeOne } from '../../src/store/db.ts'
import { tidyLog } from '../../src/store/tidy.ts'

/** Tidies at this time of the clock, which the starts before this one agree with. */
export async function tidyAt(atMs: number): Promise<number> {
  await writeOne('meta', 'clocks', [atMs, atMs])
  return tidyLog(atMs)
}
