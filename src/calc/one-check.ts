/** One check by its id, without what only others compute with. */
import { providerById } from './providers.ts'
import type { Check } from './types.ts'

/** The check, fetched where it is not here yet; undefined where there is none of that id. */
export async function oneCheck(id: string): Promise<Check | undefined> {
  const here = providerById(id)
  if (here !== undefined) return here
  // the one that computes with more than all others together
  if (id === 'surge') return (await import('./checks/surge/check.ts')).surgeCheck
  return (await import('./registry.ts')).checkById(id)
}
