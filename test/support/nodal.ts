/**
 * A filter solved by its nodes: complex Gaussian elimination with pivots on the node-admittance matrix, every element a
 * branch between two nodes. Shares nothing with the chain matrix it judges. Valid for branches of more than zero ohms (a
 * source may have none).
 */
import type { FilterCircuit, NoiseLoad, NoiseSource, SeriesPart, ShuntPart } from '../../src/calc/network/circuit.ts'
import type { NodeFarads } from '../../src/calc/network/nodes.ts'

type Z = readonly [re: number, im: number]
type Branch = { readonly from: number; readonly to: number; readonly ohm: Z }

const CHASSIS = -1
const NO_NODES: NodeFarads = { sourceF: 0, loadF: 0, sourceInBare: false, loadInBare: false }

const over = ([re, im]: Z): Z => {
  const m = re * re + im * im
  return [re / m, -im / m]
}
const plus = (a: Z, b: Z): Z => [a[0] + b[0], a[1] + b[1]]
const beside = (a: Z, b: Z): Z => over(plus(over(a), over(b)))

/** Rows of at most five nodes, the source current and the right-hand side. */
const MAX_SIZE = 7
const WIDTH = MAX_SIZE + 1
const re = new Float64Array(MAX_SIZE * WIDTH)
const im = new Float64Array(MAX_SIZE * WIDTH)

function add(row: number, column: number, yRe: number, yIm: number): void {
  const at = row * WIDTH + column
  re[at] = (re[at] as number) + yRe
  im[at] = (im[at] as number) + yIm
}

/** |voltage| at `wanted` for 1 V behind `source` at node 0. */
function solve(count: number, branches: readonly Branch[], source: Z, wanted: number): number {
  // The source current is one more unknown, so that a source of 0 Ω is no special case.
  const size = count + 1
  if (size > MAX_SIZE) throw new RangeError('too many nodes')
  re.fill(0)
  im.fill(0)
  for (const { from, to, ohm } of branches) {
    const [yRe, yIm] = over(ohm)
    add(from, from, yRe, yIm)
    if (to === CHASSIS) continue
    add(to, to, yRe, yIm)
    add(from, to, -yRe, -yIm)
    add(to, from, -yRe, -yIm)
  }
  add(0, count, -1, 0)
  add(count, 0, 1, 0)
  add(count, count, source[0], source[1])
  add(count, size, 1, 0)
  for (let k = 0; k < size; k++) eliminate(k, size)
  const [v, pivot] = [wanted * WIDTH + size, wanted * WIDTH + wanted]
  return Math.hypot(re[v] as number, im[v] as number) / Math.hypot(re[pivot] as number, im[pivot] as number)
}

/** Clears column `k` from every other row, after the largest entry below was brought up. */
function eliminate(k: number, size: number): void {
  let pivot = k
  let largest = -1
  for (let row = k; row < size; row++) {
    const at = row * WIDTH + k
    const size2 = (re[at] as number) ** 2 + (im[at] as number) ** 2
    if (size2 <= largest) continue
    largest = size2
    pivot = row
  }
  for (let column = k; pivot !== k && column <= size; column++) {
    for (const side of [re, im]) {
      const kept = side[k * WIDTH + column] as number
      side[k * WIDTH + column] = side[pivot * WIDTH + column] as number
      side[pivot * WIDTH + column] = kept
    }
  }
  const [pRe, pIm] = [re[k * WIDTH + k] as number, im[k * WIDTH + k] as number]
  const p2 = pRe * pRe + pIm * pIm
  for (let row = 0; row < size; row++) {
    const at = row * WIDTH + k
    const [aRe, aIm] = [re[at] as number, im[at] as number]
    if (row === k || (aRe === 0 && aIm === 0)) continue
    const fRe = (aRe * pRe + aIm * pIm) / p2
    const fIm = (aIm * pRe - aRe * pIm) / p2
    for (let column = k; column <= size; column++) {
      const [cRe, cIm] = [re[k * WIDTH + column] as number, im[k * WIDTH + column] as number]
      add(row, column, fIm * cIm - fRe * cRe, -fRe * cIm - fIm * cRe)
    }
  }
}

/** Insertion loss in dB, 20·log10 |V_load without / V_load with|, the bond an element of its own below all shunt parts. */
export function nodalLossDb(
  circuit: FilterCircuit,
  source: NoiseSource,
  load: NoiseLoad,
  hz: number,
  nodes: NodeFarads = NO_NODES,
): number {
  const w = 2 * Math.PI * hz
  const zs: Z = [source.ohm, w * source.seriesH]
  const loads = (node: number): Branch[] => [
    { from: node, to: CHASSIS, ohm: [load.ohm, 0] },
    ...capacitor(node, load.parallelF),
    ...(Number.isFinite(load.parallelH) ? [{ from: node, to: CHASSIS, ohm: [0, w * load.parallelH] as const }] : []),
  ]
  const capacitor = (node: number, farads: number): Branch[] =>
    farads > 0 ? [{ from: node, to: CHASSIS, ohm: [0, -1 / (w * farads)] }] : []

  const bare = [
    ...loads(0),
    ...capacitor(0, nodes.sourceInBare ? nodes.sourceF : 0),
    ...capacitor(0, nodes.loadInBare ? nodes.loadF : 0),
  ]
  const without = solve(1, bare, zs, 0)

  // Node 0 the source side; each inductor opens a new node; the plate is the node the bond ties to chassis.
  const branches: Branch[] = [...capacitor(0, nodes.sourceF)]
  const bond: Z = [circuit.bondOhm, w * circuit.bondH]
  const isTied = bond[0] === 0 && bond[1] === 0
  const own: readonly (SeriesPart | ShuntPart)[] = {
    C: [circuit.shunt1],
    L: [circuit.series1],
    LC: [circuit.series1, circuit.shunt1],
    CL: [circuit.shunt1, circuit.series1],
    PI: [circuit.shunt1, circuit.series1, circuit.shunt2],
    T: [circuit.series1, circuit.shunt1, circuit.series2],
  }[circuit.topology]
  const stages = withChoke(withCross(own, circuit), circuit)
  const shunts = stages.filter((part) => 'capacitanceF' in part && part.capacitanceF > 0).length
  let next = 1
  const plate = isTied || shunts === 0 ? CHASSIS : next++
  if (plate !== CHASSIS) branches.push({ from: plate, to: CHASSIS, ohm: bond })
  let node = 0
  for (const part of stages) {
    if ('capacitanceF' in part) {
      if (part.capacitanceF > 0)
        branches.push({
          from: node,
          to: plate,
          ohm: [part.esrOhm, w * part.eslH - 1 / (w * part.capacitanceF)],
        })
    } else {
      branches.push({ from: node, to: next, ohm: coil(part, w) })
      node = next++
    }
  }
  branches.push(...loads(node), ...capacitor(node, nodes.loadF))
  const withFilter = solve(next, branches, zs, node)
  return 20 * Math.log10(without / withFilter)
}

type Stages = readonly (SeriesPart | ShuntPart)[]

/** Half of a line-to-line capacitor right behind the last capacitor, or behind everything. */
function withCross(stages: Stages, { cross }: FilterCircuit): Stages {
  if (cross === undefined) return stages
  const last = stages.findLastIndex((part) => 'capacitanceF' in part)
  const at = last < 0 ? stages.length : last + 1
  return [...stages.slice(0, at), cross, ...stages.slice(at)]
}

function withChoke(stages: Stages, { choke }: FilterCircuit): Stages {
  if (choke === undefined) return stages
  return choke.side === 'source' ? [choke.part, ...stages] : [...stages, choke.part]
}

function coil(part: SeriesPart, w: number): Z {
  let z: Z = [0, w * part.inductanceH]
  if (Number.isFinite(part.parallelOhm)) z = beside(z, [part.parallelOhm, 0])
  if (part.parallelF > 0) z = beside(z, [0, -1 / (w * part.parallelF)])
  return plus(z, [part.dcrOhm, 0])
}
