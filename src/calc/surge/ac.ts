/**
 * Steady sine through the circuit, with the suppressor open or conducting: where a ringing pulse would build up. Only
 * points where to look are taken from it; the volts are those of the run over time. Derived (ladder network).
 */
import type { SurgeCircuit } from './circuit.ts'

type Z = readonly [re: number, im: number]

const NONE: Z = [0, 0]
const plus = (a: Z, b: Z): Z => [a[0] + b[0], a[1] + b[1]]
const times = (a: Z, b: Z): Z => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]]
const inverse = ([re, im]: Z): Z => {
  const square = re * re + im * im
  return [re / square, -im / square]
}
const size = ([re, im]: Z): number => Math.hypot(re, im)

/** One node of the ladder, connector first: admittance to chassis, and the impedance on to the next node. */
type Node = { readonly shunt: Z; readonly onward: Z }

/**
 * Volts at the load, or at the highest node where that is more, for one volt of the drive: the generator, or, with the
 * part conducting at the connector, the part itself. Hz.
 */
export function sineGain(circuit: SurgeCircuit, hz: number, conducts: boolean): number {
  const w = 2 * Math.PI * hz
  const { source, lineOhm, lineH, suppressor, placement } = circuit
  const ahead = placement === 'connector'
  const drivenByPart = conducts && ahead && suppressor !== undefined
  const feed: Z = drivenByPart
    ? [suppressor.dynamicOhm, w * suppressor.leadH]
    : [(Number.isFinite(source.ohm) ? source.ohm : 1e6) + lineOhm, w * lineH]
  const part = suppressor && !drivenByPart ? admittanceOf(suppressor, w, conducts) : NONE
  const nodes = nodesOf(circuit, w, ahead ? part : NONE, ahead ? NONE : part)
  // volts and amperes back from one volt at the load
  let [v, i]: [Z, Z] = [[1, 0], NONE]
  let highest = 0
  for (const node of [...nodes].reverse()) {
    v = plus(v, times(i, node.onward))
    i = plus(i, times(v, node.shunt))
    highest = Math.max(highest, size(v))
  }
  return highest / Math.max(1e-30, size(plus(v, times(i, feed))))
}

/** A part: its junction, open or at its dynamic resistance, behind its lead. */
function admittanceOf(part: NonNullable<SurgeCircuit['suppressor']>, w: number, conducts: boolean): Z {
  const junction: Z = [conducts ? 1 / part.dynamicOhm : 1e-9, w * part.capacitanceF]
  return inverse(plus(inverse(junction), [0, w * part.leadH]))
}

function nodesOf({ filter, loadOhm, loadF }: SurgeCircuit, w: number, atConnector: Z, atLoad: Z): readonly Node[] {
  const { topology, capacitanceF, capacitance2F, inductanceH, inductance2H, dcrOhm } = filter
  const end = plus([1 / loadOhm, w * loadF], atLoad)
  const front = topology === 'C' || topology === 'CL' || topology === 'PI' ? capacitanceF : 0
  const connector = plus([0, w * front], atConnector)
  if (topology === 'none' || topology === 'C') return [{ shunt: plus(connector, end), onward: NONE }]
  const first: Node = { shunt: connector, onward: [dcrOhm, w * inductanceH] }
  if (topology === 'T')
    return [first, { shunt: [0, w * capacitanceF], onward: [dcrOhm, w * inductance2H] }, { shunt: end, onward: NONE }]
  const back = topology === 'LC' ? capacitanceF : topology === 'PI' ? capacitance2F : 0
  return [first, { shunt: plus([0, w * back], end), onward: NONE }]
}
