/** What a trial leaves of the capacitance of a leg, as bounds of its own. */
import { TRIAL_NOTED } from '../../trial/note.ts'
import type { Zones } from '../../trial/zones.ts'
import type { Bound } from '../../types.ts'

export const NOT_CLEARED = 'trial-not-cleared'
export const DEGRADED = 'trial-degraded'
export const GOOD = 'trial-good'
/** what the readings of a trial say is needed, and up to where they say anything */
export const READ = 'trial-read'
export const READ_UP_TO = 'trial-read-up-to'

const TRIED = { by: { is: 'trial', trial: TRIAL_NOTED }, per: 'leg' } as const

/** What did not clear, as a least of one capacitor alone. Farads per leg. */
export const notClearedBound = (farads: number): Bound => ({
  ...TRIED,
  id: NOT_CLEARED,
  side: 'least',
  nature: 'need',
  farads,
  topology: 'C',
})

const MOST = { ...TRIED, side: 'most', nature: 'works' } as const

/** What degraded, as a most of whatever capacitance: too much, and nothing of what lies below it. Farads per leg. */
export const degradedBound = (farads: number): Bound => ({
  ...MOST,
  id: DEGRADED,
  farads,
  topology: 'any',
  isTooMuch: true,
})

/** What did no harm, as a most of one capacitor alone. Farads per leg. */
export const goodBound = (farads: number): Bound => ({ ...MOST, id: GOOD, farads, topology: 'C' })

/** Up to where the readings say anything of a capacitor alone, as a most in service. Farads of one capacitor as marked. */
export const readUpToBound = (farads: number): Bound => ({
  ...TRIED,
  id: READ_UP_TO,
  side: 'most',
  nature: 'need',
  per: 'capacitor',
  farads,
  topology: 'C',
})

export function boundsOfTrial({ excludedBelowF, excludedFromF }: Zones): readonly Bound[] {
  return [
    ...(excludedBelowF > 0 ? [notClearedBound(excludedBelowF)] : []),
    ...(Number.isFinite(excludedFromF) ? [degradedBound(excludedFromF)] : []),
  ]
}
