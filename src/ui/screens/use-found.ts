/** What a search of the Log finds: complaints that hold every word, then those that hold words spelt nearly so. */
import { useEffect, useState } from 'preact/hooks'
import type { Complaint } from '../../state/complaints.ts'
import { withWords } from '../../state/log-search.ts'

type Found = typeof import('../../state/log-found.ts')

/** A word that is long enough to be misspelt. */
const LONG_WORD = /\p{L}{5}/u

export type LogHits = { readonly exact: readonly Complaint[]; readonly alike: readonly Complaint[] }

const NONE: readonly Complaint[] = []

export function useFound(log: readonly Complaint[], text: string): LogHits {
  const [near, setNear] = useState<Found>()
  const mayBeMisspelt = LONG_WORD.test(text)
  useEffect(() => {
    // without it words are still found as they are written
    if (mayBeMisspelt) import('../../state/log-found.ts').then(setNear, () => undefined)
  }, [mayBeMisspelt])
  useEffect(() => {
    if (mayBeMisspelt) void near?.gather(log)
  }, [near, log, mayBeMisspelt])
  const alike = near !== undefined && mayBeMisspelt ? near.nearlyIn(log, text) : NONE
  return { exact: withWords(log, text), alike }
}
