/** What a yes of the window rests on besides its bounds: that a trial shows it, and that no resonance carries it. */
import type { Intersection, Reason } from '../../bounds/intersect.ts'
import type { Surroundings } from '../../bounds/surroundings.ts'
import type { Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import type { LineReason } from './row.ts'
import { sharesOf, type WindowSetup } from './setup.ts'
import { isShown } from './tried.ts'

/**
 * The same with no inductance of lead and bond: what is entered of them is what they are at most, and a capacitor that
 * meets its need by resonance with them loses it again in a better bond. Undefined where there is none.
 */
export function withoutInductance(placed: readonly Surroundings[]): readonly Surroundings[] | undefined {
  if (placed.every(({ eslH, bondH }) => eslH === 0 && bondH === 0)) return undefined
  return placed.map((around) => ({ ...around, eslH: 0, bondH: 0 }))
}

/** The reason of a value that meets its need by that resonance alone. */
export const BY_RESONANCE = 'by-resonance' as const

type Question = {
  readonly topology: Topology
  readonly setup: WindowSetup
  readonly admits: (markedF: number) => Verdict
  /** whether the need is met without the inductance of lead and bond too */
  readonly isHeldClean: (markedF: number) => boolean
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
  { topology, setup, admits, isHeldClean, isUncomputed }: Question,
): { readonly verdict: Verdict; readonly reasons: readonly (Reason | LineReason)[] } {
  const marked = found.proposal?.valueF
  const isClear = marked === undefined || isShown(setup.shown, topology, marked, sharesOf(setup))
  const isTried = topology === 'C' && setup.shown !== undefined && isClear
  const isOpen = isUncomputed && !isTried
  const verdict = isOpen ? worse(found.verdict, 'unknown') : found.verdict
  const isClean = marked === undefined || isHeldClean(marked)
  if (marked === undefined || (isClear && isClean)) return { verdict, reasons: found.reasons }
  const others = admits(marked) === 'ok' ? found.reasons.filter((reason) => reason !== 'signal') : found.reasons
  return {
    verdict,
    reasons: [...(isClear ? [] : ['not-shown' as const]), ...(isClean ? [] : [BY_RESONANCE]), ...others],
  }
}
