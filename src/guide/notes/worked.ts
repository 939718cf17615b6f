/** Figures that stand in several notes, worked out by the same functions that answer the checks. */
import { lossDb } from '../../calc/network/chain.ts'
import { type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../calc/network/circuit.ts'
import { worstGain } from '../../calc/network/shape.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import type { Topology } from '../../calc/types.ts'
import { bondFloorDb, conversionDb } from '../figures.ts'

/** Parts and frequency of the table of topologies: 1 µH, 10 nF, 10 MHz. */
export const TABLE_PARTS = { inductanceH: 1e-6, capacitanceF: 10e-9, hz: 10e6 } as const

type Ends = { readonly sourceOhm: number; readonly loadOhm: number }

const lossBetween = (circuit: FilterCircuit, { sourceOhm, loadOhm }: Ends, hz: number): number =>
  lossDb(
    circuit,
    { ohm: sourceOhm, seriesH: 0 },
    { ohm: loadOhm, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
    hz,
  )

/** A topology of the ideal parts of the table. */
function idealCircuit(topology: Topology): FilterCircuit {
  const { inductanceH, capacitanceF } = TABLE_PARTS
  const shunt = { ...NO_SHUNT, capacitanceF }
  const series = { ...NO_SERIES, inductanceH }
  return { topology, shunt1: shunt, shunt2: shunt, series1: series, series2: series, bondOhm: 0, bondH: 0 }
}

/** Loss of a topology of the table's ideal parts between two resistances, in dB. */
export const idealLossDb = (topology: Topology, ends: Ends): number =>
  lossBetween(idealCircuit(topology), ends, TABLE_PARTS.hz)

/** The same with one decimal. */
export const idealLoss = (topology: Topology, ends: Ends): string => unsigned(idealLossDb(topology, ends))

/** How much louder the table's parts make it at their resonance, and where. */
export function idealGain(
  topology: Topology,
  { sourceOhm, loadOhm }: Ends,
): { readonly gainDb: number; readonly atHz: number } {
  const gain = worstGain(idealCircuit(topology), {
    source: { ohm: sourceOhm, seriesH: 0 },
    load: { ohm: loadOhm, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
  })
  if (gain === undefined) throw new RangeError('an example that does not ring')
  return gain
}

/** What a bond leaves of the best capacitor, one decimal, in dB. */
export const bondFloor = (at: Parameters<typeof bondFloorDb>[0]): string => bondFloorDb(at).toFixed(1)

/** Worst conversion of two capacitors at the ends of their tolerance, one decimal, in dB. */
export const worstConversion = (leastShare: number, mostShare: number): string =>
  tenths(conversionDb(leastShare, mostShare))

/** Decibels with one decimal, also where it is a nought. */
export const tenths = (db: number): string => formatQuantity(db, 'decibel').replace(/[\d.]+/u, Math.abs(db).toFixed(1))

/** A loss with one decimal; ideal parts never print as minus nothing. */
const unsigned = (db: number): string => (Math.abs(db) < 0.05 ? 0 : db).toFixed(1)
