/** Several lines struck at one moment, their filters and suppressors on one plate, the plate on one bond. Plain numbers. */
import type { ShapeSpec } from '../../../../reference/waveforms.ts'
import type { SurgeCircuit } from '../../../surge/circuit.ts'
import type { Ring } from '../../../surge/shape.ts'

/** So many lines alike; `group`: they share a suppressor through steering and have none of their own. */
export type StruckLine = { readonly circuit: SurgeCircuit; readonly count: number; readonly group?: number }

/** One suppressor behind steering diodes. */
export type SharedPart = {
  readonly breakdownV: number
  readonly dynamicOhm: number
  readonly capacitanceF: number
  /** both signs of every line are steered into it; without a bridge the other sign goes to the plate */
  readonly isBridge: boolean
}

export type Struck = {
  readonly spec: ShapeSpec
  readonly ring?: Ring
  /** from the plate to the reference of source and load; both 0 = none */
  readonly bondOhm: number
  readonly bondH: number
  readonly lines: readonly StruckLine[]
  readonly groups: readonly SharedPart[]
}

/** Magnitudes at their peaks, V and A; the lines in their order. */
export type LineStruck = {
  /** against the reference of the circuit */
  readonly connectorV: number
  readonly loadV: number
  /** across the junction; 0 without a suppressor of its own */
  readonly clampV: number
  readonly clampA: number
  readonly energyJ: number
  /** highest on any capacitor of the filter, against the plate; 0 without one */
  readonly capacitorV: number
  /** power of the suppressor over time; empty without one */
  readonly watts: Float64Array
}

export type GroupStruck = {
  /** across the part itself */
  readonly clampV: number
  readonly clampA: number
  readonly energyJ: number
  readonly watts: Float64Array
}

export type StruckFigures = {
  readonly lines: readonly LineStruck[]
  readonly groups: readonly GroupStruck[]
  /** across the bond, and when */
  readonly bounceV: number
  readonly bounceSec: number
  readonly bondA: number
  /** times of the powers */
  readonly sec: Float64Array
  /** followed to its end */
  readonly isWhole: boolean
}
