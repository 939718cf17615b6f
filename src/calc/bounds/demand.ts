/** One need from one source, with the box of every part it has to hold for, ready for the solver. */

import { type NoiseSource, sourceImpedance } from '../network/circuit.ts'
import type { Fixed, Stage, Wiring } from '../network/cleared.ts'
import type { Topology } from '../types.ts'
import type { Need, Parts, Span, Surroundings } from './surroundings.ts'

/** A part that is `marked·scale + fixed`, scale and fixed each from least to most. Farads or henries. */
export type PartRange = { readonly scale: Span; readonly fixed: Span }

export type Demand = {
  readonly need: Need
  readonly source: NoiseSource
  /** rad/s: every part enters as ω times its size */
  readonly w: number
  /** 10^(need/10), a rounding below it */
  readonly limit: number
  readonly wiring: Wiring
  readonly fixed: Fixed
  readonly ranges: readonly PartRange[]
}

/** What the marked figure stands for: shares of a capacitor, or of a single inductor, that a part can have. */
export type Marked = Span

/** a need met to within this is met: the solver rounds near 1e-13 dB */
const ROUNDING_DB = 1e-9
const NOTHING: Span = { least: 0, most: 0 }

const shunt = (part: number): Stage => ({ isSeries: false, part })
const series = (part: number): Stage => ({ isSeries: true, part })

/** Stages by topology; the capacitors (or the single inductor) come first among the parts. */
const STAGES: Readonly<Record<Topology, readonly Stage[]>> = {
  C: [shunt(0)],
  L: [series(0)],
  LC: [series(1), shunt(0)],
  CL: [shunt(0), series(1)],
  PI: [shunt(0), series(2), shunt(1)],
  T: [series(1), shunt(0), series(2)],
}
/** Parts a topology has of its own; what else stands in the line comes after them. */
const OWN_COUNT: Readonly<Record<Topology, number>> = { C: 1, L: 1, LC: 2, CL: 2, PI: 3, T: 3 }

/** Every need from every source, with and without what stands at the nodes. */
export function demandsOf(around: Surroundings, marked: Marked): Demand[] {
  const boxes = boxesOf(around, marked)
  return around.sources.flatMap((source) =>
    around.needs.flatMap((need) =>
      boxes.map((box) => {
        const w = 2 * Math.PI * need.hz
        return {
          need,
          source,
          w,
          limit: 10 ** ((need.db - ROUNDING_DB) / 10),
          ...box,
          fixed: fixedAt(around, source, w),
        }
      }),
    ),
  )
}

function fixedAt(around: Surroundings, source: NoiseSource, w: number): Fixed {
  const { load } = around
  const inductive = w * load.parallelH
  const [zsRe, zsIm] = sourceImpedance(source, w)
  return {
    zsRe,
    zsIm,
    ylRe: 1 / load.ohm,
    ylIm: w * load.parallelF - (inductive > 0 ? 1 / inductive : 0),
    zbRe: around.bondOhm,
    zbIm: w * around.bondH,
    esrOhm: around.esrOhm,
    eslOhm: w * around.eslH,
    dcrOhm: around.dcrOhm ?? 0,
    coilSie: w * (around.inductorParallelF ?? 0),
    coilLossSie: 1 / (around.inductorParallelOhm ?? Number.POSITIVE_INFINITY),
    chokeOhm: around.choke?.part.dcrOhm ?? 0,
    chokeSie: w * (around.choke?.part.parallelF ?? 0),
  }
}

type Box = { readonly wiring: Wiring; readonly ranges: readonly PartRange[] }

function boxesOf(around: Surroundings, marked: Marked): Box[] {
  const { stages, ranges } = ladderOf(around, marked)
  const nodes = [around.sourceNodeF, around.loadNodeF]
  const boxes: Box[] = []
  for (const withSource of nodes[0] && nodes[0].most > 0 ? [false, true] : [false])
    for (const withLoad of nodes[1] && nodes[1].most > 0 ? [false, true] : [false]) {
      const own = [...ranges]
      const put = (node: Span | undefined): number => own.push({ scale: NOTHING, fixed: node ?? NOTHING }) - 1
      boxes.push({
        wiring: {
          stages,
          sourceNode: withSource ? put(nodes[0]) : -1,
          loadNode: withLoad ? put(nodes[1]) : -1,
          sourceNodeInBare: nodes[0]?.inBare ?? false,
          loadNodeInBare: nodes[1]?.inBare ?? false,
        },
        ranges: own,
      })
    }
  return boxes
}

/** Places among the parts of what not every filter has; -1 = it has none. */
const crossAt = ({ topology, crossF }: Surroundings): number => (crossF && crossF.most > 0 ? OWN_COUNT[topology] : -1)
const chokeAt = (around: Surroundings): number =>
  around.choke ? OWN_COUNT[around.topology] + (crossAt(around) < 0 ? 0 : 1) : -1

/** The stages in order, with the range of each part: those of the topology, a line-to-line capacitor, a choke. */
function ladderOf(
  around: Surroundings,
  marked: Marked,
): { readonly stages: readonly Stage[]; readonly ranges: readonly PartRange[] } {
  const { topology, crossF, choke } = around
  const stages = [...STAGES[topology]]
  const ranges = rangesOf(around, marked)
  const cross = crossAt(around)
  if (crossF && cross >= 0) {
    const shunt = stages.findLastIndex(({ isSeries }) => !isSeries)
    stages.splice(shunt < 0 ? stages.length : shunt + 1, 0, { isSeries: false, part: cross, of: 'cross' })
    ranges.push({ scale: NOTHING, fixed: crossF })
  }
  if (choke) {
    stages.splice(choke.side === 'source' ? 0 : stages.length, 0, {
      isSeries: true,
      part: chokeAt(around),
      of: 'choke',
    })
    ranges.push({ scale: NOTHING, fixed: choke.spanH })
  }
  return { stages, ranges }
}

const spanOf = (values: readonly number[]): Span => ({ least: Math.min(...values), most: Math.max(...values) })

function rangesOf(around: Surroundings, marked: Marked): PartRange[] {
  const { topology, shunt2Share = 1 } = around
  const coil: PartRange = { scale: NOTHING, fixed: spanOf(around.inductancesH) }
  const one: PartRange = { scale: marked, fixed: NOTHING }
  const behind: PartRange = {
    scale: { least: shunt2Share * marked.least, most: shunt2Share * marked.most },
    fixed: NOTHING,
  }
  switch (topology) {
    case 'C':
    case 'L':
      return [one]
    case 'PI':
      return [one, behind, coil]
    case 'T':
      return [one, coil, { scale: NOTHING, fixed: spanOf(around.inductances2H ?? around.inductancesH) }]
    default:
      return [one, coil]
  }
}

/** Parts as the chain matrix takes them, from the values of one point. */
export function partsOf(around: Surroundings, { wiring }: Demand, values: ArrayLike<number>): Parts {
  const { topology } = around
  const at = (i: number) => (i < 0 ? 0 : (values[i] ?? 0))
  const isPi = topology === 'PI'
  const hasShunt = topology !== 'L'
  const coilAt = topology === 'L' ? 0 : isPi ? 2 : 1
  return {
    shunt1F: hasShunt ? at(0) : 0,
    shunt2F: hasShunt ? at(isPi ? 1 : 0) : 0,
    series1H: topology === 'C' ? 0 : at(coilAt),
    series2H: topology === 'C' ? 0 : at(topology === 'T' ? 2 : coilAt),
    sourceNodeF: at(wiring.sourceNode),
    loadNodeF: at(wiring.loadNode),
    crossF: at(crossAt(around)),
    chokeH: at(chokeAt(around)),
  }
}
