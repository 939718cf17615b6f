/** Every check, in the order they are listed. Adding one here is all the screens need. */
import { filterCheck } from './checks/filter.ts'
import { loadingCheck } from './checks/loading.ts'
import { needCheck } from './checks/need.ts'
import { pairCheck } from './checks/pair.ts'
import { powerCheck } from './checks/power.ts'
import { surgeCheck } from './checks/surge.ts'
import { windowCheck } from './checks/window.ts'
import type { Check, CheckId } from './types.ts'

export const CHECKS: readonly Check[] = [
  windowCheck,
  filterCheck,
  loadingCheck,
  needCheck,
  pairCheck,
  powerCheck,
  surgeCheck,
]

/** The check with that id, if it is built. */
export function checkById(id: string): Check | undefined {
  return CHECKS.find((c) => c.id === (id as CheckId))
}
