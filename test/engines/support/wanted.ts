/** What a run is for: everything, or what is named by `--engines` of the test command. */
import type { EngineName } from './engine.ts'

const ALL: readonly EngineName[] = ['chromium', 'firefox', 'webkit']

/** Whether a program takes part in this run. */
export function isWanted(name: EngineName | 'nginx'): boolean {
  const named = process.env['STILLPIN_ENGINES']
  return named === undefined || named === '' || named.split(',').includes(name)
}

export const wantedEngines = (): readonly EngineName[] => ALL.filter(isWanted)
