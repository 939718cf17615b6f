/**
 * A resistor and a capacitor in series across the capacitor of a ringing filter: Cd at least 4·C, R = √(L/C). The resistor
 * then meets the resonance of L with C, and Cd keeps it off the slow signal. From memory (Middlebrook); the resonance is
 * proved against a circuit simulator in the tests.
 */

/** Damping capacitor over the capacitor it damps. From memory. */
export const DAMPING_RATIO = 4

/** What is wanted for L in H and C in F, both above 0. */
export const dampingFor = ({ inductanceH, capacitanceF }: { inductanceH: number; capacitanceF: number }) => ({
  ohm: Math.sqrt(inductanceH / capacitanceF),
  farads: DAMPING_RATIO * capacitanceF,
})
