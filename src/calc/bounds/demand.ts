/** One need from one source, with the box of every part it has to hold for, ready for the solver. */

import { type NoiseSource, sourceImpedance } from '../network/circuit.ts'
import type { Fixed, Wiring } from '../network/cleared.ts'
import { type LaidOut, type Leads, layOut, type Marked, NOTHING, type PartRange } from './layout.ts'
import type { Need, Parts, Span, Surroundings } from './surroundings.ts'

export type { Marked, PartRange }

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
  readonly laid: LaidOut
}

/** a need met to within this is met: the solver rounds near 1e-13 dB */
const ROUNDING_DB = 1e-9

/** Every need from every source, with and without what stands at the nodes. */
export function demandsOf(around: Surroundings, marked: Marked, leads: Leads = 'as-entered'): Demand[] {
  const coils = around.bead === undefined ? boxesOf(around, marked, undefined, leads) : undefined
  return around.sources.flatMap((source) =>
    around.needs.flatMap((need) =>
      (coils ?? boxesOf(around, marked, need.hz, leads)).map((box) => {
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
    w,
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

type Box = Pick<Demand, 'wiring' | 'ranges' | 'laid'>

function boxesOf(around: Surroundings, marked: Marked, beadHz: number | undefined, leads: Leads): Box[] {
  const laid = layOut(around, marked, beadHz, leads)
  const nodes = [around.sourceNodeF, around.loadNodeF]
  const boxes: Box[] = []
  for (const withSource of nodes[0] && nodes[0].most > 0 ? [false, true] : [false])
    for (const withLoad of nodes[1] && nodes[1].most > 0 ? [false, true] : [false]) {
      const own = [...laid.ranges]
      const put = (node: Span | undefined): number => own.push({ scale: NOTHING, fixed: node ?? NOTHING }) - 1
      boxes.push({
        wiring: {
          stages: laid.stages,
          sourceNode: withSource ? put(nodes[0]) : -1,
          loadNode: withLoad ? put(nodes[1]) : -1,
          sourceNodeInBare: nodes[0]?.inBare ?? false,
          loadNodeInBare: nodes[1]?.inBare ?? false,
          bondPart: laid.bond,
        },
        ranges: own,
        laid,
      })
    }
  return boxes
}

/** Parts as the chain matrix takes them, from the values of one point. */
export function partsOf({ wiring, laid }: Demand, values: ArrayLike<number>): Parts {
  const at = (i: number) => (i < 0 ? 0 : (values[i] ?? 0))
  const { shunt1, shunt2, coil1, coil2, damper, isBead } = laid
  const ohms = (i: number): readonly [number, number] => [at(i), at(i + 1)]
  return {
    shunt1F: at(shunt1),
    shunt2F: at(shunt2),
    series1H: isBead ? 0 : at(coil1),
    series2H: isBead ? 0 : at(coil2),
    sourceNodeF: at(wiring.sourceNode),
    loadNodeF: at(wiring.loadNode),
    crossF: at(laid.cross),
    chokeH: at(laid.choke),
    ...(isBead && coil1 >= 0 ? { bead1: ohms(coil1), bead2: ohms(coil2) } : {}),
    ...(damper < 0 ? {} : { damper: { farads: at(damper), ohm: at(damper + 1) } }),
  }
}
