/** The lowest loss of a filter over everything its parts may be in service. */
import { type Held, heldInBox, worstInBox } from '../../bounds/box.ts'
import type { LegChoke, Surroundings } from '../../bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../../bounds/worst-case.ts'
import {
  type FilterCircuit,
  hasCapacitor,
  hasInductor,
  type NoiseLoad,
  type NoiseSource,
} from '../../network/circuit.ts'
import type { BoxElements } from '../corners.ts'

export type BoxQuestion = {
  readonly circuit: FilterCircuit
  readonly sources: readonly NoiseSource[]
  readonly load: NoiseLoad
  readonly frequenciesHz: readonly number[]
  readonly neededDb: number
  readonly spread: Spread
  /** a bead and damping over their spread, and how far an inductance reaches */
  readonly elements: BoxElements
  /** the choke the circuit has, over its tolerance */
  readonly choke?: LegChoke | undefined
}

export type BoxWorst = {
  readonly db: number
  readonly hz: number
  readonly source: NoiseSource
  /** what the parts earn against the need */
  readonly held: Held
}

/**
 * Worst loss in dB over capacitors from k_low to k_high of their mark, inductors from the least entered up to
 * L·(1 + tol)/(1 − tol) and the choke over its span, every part on its own, every frequency and source; and whether the
 * need is held there with any inductance of lead and bond, and any self-capacitance, up to what was entered. Undefined where nothing has a size:
 * then only the parts as entered are known.
 */
export function worstOfBox(q: BoxQuestion): BoxWorst | undefined {
  const { circuit, sources, load, frequenciesHz, neededDb, spread, choke } = q
  const { bead, damper, inductanceH } = q.elements
  const { shunt1, shunt2, series1, series2 } = circuit
  // A Pi without its first half is what is left of it.
  const topology = circuit.topology === 'PI' && shunt1.capacitanceF === 0 ? 'LC' : circuit.topology
  const firstF = topology === circuit.topology ? shunt1.capacitanceF : shunt2.capacitanceF
  const isChokeAlone = choke !== undefined && topology === 'C' && firstF === 0
  const hasCoils = bead !== undefined || series1.inductanceH > 0 || (topology === 'T' && series2.inductanceH > 0)
  const hasSizes = isChokeAlone || ((!hasCapacitor(topology) || firstF > 0) && (!hasInductor(topology) || hasCoils))
  if (!hasSizes || sources.length === 0 || frequenciesHz.length === 0) return undefined
  const growth = inductanceH.most / inductanceH.least
  const around: Surroundings = {
    topology,
    needs: frequenciesHz.map((hz) => ({ hz, db: neededDb })),
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
    ...(bead === undefined ? {} : { bead }),
    ...(damper === undefined ? {} : { damper }),
  }
  const isMarkedF = hasCapacitor(topology)
  const marked = isMarkedF ? { least: leastShare(spread), most: mostShare(spread) } : { least: 1, most: growth }
  const size = isMarkedF ? firstF : series1.inductanceH
  const worst = worstInBox(around, marked, size)
  // a point that is short needs no proof
  const held = worst.db < 0 ? 'short' : heldInBox([around], marked, size)
  return { db: worst.lossDb, hz: worst.need.hz, source: worst.source, held }
}
