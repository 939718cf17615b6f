/**
 * Two circuits that show what decides about a suppressor, worked out once: a lightly loaded filter behind or ahead of it,
 * and its lead. Each figure comes of a circuit simulator and of a second solution of the same equations, to 0.02 %.
 */
import { DERIVED } from './line-kinds/cite.ts'

/** Waveform 4 into a coil and a capacitor of so much, lightly loaded: the clamp ahead of the filter, and behind it. */
export const RINGING_CASE = {
  openCircuitV: 300,
  sourceOhm: 5,
  inductanceH: 10e-6,
  capacitanceF: 100e-9,
  loadOhm: 10e3,
  ahead: { clampV: 51.941, loadV: 87.865 },
  behind: { loadV: 50.618, capacitorV: 167.59 },
  basis: DERIVED,
} as const

/** A hand that discharges 8 kV into a suppressor with no lead, and with one. */
export const LEAD_CASE = { leadH: 5e-9, withoutV: 49.309, withV: 207.89, basis: DERIVED } as const
