/** Suppressors by generic class: ratios that hold across a family, power classes and stand-off steps. No part numbers. */
import type { SourceId } from './sources.ts'
import type { Cited } from './standing.ts'

type Figure<T> = { readonly value: T; readonly source: Cited<SourceId> }
const figure = <T>(value: T, id: SourceId, clause: string, standing: Cited['standing'] = 'read'): Figure<T> => ({
  value,
  source: { id, clause, standing },
})

/** Least breakdown over stand-off at 25 °C: 31.1 V for 28 V. */
export const LEAST_BREAKDOWN_RATIO = figure(1.11, 'T23', '31.1 V at a stand-off of 28 V')

/** Most breakdown over least, 5 % parts. */
export const MOST_BREAKDOWN_RATIO = figure(1.11, 'T27', 'breakdown spread of 5 % parts')

/** Clamp at the rated 10/1000 µs current over the most breakdown: 45.4 V over 34.4 V. */
export const CLAMP_RATIO = figure(45.4 / 34.4, 'T23', '45.4 V at 33.1 A, breakdown at most 34.4 V')

/** Temperature coefficient of breakdown, per °C: one for low voltages, one from 28 V up. */
export const TEMPERATURE_COEFFICIENT = {
  low: figure(4e-4, 'T22', '6 V part'),
  high: figure(9.6e-4, 'T21', '28 V and above, weak source'),
  /** below this breakdown the low figure is nearer */
  lowBelowV: 12,
} as const

/** Coldest a connector is taken to be. */
export const COLD_SOAK_C = -55

/** Law used where a unidirectional part conducts forward. */
export const FORWARD = { dropV: 1, ohm: 0.02 } as const

/** From here on a unidirectional part conducts forward when hot: 0.6 V at 25 °C, 2 mV less for each degree. */
export const FORWARD_STARTS = figure(0.4, 'textbook', 'silicon junction at 125 °C', 'memory')

/** Least capacitance of the node between a part and its lead: no wire has less. */
export const LEAST_NODE_F = 1e-12

/** Junction capacitance in service against the 0 V figure: under bias it falls, when it swings through zero it does not. */
export const CAPACITANCE_SHARE = { least: 0.3, most: 1, source: { id: 'textbook', standing: 'memory' } } as const

/** What a suppressor is: how it wears, how it fails, and whether it lets go again by itself. */
export const SUPPRESSOR_TYPES = {
  avalanche: { label: 'avalanche diode', wears: false, latches: false },
  varistor: { label: 'varistor', wears: true, latches: false },
  crowbar: { label: 'crowbar (thyristor or gas tube)', wears: false, latches: true },
} as const
export type SuppressorType = keyof typeof SUPPRESSOR_TYPES

/** Share of the single-pulse rating a varistor keeps for n pulses: n^−0.3; ten pulses a half, a thousand an eighth. */
export const VARISTOR_WEAR = figure(0.3, 'practice', 'slope of usual pulse-life curves', 'practice')

/** Volts across a crowbar that has fired. */
export const CROWBAR_ON = figure(2, 'practice', 'thyristor type; a gas tube 10 to 20 V', 'practice')

/** Leakage of the blocked part, as a conductance in S. */
export const LEAKAGE_SIE = 1e-7

/** Capacitance under voltage: C0/(1 + V/0.7)^0.5. */
export const JUNCTION = { builtInV: 0.7, power: 0.5, source: { id: 'textbook', standing: 'memory' } } as const

/** Usual 10/1000 µs peak-pulse-power classes, in W. */
export const PULSE_POWER_CLASSES_W: readonly number[] = [400, 600, 1500, 3000, 5000, 15000, 30000]

/** Usual stand-off steps, in V. */
export const STAND_OFF_STEPS_V: readonly number[] = [
  5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 20, 22, 24, 26, 28, 30, 33, 36, 40, 43, 45, 48, 51,
  54, 58, 60, 64, 70, 75, 78, 85, 90, 100, 110, 120, 130, 150, 160, 170, 180, 200, 220, 250, 300, 350, 400, 440,
]

/**
 * A steering rectifier lets a steep front pass some volts higher until it conducts: added for each drop where the front
 * is shorter than `belowSec`.
 */
export const FORWARD_RECOVERY = figure({ volts: 5, belowSec: 1e-6 }, 'practice', 'fast rectifiers', 'practice')

/** Lines that share one suppressor have highest volts within this ratio of each other. */
export const SIMILAR_VOLTS = figure(1.5, 'practice', 'one stand-off for all', 'practice')
