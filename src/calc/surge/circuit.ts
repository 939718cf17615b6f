/** The circuit a surge meets, from the generator to the load. SI units; absent parts are 0. */
import type { Topology } from '../terms.ts'

export type SurgeSource = {
  /** `current` with a finite `ohm` is the same network as `voltage` with peak·ohm */
  readonly form: 'voltage' | 'current'
  /** open-circuit volts or short-circuit amperes at the peak; negative for the other polarity */
  readonly peak: number
  /** in series (voltage) or across (current); Infinity: an ideal current source */
  readonly ohm: number
}

export type Suppressor = {
  readonly breakdownV: number
  readonly dynamicOhm: number
  readonly bidirectional: boolean
  readonly capacitanceF: number
  readonly leadH: number
}

export type FittedFilter = {
  readonly topology: Topology | 'none'
  /** connector side of a Pi; the only capacitor of the others */
  readonly capacitanceF: number
  /** load side of a Pi */
  readonly capacitance2F: number
  readonly inductanceH: number
  /** load side of a T */
  readonly inductance2H: number
  readonly dcrOhm: number
}

export const NO_FILTER: FittedFilter = {
  topology: 'none',
  capacitanceF: 0,
  capacitance2F: 0,
  inductanceH: 0,
  inductance2H: 0,
  dcrOhm: 0,
}

export type SurgeCircuit = {
  readonly source: SurgeSource
  readonly lineOhm: number
  readonly lineH: number
  /** capacitor in series with the generator; absent = a direct connection */
  readonly couplingF?: number
  readonly filter: FittedFilter
  readonly suppressor?: Suppressor
  readonly placement: 'connector' | 'behind'
  readonly loadOhm: number
  readonly loadF: number
  /** volts of the load before the pulse, held by the line itself; absent = 0 */
  readonly restV?: number
}
