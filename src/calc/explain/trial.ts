/** A trial as it was typed, step by step in words. */
import type { Trial } from '../types.ts'

const cut = (text: string): readonly string[] => text.split(';').map((entry) => entry.trim())

/** "1n: noise gone, signal good, repeated: agreed" for each step; what was not noted is left out. */
export function trialSteps({
  steps,
  places,
  noise,
  signal,
  repeats,
  times,
}: Omit<Trial, 'id' | 'at' | 'removed'>): readonly string[] {
  const [where, heard, seen, again, when] = [places, noise, signal, repeats, times].map(cut)
  return cut(steps).flatMap((part, row) => {
    if (part === '') return []
    const said = (words: string, entry: string | undefined) =>
      entry === undefined || entry === '' ? [] : [`${words}${entry}`]
    const noted = [
      ...said('', where?.[row]),
      ...said('noise ', heard?.[row]),
      ...said('signal ', seen?.[row]),
      ...said('repeated: ', again?.[row]),
      ...said('at ', when?.[row]),
    ]
    return [noted.length === 0 ? part : `${part}: ${noted.join(', ')}`]
  })
}
