/** Keeps the words of the Log gathered while somebody searches it. Fetched at the first word that may be misspelt. */
import { signal } from '@preact/signals'
import type { Complaint } from '../store/complaint.ts'
import { inSlices } from './in-slices.ts'
import { gatherWords, nearlyWithWords } from './log-alike.ts'

/** How often words were gathered: what was found before may be more now. */
const gatherings = signal(0)
let running: AbortController | undefined

/** Gathers what is new in the Log, in slices; an earlier run is given up. */
export async function gather(log: readonly Complaint[]): Promise<void> {
  running?.abort()
  const run = new AbortController()
  running = run
  try {
    await inSlices(gatherWords(log), () => {}, run.signal)
    gatherings.value += 1
  } catch (error) {
    if (!run.signal.aborted) throw error
  }
}

/** Complaints with words spelt nearly as typed. Whoever draws it draws again when more words are known. */
export function nearlyIn(log: readonly Complaint[], text: string): readonly Complaint[] {
  return gatherings.value === 0 ? [] : nearlyWithWords(log, text)
}
