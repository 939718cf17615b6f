/** The least common-mode choke that meets a need with no capacitor beside it. */
import { leastMarkedH } from '../../bounds/least-marked.ts'
import { chokeSpanH } from '../../network/choke.ts'
import { placings } from './around.ts'
import type { WindowSetup } from './setup.ts'

/**
 * Henries of one winding, least as a sheet states it, from which every larger one meets every need; its winding resistance
 * and self-capacitance as entered, its leakage the same share of it. Undefined without a choke, in differential mode
 * (which sees its leakage alone), or where none does. Derived.
 */
export function leastChokeH(setup: WindowSetup): number | undefined {
  const { choke, around, mode } = setup
  if (choke === undefined || around === undefined || mode === 'differential') return undefined
  const { part } = choke.leg
  const span = chokeSpanH(choke.size, mode)
  const { windingH } = choke.size
  const shares = { least: span.least / windingH, most: span.most / windingH }
  const { choke: _, ...rest } = around
  const alone = {
    ...rest,
    topology: 'L',
    dcrOhm: part.dcrOhm,
    inductorParallelF: part.parallelF,
    inductorParallelOhm: part.parallelOhm,
  } as const
  let leastH = 0
  for (const placed of placings(alone, setup)) {
    const found = leastMarkedH({ ...placed, topology: 'L' }, shares)
    if (found.is === 'never') return undefined
    if (found.is === 'found') leastH = Math.max(leastH, found.marked)
  }
  return leastH
}
