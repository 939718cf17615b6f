/** Every check with the words of its answer, in the order they are listed. */
import { loopCheck } from './checks/loop/check.ts'
import { needCheck } from './checks/need/check.ts'
import { surgeCheck } from './checks/surge/check.ts'
import { traceCheck } from './checks/trace/check.ts'
import { trialCheck } from './checks/trial/check.ts'
import { windowCheck } from './checks/window/check.ts'
import { PLAIN_CHECKS } from './plain-checks.ts'
import type { Check, CheckId } from './types.ts'

/** How they are listed; one that is not named here comes last. */
const ORDER: readonly CheckId[] = [
  'window',
  'filter',
  'loading',
  'need',
  'pair',
  'power',
  'surge',
  'loop',
  'trial',
  'trace',
  'tone',
  'harmonics',
  'resonance',
]

const placeOf = ({ id }: Check): number => (ORDER.includes(id) ? ORDER.indexOf(id) : ORDER.length)

const ALL = [windowCheck, needCheck, surgeCheck, loopCheck, trialCheck, traceCheck, ...PLAIN_CHECKS] as const

export const CHECKS: readonly Check[] = [...ALL].sort((a, b) => placeOf(a) - placeOf(b))

/** The check with that id, if it is built. */
export const checkById = (id: string): Check | undefined => CHECKS.find((check) => check.id === id)
