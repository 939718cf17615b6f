/** What a yes of the window rests on besides its bounds: a trial that shows it, a proof, and no resonance that carries it. */
import type { Held } from '../../bounds/box.ts'
import type { Intersection, Reason } from '../../bounds/intersect.ts'
import type { Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { HELD_VERDICT, heldReasons } from './held.ts'
import type { LineReason } from './row.ts'
import { sharesOf, type WindowSetup } from './setup.ts'
import { isShown } from './tried.ts'

type Question = {
  readonly topology: Topology
  readonly setup: WindowSetup
  readonly admits: (markedF: number) => Verdict
  /** what the proposal earns, or what does it without one */
  readonly held: Held
  /** nothing to compute it with */
  readonly isUncomputed: boolean
}

/**
 * Where the part is only computed, or does it by resonance or without a proof, that is the reason, unless the signal has one
 * of its own. With nothing to compute it with (ends not known, other frequencies than were read) no bound of a trial alone makes it a
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
  const why = heldReasons(held)
  if (isClear && why.length === 0) return { verdict, reasons: found.reasons }
  const others = admits(marked ?? 0) === 'ok' ? found.reasons.filter((reason) => reason !== 'signal') : found.reasons
  return {
    verdict: worse(verdict, HELD_VERDICT[held]),
    reasons: [...(isClear ? [] : ['not-shown' as const]), ...why, ...others],
  }
}
