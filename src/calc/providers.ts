/**
 * The checks whose outputs provide facts of a Line, in the order they are listed: all that deciding a fact may have to run,
 * so that a page of one check carries no other.
 */
import { wordlessLoop } from './checks/loop/wordless.ts'
import { wordlessNeed } from './checks/need/wordless.ts'
import { wordlessTrace } from './checks/trace/wordless.ts'
import { wordlessTrial } from './checks/trial/wordless.ts'
import { wordlessWindow } from './checks/window/wordless.ts'
import type { WordlessCheck } from './types.ts'

export const PROVIDERS: readonly WordlessCheck[] = [
  wordlessWindow,
  wordlessNeed,
  wordlessLoop,
  wordlessTrial,
  wordlessTrace,
]

/** The check with that id, if it provides facts. */
export const providerById = (id: string): WordlessCheck | undefined => PROVIDERS.find((check) => check.id === id)
