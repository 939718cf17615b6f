/** A bundle test on a cable nobody measured: what the wire between the coupling and the connector adds by its inductance. */
import { LONGEST_WIRE } from '../../reference/field-figures.ts'
import type { Progress } from '../types.ts'
import type { SurgeAsked } from './asked.ts'
import type { Axis } from './box.ts'
import { type WorstFigures, type WorstQuestion, worstOf } from './worst.ts'

/** From a hand's breadth of wire to 10 m, at 1 µH a metre. Common practice, from memory. */
const CABLE = { key: 'lineH', low: 0.1e-6, high: 10e-6, entered: 0.1e-6 } as const satisfies Axis

/** The most that is taken for a cable. Henries. */
export const LONGEST_WAY_H = CABLE.high

/** A choke aside, no cable of an aircraft has more. Henries. */
export const NO_CABLE_H = LONGEST_WIRE.henries

/**
 * The worst over the box of the parts and over the inductance of some metres of cable, which can ring with a capacitor at the
 * connector. What it finds refutes a yes, and is no reason for a no. undefined: the inductance was entered, the pulse is
 * injected at the pin, or no limit was entered that it could pass.
 */
export function* longWayOf(asked: SurgeAsked, q: WorstQuestion): Generator<Progress, WorstFigures | undefined> {
  const { setup, limits } = q
  const isJudged = limits.load !== undefined || limits.capacitor !== undefined || setup.kind?.transformer !== undefined
  if (setup.pulse.bundle === undefined || asked.lineH !== undefined || !isJudged) return undefined
  // a rating is held against the pulse as it is injected
  return yield* worstOf({ ...q, axes: [...q.axes, CABLE], rating: undefined })
}
