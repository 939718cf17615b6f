/** Writes a filter between two ends as a netlist: once wired straight (node r), once with the filter (node k). */
import type { FilterCircuit, NoiseLoad, NoiseSource, SeriesPart, ShuntPart } from '../../../src/calc/network/circuit.ts'

export type Wired = { readonly circuit: FilterCircuit; readonly source: NoiseSource; readonly load: NoiseLoad }

const NO_PARTS: readonly string[] = []

/** R + L from the voltage source to `node`. `id` keeps the names of the two copies apart. */
function sourceLines({ ohm, seriesH }: NoiseSource, node: string, id: string): readonly string[] {
  if (seriesH === 0) return [`Rs${id} in ${node} ${ohm}`]
  return [`Rs${id} in ${id}s ${ohm}`, `Ls${id} ${id}s ${node} ${seriesH}`]
}

/** R ∥ C ∥ L from `node` to ground. */
function loadLines({ ohm, parallelF, parallelH }: NoiseLoad, node: string, id: string): readonly string[] {
  return [
    `Rl${id} ${node} 0 ${ohm}`,
    ...(parallelF > 0 ? [`Cl${id} ${node} 0 ${parallelF}`] : NO_PARTS),
    ...(Number.isFinite(parallelH) ? [`Ll${id} ${node} 0 ${parallelH}`] : NO_PARTS),
  ]
}

/** ESR + ESL + C from `node` to the bond, one after another. */
function shuntLines({ capacitanceF, esrOhm, eslH }: ShuntPart, node: string, id: string, bond: string): string[] {
  const lines: string[] = []
  let at = node
  if (esrOhm > 0) {
    lines.push(`Re${id} ${at} ${id}x ${esrOhm}`)
    at = `${id}x`
  }
  if (eslH > 0) {
    lines.push(`Le${id} ${at} ${id}y ${eslH}`)
    at = `${id}y`
  }
  return [...lines, `C${id} ${at} ${bond} ${capacitanceF}`]
}

/** Winding resistance, then L ∥ C ∥ R. */
function seriesLines(part: SeriesPart, from: string, to: string, id: string): string[] {
  const at = part.dcrOhm > 0 ? `${id}d` : from
  return [
    ...(part.dcrOhm > 0 ? [`Rd${id} ${from} ${at} ${part.dcrOhm}`] : NO_PARTS),
    `L${id} ${at} ${to} ${part.inductanceH}`,
    ...(part.parallelF > 0 ? [`Cp${id} ${at} ${to} ${part.parallelF}`] : NO_PARTS),
    ...(Number.isFinite(part.parallelOhm) ? [`Rp${id} ${at} ${to} ${part.parallelOhm}`] : NO_PARTS),
  ]
}

/** R + L + C across the last capacitor; nothing where there is none. */
function damperLines({ damper, topology }: FilterCircuit, bond: string): string[] {
  if (damper === undefined || topology === 'L') return []
  const node = topology === 'CL' ? 'a' : topology === 'T' ? 'm' : 'k'
  return shuntLines(damper, node, 'q', bond)
}

/** Nodes in order: a at the source, m in the middle of a T, k at the load. */
function filterLines(circuit: FilterCircuit, bond: string): string[] {
  const c1 = (node: string) => shuntLines(circuit.shunt1, node, 'c1', bond)
  const c2 = (node: string) => shuntLines(circuit.shunt2, node, 'c2', bond)
  const l1 = (from: string, to: string) => seriesLines(circuit.series1, from, to, 'l1')
  const l2 = (from: string, to: string) => seriesLines(circuit.series2, from, to, 'l2')
  switch (circuit.topology) {
    case 'C':
      return ['Vj a k DC 0', ...c1('k')]
    case 'L':
      return l1('a', 'k')
    case 'LC':
      return [...l1('a', 'k'), ...c1('k')]
    case 'CL':
      return [...c1('a'), ...l1('a', 'k')]
    case 'PI':
      return [...c1('a'), ...l1('a', 'k'), ...c2('k')]
    case 'T':
      return [...l1('a', 'm'), ...c1('m'), ...l2('m', 'k')]
  }
}

function bondLines({ bondOhm, bondH }: FilterCircuit): { node: string; lines: readonly string[] } {
  if (bondOhm === 0 && bondH === 0) return { node: '0', lines: [] }
  if (bondH === 0) return { node: 'g', lines: [`Rb g 0 ${bondOhm}`] }
  if (bondOhm === 0) return { node: 'g', lines: [`Lb g 0 ${bondH}`] }
  return { node: 'g', lines: [`Rb g gx ${bondOhm}`, `Lb gx 0 ${bondH}`] }
}

/** Two points a decade from 10 kHz to 1 GHz. */
export const SWEEP = '.ac dec 2 1e4 1e9'
export const SWEEP_POINTS = 11

export function netlistOf({ circuit, source, load }: Wired): string {
  const bond = bondLines(circuit)
  return [
    '* random filter',
    'Vin in 0 DC 0 AC 1',
    ...sourceLines(source, 'r', 'r'),
    ...loadLines(load, 'r', 'r'),
    ...sourceLines(source, 'a', 'a'),
    ...filterLines(circuit, bond.node),
    ...damperLines(circuit, bond.node),
    ...bond.lines,
    ...loadLines(load, 'k', 'k'),
    '.save v(r) v(k)',
    SWEEP,
    '.end',
    '',
  ].join('\n')
}
