/** The lowest loss of a filter over everything its parts may be in service. */
import { worstInBox } from '../../bounds/box.ts'
import type { LegChoke, Surroundings } from '../../bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../../bounds/worst-case.ts'
import {
  type FilterCircuit,
  hasCapacitor,
  hasInductor,
  type NoiseLoad,
  type NoiseSource,
} from '../../network/circuit.ts'

export type BoxQuestion = {
  readonly circuit: FilterCircuit
  readonly sources: readonly NoiseSource[]
  readonly load: NoiseLoad
  readonly frequenciesHz: readonly number[]
  readonly spread: Spread
  /** the choke the circuit has, over its tolerance */
  readonly choke?: LegChoke | undefined
}

export type BoxWorst = { readonly db: number; readonly hz: number; readonly source: NoiseSource }

/** Circuits at the corners of the box: capacitors all at one end, inductors all at one end, the choke at either. */
export function cornersOf(circuit: FilterCircuit, spread: Spread, choke?: LegChoke): readonly FilterCircuit[] {
  const growth = (1 + spread.tolerance.highFrac) / (1 - spread.tolerance.lowFrac)
  const ends =
    choke === undefined ? [circuit] : [choke.spanH.least, choke.spanH.most].map((h) => withChoke(circuit, choke, h))
  return ends.flatMap((end) => cornersAt(end, spread, growth))
}

function withChoke(circuit: FilterCircuit, { part, side }: LegChoke, inductanceH: number): FilterCircuit {
  return { ...circuit, choke: { part: { ...part, inductanceH }, side } }
}

function cornersAt(circuit: FilterCircuit, spread: Spread, growth: number): readonly FilterCircuit[] {
  const shares = hasCapacitor(circuit.topology) ? [leastShare(spread), mostShare(spread)] : [1]
  const growths = hasInductor(circuit.topology) ? [1, growth] : [1]
  return shares.flatMap((share) =>
    growths.map((more) => ({
      ...circuit,
      shunt1: { ...circuit.shunt1, capacitanceF: share * circuit.shunt1.capacitanceF },
      shunt2: { ...circuit.shunt2, capacitanceF: share * circuit.shunt2.capacitanceF },
      series1: { ...circuit.series1, inductanceH: more * circuit.series1.inductanceH },
      series2: { ...circuit.series2, inductanceH: more * circuit.series2.inductanceH },
    })),
  )
}

/**
 * Worst loss in dB over capacitors from k_low to k_high of their mark, inductors from the least entered up to
 * L·(1 + tol)/(1 − tol) and the choke over its span, every part on its own, every frequency and source. Undefined where
 * nothing has a size: then only the parts as entered are known.
 */
export function worstOfBox({
  circuit,
  sources,
  load,
  frequenciesHz,
  spread,
  choke,
}: BoxQuestion): BoxWorst | undefined {
  const { shunt1, shunt2, series1, series2 } = circuit
  // A Pi without its first half is what is left of it.
  const topology = circuit.topology === 'PI' && shunt1.capacitanceF === 0 ? 'LC' : circuit.topology
  const firstF = topology === circuit.topology ? shunt1.capacitanceF : shunt2.capacitanceF
  const isChokeAlone = choke !== undefined && topology === 'C' && firstF === 0
  const hasCoils = series1.inductanceH > 0 || (topology === 'T' && series2.inductanceH > 0)
  const hasSizes = isChokeAlone || ((!hasCapacitor(topology) || firstF > 0) && (!hasInductor(topology) || hasCoils))
  if (!hasSizes || sources.length === 0 || frequenciesHz.length === 0) return undefined
  const growth = (1 + spread.tolerance.highFrac) / (1 - spread.tolerance.lowFrac)
  const around: Surroundings = {
    topology,
    // The need itself does not move the worst: it is compared afterwards.
    needs: frequenciesHz.map((hz) => ({ hz, db: 0 })),
    sources,
    load,
    esrOhm: shunt1.esrOhm,
    eslH: shunt1.eslH,
    bondOhm: circuit.bondOhm,
    bondH: circuit.bondH,
    dcrOhm: series1.dcrOhm,
    inductorParallelF: series1.parallelF,
    inductorParallelOhm: series1.parallelOhm,
    inductancesH: [series1.inductanceH, series1.inductanceH * growth],
    inductances2H: [series2.inductanceH, series2.inductanceH * growth],
    ...(topology === 'PI' ? { shunt2Share: shunt2.capacitanceF / firstF } : {}),
    ...(choke === undefined ? {} : { choke }),
  }
  const marked = hasCapacitor(topology)
    ? { least: leastShare(spread), most: mostShare(spread) }
    : { least: 1, most: growth }
  const worst = worstInBox(around, marked, hasCapacitor(topology) ? firstF : series1.inductanceH)
  return { db: worst.lossDb, hz: worst.need.hz, source: worst.source }
}
