/** The lowest loss of a filter over everything its parts may be in service. */
import { type Held, heldInBox, worstInBox } from '../../bounds/box.ts'
import type { LegChoke, Surroundings } from '../../bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../../bounds/worst-case.ts'
import { beadPart } from '../../network/bead.ts'
import {
  type FilterCircuit,
  hasCapacitor,
  hasInductor,
  type NoiseLoad,
  type NoiseSource,
  type SeriesPart,
  type ShuntPart,
} from '../../network/circuit.ts'
import type { Elements } from '../elements.ts'

type BoxElements = Pick<Elements, 'bead' | 'damper' | 'inductanceH'>

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

/** Circuits at the corners of the box: each capacitor, each inductor (or bead), damper and choke at either end, every part on its own. */
export function cornersOf(
  circuit: FilterCircuit,
  spread: Spread,
  elements: BoxElements,
  choke?: LegChoke,
): readonly FilterCircuit[] {
  const ends =
    choke === undefined ? [circuit] : [choke.spanH.least, choke.spanH.most].map((h) => withChoke(circuit, choke, h))
  return ends.flatMap((end) => dampedEnds(end, elements)).flatMap((end) => cornersAt(end, spread, elements))
}

function withChoke(circuit: FilterCircuit, { part, side }: LegChoke, inductanceH: number): FilterCircuit {
  return { ...circuit, choke: { part: { ...part, inductanceH }, side } }
}

function dampedEnds(circuit: FilterCircuit, { damper }: BoxElements): readonly FilterCircuit[] {
  const { damper: part } = circuit
  if (damper === undefined || part === undefined) return [circuit]
  return [damper.farads.least, damper.farads.most].flatMap((capacitanceF) =>
    [damper.ohm.least, damper.ohm.most].map((esrOhm) => ({ ...circuit, damper: { ...part, capacitanceF, esrOhm } })),
  )
}

function cornersAt(circuit: FilterCircuit, spread: Spread, elements: BoxElements): readonly FilterCircuit[] {
  const coils = coilEnds(circuit, elements)
  return capacitorEnds(circuit, spread).flatMap((capacitors) =>
    coils.map((series) => ({ ...circuit, ...capacitors, ...series })),
  )
}

function capacitorEnds(
  { topology, shunt1, shunt2 }: FilterCircuit,
  spread: Spread,
): readonly Pick<FilterCircuit, 'shunt1' | 'shunt2'>[] {
  if (!hasCapacitor(topology)) return [{ shunt1, shunt2 }]
  const of = (part: ShuntPart, share: number): ShuntPart => ({ ...part, capacitanceF: share * part.capacitanceF })
  return endsOfTwo([leastShare(spread), mostShare(spread)], topology === 'PI').map(([first, second]) => ({
    shunt1: of(shunt1, first),
    shunt2: of(shunt2, second),
  }))
}

function coilEnds(
  { topology, series1, series2 }: FilterCircuit,
  { bead, inductanceH }: BoxElements,
): readonly Pick<FilterCircuit, 'series1' | 'series2'>[] {
  if (!hasInductor(topology)) return [{ series1, series2 }]
  const { least, most } = bead === undefined ? { least: 1, most: inductanceH.most / inductanceH.least } : bead.share
  const of = (part: SeriesPart, share: number): SeriesPart =>
    bead === undefined ? { ...part, inductanceH: share * part.inductanceH } : beadPart(bead, share)
  return endsOfTwo([least, most], topology === 'T').map(([first, second]) => ({
    series1: of(series1, first),
    series2: of(series2, second),
  }))
}

/** Two like parts of a filter over their spread: each at either end on its own, or both alike where one of them is none. */
function endsOfTwo(
  [least, most]: readonly [number, number],
  areBoth: boolean,
): readonly (readonly [first: number, second: number])[] {
  const ends = least === most ? [least] : [least, most]
  return ends.flatMap((first) => (areBoth ? ends : [first]).map((second) => [first, second] as const))
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
