/** Which engines a run is for: all three, or those named by `--engines` of the test command. */
import type { EngineName } from './engine.ts'

const ALL: readonly EngineName[] = ['chromium', 'firefox', 'webkit']

export function wantedEngines(): readonly EngineName[] {
  const named = process.env['STILLPIN_ENGINES']
  if (named === undefined || named === '') return ALL
  return ALL.filter((name) => named.split(',').includes(name))
}
