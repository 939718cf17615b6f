/** The checks that provide no facts and are no surge. Adding one here is all the screens need. */
import { filterCheck } from './checks/filter/check.ts'
import { harmonicsCheck } from './checks/harmonics/check.ts'
import { loadingCheck } from './checks/loading/check.ts'
import { pairCheck } from './checks/pair/check.ts'
import { powerCheck } from './checks/power/check.ts'
import { resonanceCheck } from './checks/resonance/check.ts'
import { toneCheck } from './checks/tone/check.ts'
import type { Check } from './types.ts'

export const PLAIN_CHECKS: readonly Check[] = [
  filterCheck,
  loadingCheck,
  pairCheck,
  powerCheck,
  toneCheck,
  harmonicsCheck,
  resonanceCheck,
]

/** The check with that id, if it is one of these. */
export const plainCheckById = (id: string): Check | undefined => PLAIN_CHECKS.find((check) => check.id === id)
