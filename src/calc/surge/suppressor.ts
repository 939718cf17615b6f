/** What a suppressor does: breakdown over spread and temperature, clamp law, capacitance, stacks. SI units. */
import {
  CLAMP_RATIO,
  COLD_SOAK_C,
  JUNCTION,
  LEAST_BREAKDOWN_RATIO,
  MOST_BREAKDOWN_RATIO,
  STAND_OFF_STEPS_V,
  TEMPERATURE_COEFFICIENT,
} from '../../reference/suppressors.ts'

export type Breakdown = { readonly leastV: number; readonly mostV: number }

/** Breakdown of a 5 % part at 25 °C from its stand-off: least 1.11·V, most 1.11 times that. */
export function breakdownOfClass(standoffV: number): Breakdown {
  const leastV = standoffV * LEAST_BREAKDOWN_RATIO.value
  return { leastV, mostV: leastV * MOST_BREAKDOWN_RATIO.value }
}

/** Temperature coefficient of breakdown in 1/°C: 4e-4 below 12 V, else 9.6e-4. */
export const temperatureCoefficient = (breakdownV: number): number =>
  breakdownV < TEMPERATURE_COEFFICIENT.lowBelowV
    ? TEMPERATURE_COEFFICIENT.low.value
    : TEMPERATURE_COEFFICIENT.high.value

/** Breakdown at a temperature: V25·(1 + a·(T − 25)). °C. */
export const breakdownAt = ({ breakdownV, tempC }: { breakdownV: number; tempC: number }): number =>
  breakdownV * (1 + temperatureCoefficient(breakdownV) * (tempC - 25))

/** Breakdowns are given at this temperature. °C. */
const GIVEN_AT_C = 25

/** The highest a breakdown gets in service: that of a part as hot as its surroundings, and no colder than it is given at. V, °C. */
export const hotBreakdownV = ({ mostV, ambientC }: { mostV: number; ambientC: number }): number =>
  breakdownAt({ breakdownV: mostV, tempC: Math.max(GIVEN_AT_C, ambientC) })

/** Whether a class never conducts under these highest volts: stand-off at or above them, its cold breakdown above. V ≥ 0. */
export const standsUnder = ({ standoffV, highV }: { standoffV: number; highV: number }): boolean =>
  standoffV >= highV && breakdownAt({ breakdownV: breakdownOfClass(standoffV).leastV, tempC: COLD_SOAK_C }) > highV

/** Lowest usual stand-off step that never conducts under these highest volts; undefined above the table. */
export const leastStandoffV = (highV: number): number | undefined =>
  STAND_OFF_STEPS_V.find((standoffV) => standsUnder({ standoffV, highV }))

/**
 * Dynamic resistance of a class: (Vc − Vbr)/Ipp with Vc = 1.32·Vbr and Ipp = P/Vc. From a 10/1000 µs rating, so it
 * overstates the clamp of short pulses (self-heating is in it).
 */
export function dynamicOhmOfClass({
  mostBreakdownV,
  ratedPulseW,
}: {
  mostBreakdownV: number
  ratedPulseW: number
}): number {
  const clampV = mostBreakdownV * CLAMP_RATIO.value
  return ((clampV - mostBreakdownV) * clampV) / ratedPulseW
}

/** Clamp voltage at a current: Vbr + Rd·I. */
export const clampAt = (part: { breakdownV: number; dynamicOhm: number; currentA: number }): number =>
  part.breakdownV + part.dynamicOhm * part.currentA

/** Peak current of a resistive circuit: (Voc − Vbr)/(Rs + Rd), 0 when the part does not conduct. */
export const resistivePeakA = (given: {
  openCircuitV: number
  sourceOhm: number
  breakdownV: number
  dynamicOhm: number
}): number => Math.max(0, (given.openCircuitV - given.breakdownV) / (given.sourceOhm + given.dynamicOhm))

/** Junction capacitance under a blocking voltage ≥ 0: C0/√(1 + V/0.7). */
export const capacitanceAt = ({ zeroBiasF, volts }: { zeroBiasF: number; volts: number }): number =>
  zeroBiasF / (1 + volts / JUNCTION.builtInV) ** JUNCTION.power

/**
 * Low-capacitance form: a small rectifier in series with the suppressor. C1·C2/(C1 + C2). One string blocks one
 * polarity; use two the other way round for a bidirectional line, or a third diode across a unidirectional one.
 */
export const steeredF = ({ suppressorF, rectifierF }: { suppressorF: number; rectifierF: number }): number =>
  (suppressorF * rectifierF) / (suppressorF + rectifierF)

export type Part = {
  readonly breakdownV: number
  readonly dynamicOhm: number
  readonly ratedPulseW: number
  readonly capacitanceF: number
}

/** n equal parts in series: volts, ohms and power add, capacitance divides. n ≥ 1. */
export const inSeries = (part: Part, n: number): Part => ({
  breakdownV: part.breakdownV * n,
  dynamicOhm: part.dynamicOhm * n,
  ratedPulseW: part.ratedPulseW * n,
  capacitanceF: part.capacitanceF / n,
})

/**
 * Currents of two parts in parallel that share a current ≥ 0: I1 − I2 = ΔVbr/Rd for equal resistances. The lower
 * breakdown takes more; the other may take none. A.
 */
export function inParallelA(given: {
  readonly totalA: number
  readonly breakdownV: readonly [number, number]
  readonly dynamicOhm: number
}): readonly [number, number] {
  const { totalA, breakdownV, dynamicOhm } = given
  const lead = (breakdownV[1] - breakdownV[0]) / dynamicOhm
  const first = Math.min(totalA, Math.max(0, (totalA + lead) / 2))
  return [first, totalA - first]
}
