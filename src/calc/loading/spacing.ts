/** Lines loaded again and again along their length: loaded impedance, delay and the spacing loads need. */

/**
 * Impedance in Ω of a line with equal loads: Z0 / √(1 + C_L/(d·C')). Capacitance per metre of the bare line, farads of
 * one load, spacing in m. Valid while the spacing is short against the edge. Source: published backplane data.
 */
export const loadedImpedanceOhm = (line: LoadedLine): number => line.z0Ohm / loadingFactor(line)

/** Delay in s per metre of the loaded line: bare delay · √(1 + C_L/(d·C')). */
export const loadedDelaySecPerM = (line: LoadedLine & { delaySecPerM: number }): number =>
  line.delaySecPerM * loadingFactor(line)

/**
 * Least spacing in m between nodes for an impedance that falls to `ratio` of the bare one:
 * C_L / (C'·(1/ratio² − 1)). CAN practice 0.98·C' (ratio 0.711), RS-485 practice 5.25·C' (ratio 0.400). 0 < ratio < 1.
 */
export const leastSpacingM = (bus: { loadF: number; faradsPerM: number; ratio: number }): number =>
  bus.loadF / (bus.faradsPerM * (1 / bus.ratio ** 2 - 1))

export type LoadedLine = {
  readonly z0Ohm: number
  readonly faradsPerM: number
  readonly loadF: number
  readonly spacingM: number
}

const loadingFactor = ({ loadF, spacingM, faradsPerM }: LoadedLine): number =>
  Math.sqrt(1 + loadF / (spacingM * faradsPerM))
