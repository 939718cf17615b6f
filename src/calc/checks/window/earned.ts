/** What a yes of the window rests on besides its bounds: that a trial shows it, and that no resonance carries it. */
import type { Intersection, Reason } from '../../bounds/intersect.ts'
import type { Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import type { Held, LineReason } from './row.ts'
import { sharesOf, type WindowSetup } from './setup.ts'
import { isShown } from './tried.ts'

/** The reason of a value that meets its need by that resonance alone. */
export const BY_RESONANCE = 'by-resonance' as const

type Question = {
  readonly topology: Topology
  readonly setup: WindowSetup
  readonly admits: (markedF: number) => Verdict
  readonly held: (markedF: number) => Held
  /** nothing to compute it with */
  readonly isUncomputed: boolean
}

/**
 * Where the part is only computed, or does it by resonance alone, that is the reason, unless the signal has one of its own.
 * With nothing to compute it with (ends not known, other frequencies than were read) no bound of a trial alone makes it a
 * yes.
 */
export function earned(
  found: Intersection,
  { topology, setup, admits, held, isUncomputed }: Question,
): { readonly verdict: Verdict; readonly reasons: readonly (Reason | LineReason)[] } {
  const marked = found.proposal?.valueF
  const isClear = marked === undefined || isShown(setup.shown, topology, marked, sharesOf(setup))
  const isTried = topology === 'C' && setup.shown !== undefined && isClear
  const isOpen = isUncomputed && !isTried
  const verdict = isOpen ? worse(found.verdict, 'unknown') : found.verdict
  const isClean = marked === undefined || held(marked) !== 'carried'
  if (marked === undefined || (isClear && isClean)) return { verdict, reasons: found.reasons }
  const others = admits(marked) === 'ok' ? found.reasons.filter((reason) => reason !== 'signal') : found.reasons
  return {
    verdict,
    reasons: [...(isClear ? [] : ['not-shown' as const]), ...(isClean ? [] : [BY_RESONANCE]), ...others],
  }
}
