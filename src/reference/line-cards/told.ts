/** Short forms for what repeats in the tables of the line cards. */
import { PRACTICE } from '../line-kinds/cite.ts'
import { POWER_KINDS } from '../line-kinds/power.ts'
import type { Citation } from '../line-kinds/types.ts'
import type { MeterOhms, NotKnown, Told } from './types.ts'

/** Usual volts of the ship's direct supply, which many lines are pulled up to or switched from. */
export const SHIP_V = POWER_KINDS.find(({ id }) => id === 'power-28-vdc')?.supply?.nominalRmsV ?? 0

export const told = (text: string, source: Citation = PRACTICE): Told => ({ text, source })

export const notKnown = (what: string, measure: string): NotKnown => ({ is: 'not-known', what, measure })

/** A meter reading between two values, or from one up, or up to one. */
export const ohms = (
  at: string,
  [leastOhm, mostOhm]: readonly [number | undefined, number | undefined],
  source: Citation = PRACTICE,
): MeterOhms => ({
  is: 'span',
  at,
  ...(leastOhm === undefined ? {} : { leastOhm }),
  ...(mostOhm === undefined ? {} : { mostOhm }),
  source,
})

export const ends = (at: string, count: 1 | 2, source: Citation): MeterOhms => ({
  is: 'terminations',
  at,
  ends: count,
  source,
})

export const signalOhm = (at: string): MeterOhms => ({ is: 'signal-ohm', at })

/** Insulation of a wire that touches nothing. */
const OPEN_OHM = 1e6
export const open = (at: string): MeterOhms => ohms(at, [OPEN_OHM, undefined])
