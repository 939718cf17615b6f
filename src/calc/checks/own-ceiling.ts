/** What the fields of the user's own ceiling say, as the judgement of a signal takes it. */
import type { OwnCeiling } from '../loading/signal.ts'
import type { Given } from '../types.ts'
import type { ownCeilingInputs } from './signal-inputs.ts'

export function ownOf(given: Given<typeof ownCeilingInputs>): OwnCeiling {
  const { ownCeilingF: ceilingF, usefulHz, ownLossDb: mostLossDb, ownPhaseDeg: mostPhaseDeg } = given
  return { ceilingF, usefulHz, mostLossDb, mostPhaseDeg }
}
