/**
 * The checks whose outputs provide facts of a Line, in the order they are listed: all that deciding a fact may have to run,
 * so that a page of one check carries no other.
 */
import { loopCheck } from './checks/loop/check.ts'
import { needCheck } from './checks/need/check.ts'
import { traceCheck } from './checks/trace/check.ts'
import { trialCheck } from './checks/trial/check.ts'
import { windowCheck } from './checks/window/check.ts'
import type { Check } from './types.ts'

export const PROVIDERS: readonly Check[] = [windowCheck, needCheck, loopCheck, trialCheck, traceCheck]

/** The check with that id, if it provides facts. */
export const providerById = (id: string): Check | undefined => PROVIDERS.find((check) => check.id === id)
