/** One check by its id, with the words of its answer and without what only others compute with. */
import type { Check, CheckId } from './types.ts'

/** Those with a file of their own: the checks that provide facts, and the one that computes with more than all others together. */
const OWN = {
  window: async () => (await import('./checks/window/check.ts')).windowCheck,
  surge: async () => (await import('./checks/surge/check.ts')).surgeCheck,
  need: async () => (await import('./checks/need/check.ts')).needCheck,
  loop: async () => (await import('./checks/loop/check.ts')).loopCheck,
  trial: async () => (await import('./checks/trial/check.ts')).trialCheck,
  trace: async () => (await import('./checks/trace/check.ts')).traceCheck,
} as const satisfies Readonly<Partial<Record<CheckId, () => Promise<Check>>>>

const hasOwn = (id: string): id is keyof typeof OWN => Object.hasOwn(OWN, id)

/** The check, fetched where it is not here yet; undefined where there is none of that id. */
export async function oneCheck(id: string): Promise<Check | undefined> {
  return hasOwn(id) ? OWN[id]() : (await import('./plain-checks.ts')).plainCheckById(id)
}
