/** Turns impedances of a pair into what one leg sees to chassis, so that one formula serves both modes. */
import type { NoiseLoad, NoiseSource } from '../network/circuit.ts'

export type NoiseMode = 'common' | 'differential'

/**
 * Share of the pair's impedance that one leg sees: 2 in common mode (both legs share the current),
 * 1/2 in differential mode (each leg carries half the voltage), 1 on a single line.
 * Source: two equal legs in parallel or in series (derived).
 */
export function legFactor(isPair: boolean, mode: NoiseMode): number {
  if (!isPair) return 1
  return mode === 'common' ? 2 : 0.5
}

/** Ohms and henries scale with the factor, farads with its inverse. */
export function sourcePerLeg(source: NoiseSource, factor: number): NoiseSource {
  return { ohm: source.ohm * factor, seriesH: source.seriesH * factor }
}

export function loadPerLeg(load: NoiseLoad, factor: number): NoiseLoad {
  return { ohm: load.ohm * factor, parallelF: load.parallelF / factor, parallelH: load.parallelH * factor }
}

/**
 * A line-to-line capacitor Cx counts as 2·Cx per leg for differential noise and not at all for common-mode noise.
 * Farads in, farads per leg out. Source: mid-point of the pair is at chassis potential in differential mode (derived).
 */
export function crossPerLegF(crossF: number, isPair: boolean, mode: NoiseMode): number {
  return isPair && mode === 'differential' ? 2 * crossF : 0
}

/**
 * Multiple of the bond, entered as the physical impedance between the filters' plate and the reference of the circuit,
 * that one leg sees: twice in common mode of a pair (both legs' currents flow in it), not at all in differential mode
 * (they cancel), once on a single line. Source: derived.
 */
export function bondFactor(isPair: boolean, mode: NoiseMode): number {
  if (!isPair) return 1
  return mode === 'common' ? 2 : 0
}
