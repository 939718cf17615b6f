/**
 * A filter solved by its nodes: complex Gaussian elimination with pivots on the node-admittance matrix, every element a
 * branch between two nodes. Shares nothing with the chain matrix it judges. Inductances in a branch that also holds
 * resistance or capacitance get inner nodes only through their series impedance, so that zero ohms is no special case.
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

/** Voltage at `wanted` for 1 V behind `source` at node 0. */
function solve(count: number, branches: readonly Branch[], source: Z, wanted: number): Z {
  // Modified nodal analysis: the source current is one more unknown, so that a source of 0 Ω is no special case.
  const size = count + 1
  const re = Array.from({ length: size }, () => new Float64Array(size + 1))
  const im = Array.from({ length: size }, () => new Float64Array(size + 1))
  const add = (row: number, column: number, [a, b]: Z, sign: number) => {
    const [r, i] = [re[row], im[row]]
    if (!r || !i) return
    r[column] = (r[column] ?? 0) + sign * a
    i[column] = (i[column] ?? 0) + sign * b
  }
  for (const { from, to, ohm } of branches) {
    const y = over(ohm)
    for (const node of [from, to]) if (node !== CHASSIS) add(node, node, y, 1)
    if (from !== CHASSIS && to !== CHASSIS) {
      add(from, to, y, -1)
      add(to, from, y, -1)
    }
  }
  add(0, count, [1, 0], -1)
  add(count, 0, [1, 0], 1)
  add(count, count, source, 1)
  add(count, size, [1, 0], 1)
  return eliminate(re, im, size, wanted)
}

function eliminate(re: Float64Array[], im: Float64Array[], size: number, wanted: number): Z {
  const at = (row: number, column: number): Z => [re[row]?.[column] ?? 0, im[row]?.[column] ?? 0]
  for (let k = 0; k < size; k++) {
    let pivot = k
    for (let row = k + 1; row < size; row++) if (Math.hypot(...at(row, k)) > Math.hypot(...at(pivot, k))) pivot = row
    for (const side of [re, im]) {
      const [a, b] = [side[k], side[pivot]]
      if (a && b) {
        side[k] = b
        side[pivot] = a
      }
    }
    const inverse = over(at(k, k))
    for (let row = 0; row < size; row++) {
      const [a, b] = at(row, k)
      if (row === k || (a === 0 && b === 0)) continue
      const fRe = a * inverse[0] - b * inverse[1]
      const fIm = a * inverse[1] + b * inverse[0]
      for (let column = k; column <= size; column++) {
        const [p, q] = at(k, column)
        const [r, i] = [re[row], im[row]]
        if (!r || !i) continue
        r[column] = (r[column] ?? 0) - (fRe * p - fIm * q)
        i[column] = (i[column] ?? 0) - (fRe * q + fIm * p)
      }
    }
  }
  const [a, b] = at(wanted, size)
  const inverse = over(at(wanted, wanted))
  return [a * inverse[0] - b * inverse[1], a * inverse[1] + b * inverse[0]]
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
  const stages: readonly (SeriesPart | ShuntPart)[] = {
    C: [circuit.shunt1],
    L: [circuit.series1],
    LC: [circuit.series1, circuit.shunt1],
    CL: [circuit.shunt1, circuit.series1],
    PI: [circuit.shunt1, circuit.series1, circuit.shunt2],
    T: [circuit.series1, circuit.shunt1, circuit.series2],
  }[circuit.topology]
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
  return 20 * Math.log10(Math.hypot(...without) / Math.hypot(...withFilter))
}

function coil(part: SeriesPart, w: number): Z {
  let z: Z = [0, w * part.inductanceH]
  if (Number.isFinite(part.parallelOhm)) z = beside(z, [part.parallelOhm, 0])
  if (part.parallelF > 0) z = beside(z, [0, -1 / (w * part.parallelF)])
  return plus(z, [part.dcrOhm, 0])
}
