/** Steady-state figures of a capacitor on a power line: current, energy, bleed, heat, test voltage. SI units; elementary circuit theory. */

/** A capacitor to chassis on a supply; wiring and bleed may be missing. */
export type PowerLine = {
  readonly workingRmsV: number
  /** 0 = DC */
  readonly supplyHz: number
  /** of each line to chassis */
  readonly capacitanceF: number
  readonly lineCount: number
  /** from line to line, or from line to return; 0 = none */
  readonly crossF: number
  readonly wiringOhm?: number | undefined
  readonly wiringH?: number | undefined
  readonly bleedOhm?: number | undefined
}

/** DC has no crest: at 0 Hz the working voltage itself, otherwise √2 times the rms (sine). */
export const crestV = ({ workingRmsV, supplyHz }: { workingRmsV: number; supplyHz: number }): number =>
  supplyHz === 0 ? workingRmsV : Math.SQRT2 * workingRmsV

/** Current in A rms through one capacitor: 2π·f·C·V; 0 at DC. */
export const lineCurrentRmsA = (line: { supplyHz: number; farads: number; workingRmsV: number }): number =>
  2 * Math.PI * line.supplyHz * line.farads * line.workingRmsV

/** Capacitance in F through which `limitA` (rms) flows: I / (2π·f·V). supplyHz, volts > 0. */
export const chassisFarads = (line: { supplyHz: number; workingRmsV: number }, limitA: number): number =>
  limitA / (2 * Math.PI * line.supplyHz * line.workingRmsV)

/**
 * Working volts across a line-to-line capacitor: √3 times those to chassis between two phases, which any two AC lines are
 * taken for; the same between line and return.
 */
export const acrossLinesV = (line: { workingRmsV: number; lineCount: number; supplyHz: number }): number =>
  line.supplyHz > 0 && line.lineCount >= 2 ? Math.sqrt(3) * line.workingRmsV : line.workingRmsV

/** Reactive power in var of one capacitor: V·I. */
export const reactiveVar = (line: { supplyHz: number; farads: number; workingRmsV: number }): number =>
  line.workingRmsV * lineCurrentRmsA(line)

/** Heat in W of one capacitor with a dissipation factor: V·I·DF. */
export const heatW = (line: {
  supplyHz: number
  farads: number
  workingRmsV: number
  dissipationFrac: number
}): number => reactiveVar(line) * line.dissipationFrac

/** Whether so many equal lines can be balanced three-phase sets. */
export const isThreePhase = (lineCount: number): boolean => lineCount >= 3 && lineCount % 3 === 0

/**
 * Net chassis current in A rms at the fundamental. Balanced sets of three phases cancel; any other count is taken to
 * add in full (conservative).
 */
export const residualCurrentRmsA = ({ lineA, lineCount }: { lineA: number; lineCount: number }): number =>
  isThreePhase(lineCount) ? 0 : lineA * lineCount

/** Net chassis current in A rms when one phase of balanced sets is lost: that phase's current is no longer cancelled. */
export const phaseLostCurrentRmsA = ({ lineA, lineCount }: { lineA: number; lineCount: number }): number =>
  (lineA * lineCount) / 3

/** Energy in J of one capacitor at the crest: ½·C·V². */
export const storedJ = ({ farads, crestV: volts }: { farads: number; crestV: number }): number =>
  0.5 * farads * volts ** 2

/** Time in s for a resistor to bring one capacitor from `fromV` to `toV`: R·C·ln(from/to); 0 when already there. */
export const bleedSec = (bleed: { ohm: number; farads: number; fromV: number; toV: number }): number =>
  bleed.fromV <= bleed.toV ? 0 : bleed.ohm * bleed.farads * Math.log(bleed.fromV / bleed.toV)

/** The level to which a capacitor is often required to bleed before it may be touched. */
export const TOUCH_V = 34
/** Share of the crest that counts as bled. */
export const BLED_SHARE = 0.01

/** Withstand test of MIL-PRF-28861D 4.6.3: 2.5 × the DC rating, 2.8 × the rms rating of an AC-only part. Volts. */
export const withstandV = ({ workingRmsV, supplyHz }: { workingRmsV: number; supplyHz: number }): number =>
  (supplyHz === 0 ? 2.5 : 2.8) * workingRmsV

/** Lowest peak voltage in V at which air can break down, at the worst product of gap and pressure. */
export const PASCHEN_MINIMUM_V = 327
