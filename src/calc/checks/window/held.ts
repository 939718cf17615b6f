/** What a value, or what does it without one, earns over the whole box; why it is no better than with care. */
import { type Held, heldAtGlance, heldInBox, isShortInBox } from '../../bounds/box.ts'
import type { Surroundings } from '../../bounds/surroundings.ts'
import type { Verdict } from '../../types.ts'
import type { RowNeed } from './row-need.ts'
import { sharesOf, type WindowSetup } from './setup.ts'

/** As reasons of a row: what was entered of lead and bond carries it, and less would lose it; or it is searched alone. */
export type HeldReason = Extract<Held, 'carried' | 'unproved'>

export const HELD_VERDICT: Readonly<Record<Held, Verdict>> = {
  kept: 'ok',
  carried: 'marginal',
  unproved: 'marginal',
  short: 'fails',
}

export const isHeldReason = (reason: string): reason is HeldReason => reason === 'carried' || reason === 'unproved'

export const heldReasons = (held: Held): readonly HeldReason[] => (isHeldReason(held) ? [held] : [])

/** A look at one of many marks. */
export const glanceBy = (placed: readonly Surroundings[], setup: WindowSetup, markedF: number): Held =>
  heldAtGlance(placed, sharesOf(setup), markedF)

/** What a mark earns against every need, wherever what stands at the ends may be. */
export const heldBy = (placed: readonly Surroundings[], setup: WindowSetup, markedF: number): Held =>
  heldInBox(placed, sharesOf(setup), markedF)

/** The same as far as it can be worse than with care: what is not short is not told apart. */
export const heldOrShort = (placed: readonly Surroundings[], setup: WindowSetup, markedF: number): Held =>
  isShortInBox(placed, sharesOf(setup), markedF) ? 'short' : 'unproved'

/** The same of what does it with no capacitor of its own: nothing at all, or the inductor. */
export function heldWithout(need: RowNeed, placed: readonly Surroundings[], setup: WindowSetup): Held {
  if (need.is === 'none-needed') return heldBy(placed, setup, 0)
  if (need.is !== 'inductor-only') return 'kept'
  const { least, most } = setup.inductanceH
  return heldInBox(placed, { least: 1, most: most / least }, least)
}
