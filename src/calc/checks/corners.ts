/** A filter's circuits at the corners of what its parts may be in service. */
import type { LegChoke } from '../bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../bounds/worst-case.ts'
import { beadPart } from '../network/bead.ts'
import { type FilterCircuit, hasCapacitor, hasInductor, type SeriesPart, type ShuntPart } from '../network/circuit.ts'
import type { Elements } from './elements.ts'

/** A bead and damping over their spread, and how far an inductance reaches. */
export type BoxElements = Pick<Elements, 'bead' | 'damper' | 'inductanceH'>

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
