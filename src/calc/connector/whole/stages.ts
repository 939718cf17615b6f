/** A filter as the stages between line and plate at one frequency, source side first. */
import type { FilterCircuit, SeriesPart, ShuntPart } from '../../network/circuit.ts'
import type { Complex } from '../complex.ts'
import { divide } from '../complex.ts'
import type { Stage } from '../shared-bond.ts'

type Element = { readonly coil: SeriesPart } | { readonly to: ShuntPart }

/** `nodes`: farads from line to plate before and behind everything. */
export function stagesOf(
  circuit: FilterCircuit,
  hz: number,
  nodes: { readonly sourceF: number; readonly loadF: number },
): readonly Stage[] {
  const w = 2 * Math.PI * hz
  const bare = (farads: number): readonly Stage[] => (farads > 0 ? [{ shuntSie: [0, w * farads] }] : [])
  return [
    ...bare(nodes.sourceF),
    ...elementsOf(circuit).map(
      (element): Stage =>
        'coil' in element ? { seriesOhm: coilOhm(element.coil, w, hz) } : { shuntSie: shuntSie(element.to, w) },
    ),
    ...bare(nodes.loadF),
  ]
}

function elementsOf({
  topology,
  shunt1,
  shunt2,
  series1,
  series2,
  choke,
  cross,
  damper,
}: FilterCircuit): readonly Element[] {
  const beside: readonly Element[] = [
    ...(damper === undefined || topology === 'L' ? [] : [{ to: damper }]),
    ...(cross === undefined ? [] : [{ to: cross }]),
  ]
  const own: readonly Element[] = {
    C: [{ to: shunt1 }, ...beside],
    L: [{ coil: series1 }, ...beside],
    LC: [{ coil: series1 }, { to: shunt1 }, ...beside],
    CL: [{ to: shunt1 }, ...beside, { coil: series1 }],
    PI: [{ to: shunt1 }, { coil: series1 }, { to: shunt2 }, ...beside],
    T: [{ coil: series1 }, { to: shunt1 }, ...beside, { coil: series2 }],
  }[topology]
  if (choke === undefined) return own
  return choke.side === 'source' ? [{ coil: choke.part }, ...own] : [...own, { coil: choke.part }]
}

/** Z = Rdc + jωL/(1 − ω²LCp + jωL/Rp). */
function coilOhm(
  { inductanceH, dcrOhm, parallelOhm, parallelF, impedance }: SeriesPart,
  w: number,
  hz: number,
): Complex {
  if (impedance !== undefined) {
    const [re, im] = impedance(hz)
    return [re, im]
  }
  const x = w * inductanceH
  const [re, im] = divide([0, x], [1 - w * x * parallelF, x / parallelOhm])
  return [dcrOhm + re, im]
}

/** Y = jωC/(1 − ω²·C·ESL + jωC·ESR). */
function shuntSie({ capacitanceF, esrOhm, eslH }: ShuntPart, w: number): Complex {
  const y = w * capacitanceF
  return divide([0, y], [1 - w * y * eslH, y * esrOhm])
}
