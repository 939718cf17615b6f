/** What is said of a common-mode choke wherever one is counted. */
import type { Finding } from '../types.ts'

/** A core around one wire: what it is then, and what would be right. */
export const ONE_WIRE: Finding = {
  verdict: 'unknown',
  sentence:
    'Around one wire it is no common-mode choke but an inductor: the whole current of the wire magnetises the core, and what is left of its inductance is not known. Put every wire of the circuit through it, the return included, or enter it as an inductor with its least value at that current.',
}

/** How a choke around every wire was counted; `legShown` = what each leg meets of it. */
export const countedChoke = (mode: 'common' | 'differential', legShown: string): Finding => ({
  verdict: 'ok',
  sentence:
    mode === 'common'
      ? `The choke puts ${legShown} into each leg. That holds with every wire of the circuit through the core, the return included: current that comes back another way magnetises it.`
      : `In differential mode only the leakage of the choke counts: ${legShown} in each leg.`,
})

/** The leakage that was taken, where none was entered. */
export const usualLeakage = (shown: string): Finding => ({
  verdict: 'ok',
  sentence: `No leakage was entered: 0.5 to 2 % of the inductance is taken (from memory), here ${shown}.`,
})

export const TOO_MUCH_LEAKAGE =
  'More leakage than twice the inductance: such windings would work against each other. The leakage of a choke is a few percent of its inductance.'

export const UNLIKE_WINDINGS =
  'Windings so unequal have more leakage than this. Enter a smaller mismatch, or the leakage that was measured.'
