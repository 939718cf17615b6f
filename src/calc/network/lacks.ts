/** Facts without which an inductor, or a bead in its place, cannot be counted. */

/** Why the inductance at the current of the line is not known. */
export type SaturationLack = 'line-current' | 'saturation-share' | 'beyond-saturation'

/** What is missing of a bead; or noise, or the signal, outside the frequencies it is known at. */
export type BeadLack = 'bead-frequencies' | 'bead-resistance' | 'bead-reactance' | 'bead-range' | 'bead-band'

export type ElementLack = SaturationLack | BeadLack
