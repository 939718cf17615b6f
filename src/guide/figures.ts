/** What the worked examples of the guide come to: each by a function of calc, none typed twice. */
import { lossDb } from '../calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../calc/network/circuit.ts'
import { clampFallDb } from '../calc/network/clamp.ts'
import { shuntNeedF } from '../calc/network/trial-region.ts'
import { rectifierHz } from '../calc/tone/explanations.ts'
import { BOND_NOTE } from '../reference/constructions.ts'
import {
  AC_BUS,
  ANTENNA_MATCH,
  BENCH_ENDS,
  INCH_OF_WIRE,
  RADIO_COAX,
  SHIELD_TAIL,
  USUAL_SOURCES,
} from '../reference/field-figures.ts'
import { WIRE_H_PER_M } from '../reference/instruments.ts'
import { DERIVED } from '../reference/line-kinds/cite.ts'
import type { Citation, LineKind } from '../reference/line-kinds/types.ts'
import { lineKindById } from '../reference/line-kinds.ts'
import { decibels, farads, hertz, ohms } from './print.ts'

/** What a row of the line kinds holds and a text needs; a row without it is a fault of ours. */
export function factOf<F extends keyof LineKind>(kindId: string, fact: F): NonNullable<LineKind[F]> {
  const value = lineKindById(kindId)?.[fact]
  if (value === undefined) throw new RangeError(`no ${fact} of "${kindId}"`)
  return value
}

/** Reactance of an inductance, 2π·f·L, in ohms. */
export const reactanceOhm = (inductanceH: number, hz: number): number => 2 * Math.PI * hz * inductanceH

/** Inductance of a straight wire, in H. */
export const wireH = (lengthM: number): number => lengthM * WIRE_H_PER_M.henriesPerM

/** The tail of a shield at 100 MHz. */
export const TAIL = { metres: SHIELD_TAIL.metres, henries: wireH(SHIELD_TAIL.metres), hz: 100e6 } as const
export const tailOhm = (): string => ohms(reactanceOhm(TAIL.henries, TAIL.hz), 2)

/** Fall under a clamp of 100 Ω. */
export const CLAMP_OHM = 100
/** A loop closed at both ends, and one that is not. */
export const LOW_LOOP_OHM = 50
export const HIGH_LOOP_OHM = 300
export const clampFall = (loopOhm: number): string => decibels(clampFallDb({ clampOhm: CLAMP_OHM, loopOhm }), 2)

/** Least capacitance that takes `db` off the volts of a source of so many ohms, the load taken as open. */
export const shuntFor = (sourceOhm: number, db: number, hz: number): string =>
  farads(shuntNeedF([{ ohm: sourceOhm, reactanceOhm: 0 }], db, hz), 2)

/** One ideal capacitor between two resistances, in dB; the load may be open. */
export function capacitorLossDb(q: { sourceOhm: number; loadOhm: number; capacitanceF: number; hz: number }): number {
  const circuit: FilterCircuit = {
    topology: 'C',
    shunt1: { ...NO_SHUNT, capacitanceF: q.capacitanceF },
    shunt2: NO_SHUNT,
    series1: NO_SERIES,
    series2: NO_SERIES,
    bondOhm: 0,
    bondH: 0,
  }
  return lossDb(circuit, { ...BENCH_SOURCE, ohm: q.sourceOhm }, { ...BENCH_LOAD, ohm: q.loadOhm }, q.hz)
}

/** Humps of the constant alternating bus behind a rectifier of so many pulses; one pulse is the bus itself. */
export const rectified = (pulses: number): string => hertz(rectifierHz(AC_BUS.hz, pulses))

/** The sources that are tried where nobody knows: "1, 10, 50 and 150 Ω". */
export function usualSources(): string {
  const most = USUAL_SOURCES.ohms.at(-1) ?? Number.NaN
  return `${USUAL_SOURCES.ohms.slice(0, -1).join(', ')} and ${ohms(most)}`
}

/** What a filter against rectified hum would have to do, from a bus of about an ohm. */
export const HUM = { sourceOhm: 1, db: 20 } as const
export const humNeeds = (pulses: number): string => shuntFor(HUM.sourceOhm, HUM.db, rectifierHz(AC_BUS.hz, pulses))

/** A small trial part from a matched source into an open input: what it does at HF. */
export const HF = { sourceOhm: RADIO_COAX.ohm, loadOhm: 1e6, capacitanceF: 1e-9, hz: 3e6 } as const
export const hfLoss = (): string => decibels(capacitorLossDb(HF), 2)

type FloorAt = {
  readonly sourceOhm: number
  readonly loadOhm: number
  readonly bondOhm: number
  readonly bondH: number
  readonly hz: number
}

/** What a bond leaves of the best capacitor: 20·log10|1 + Rp/(Rb + jωLb)| with Rp of both ends, in dB. */
export function bondFloorDb(q: FloorAt): number {
  const besideOhm = (q.sourceOhm * q.loadOhm) / (q.sourceOhm + q.loadOhm)
  const x = reactanceOhm(q.bondH, q.hz)
  return 20 * Math.log10(Math.hypot(besideOhm + q.bondOhm, x) / Math.hypot(q.bondOhm, x))
}

/** What a bond that is an inch of wire leaves, between the ends of the bench: who says each figure of it. */
export const INCH_OF_BOND_SOURCES: readonly [Citation, ...Citation[]] = [
  DERIVED,
  ...BOND_NOTE.sources,
  { id: 'S42', standing: 'read' },
  BENCH_ENDS.fixtureBasis,
  INCH_OF_WIRE.basis,
]

/** Worst conversion of two capacitors at the ends of their tolerance: |C1 − C2|/(C1 + C2), in dB. */
export const conversionDb = (leastShare: number, mostShare: number): number =>
  20 * Math.log10((mostShare - leastShare) / (mostShare + leastShare))

/** Capacitance across a matched line that spends the whole return loss: |Γ| = x/√(4 + x²), x = ω·C·Z0. */
export function matchSpentF(hz: number): number {
  const reflected = 10 ** (-ANTENNA_MATCH.returnLossDb / 20)
  return (2 * reflected) / Math.sqrt(1 - reflected ** 2) / (2 * Math.PI * hz * RADIO_COAX.ohm)
}

/** What an impedance adds to a current in dBµA to make dBµV of it. */
export const onOhms = (ohm: number): number => 20 * Math.log10(ohm)
