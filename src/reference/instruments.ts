/** Figures of the instruments a technician carries: what they add to the circuit and how far they see. Common practice. */
import { DERIVED, PRACTICE } from './line-kinds/cite.ts'

/** A passive probe that divides by ten. */
export const SCOPE_PROBE = {
  divides: 10,
  inputOhm: 10e6,
  inputF: 12e-12,
  /** of the usual ground lead with its clip */
  groundLeadM: 0.15,
  /** spring at the tip instead of the lead */
  springM: 0.01,
  basis: PRACTICE,
} as const

/** Inductance of a wire in free air, per metre. */
export const WIRE_H_PER_M = { henriesPerM: 1e-6, basis: PRACTICE } as const

/** Bandwidth times rise time, 10 to 90 %, of one pole. */
export const RISE_BANDWIDTH = {
  product: 0.35,
  basis: DERIVED,
} as const

/** Measuring current of a bond tester: less does not break the film that it meets. */
export const BOND_TESTER = { leastA: 1, leadsOhm: 0.1, basis: PRACTICE } as const

/** A hand-held meter: leads, and how far its alternating range sees. */
export const HAND_METER = {
  leadsOhm: [0.1, 0.3],
  alternatingToHz: [400, 1000],
  inputOhm: 10e6,
  basis: PRACTICE,
} as const

/** A snap-on ferrite around one cable: at 100 MHz, one pass. */
export const CLAMP_FERRITE = { ohm: [50, 150], atHz: 100e6, usefulFromHz: 10e6, basis: PRACTICE } as const

/** A clip-on current probe with a transfer impedance of one ohm reads volts as amperes. */
export const CURRENT_PROBE = { transferOhm: [1, 5], basis: PRACTICE } as const

/** Audio of a telephone app: what its microphone and its filters let through. */
export const PHONE_AUDIO = { fromHz: 100, toHz: 16e3, basis: PRACTICE } as const

/** A receiver carried by hand. */
export const HANDHELD = { walkM: [1, 3], basis: PRACTICE } as const
