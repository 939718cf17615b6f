/** Every check, in the order they are listed. Adding one here is all the screens need. */
import { filterCheck } from './checks/filter/check.ts'
import { harmonicsCheck } from './checks/harmonics/check.ts'
import { loadingCheck } from './checks/loading/check.ts'
import { loopCheck } from './checks/loop/check.ts'
import { needCheck } from './checks/need/check.ts'
import { pairCheck } from './checks/pair/check.ts'
import { powerCheck } from './checks/power/check.ts'
import { resonanceCheck } from './checks/resonance/check.ts'
import { surgeCheck } from './checks/surge/check.ts'
import { toneCheck } from './checks/tone/check.ts'
import { traceCheck } from './checks/trace/check.ts'
import { trialCheck } from './checks/trial/check.ts'
import { windowCheck } from './checks/window/check.ts'
import type { Check, CheckId } from './types.ts'

export const CHECKS: readonly Check[] = [
  windowCheck,
  filterCheck,
  loadingCheck,
  needCheck,
  pairCheck,
  powerCheck,
  surgeCheck,
  loopCheck,
  trialCheck,
  traceCheck,
  toneCheck,
  harmonicsCheck,
  resonanceCheck,
]

/** The check with that id, if it is built. */
export function checkById(id: string): Check | undefined {
  return CHECKS.find((c) => c.id === (id as CheckId))
}
