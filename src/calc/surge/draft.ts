/**
 * A surge circuit as rows E·z' = A·z + b·s(t) + c, E diagonal, the suppressor's junction left out: what a solver of one
 * line and of several lines on one plate start from. z: node volts, inductor amperes, volts of the coupling capacitor.
 */
import { LEAST_NODE_F } from '../../reference/suppressors.ts'
import type { SurgeCircuit } from './circuit.ts'

/**
 * Stray conductance of nodes that carry no capacitor, in S. Between inductors alone it keeps a node defined, and keeps
 * the rounding of large currents from becoming volts there; a 100,000th of the source's own, so it moves no figure.
 */
const straySie = (seriesOhm: number): number => (Number.isFinite(seriesOhm) ? Math.max(1e-7, 1e-5 / seriesOhm) : 1e-6)

export type Draft = {
  readonly stored: number[]
  readonly rows: Map<number, number>[]
  readonly drive: number[]
  readonly fixed: number[]
}

export type Drafted = {
  readonly draft: Draft
  /** rows of the nodes; `clamp`: where the junction stands, `terminal`: the far end of its lead, `middle`: of a T */
  readonly connector: number
  readonly load: number
  readonly clamp: number
  readonly terminal: number
  readonly middle: number
  /** of the source at its peak: volts, or amperes of an ideal current source */
  readonly drive: number
  readonly ideal: boolean
  readonly seriesOhm: number
}

/** Assembles the circuit. Throws RangeError where the generator has no resistance at all. */
export function draftOf(circuit: SurgeCircuit): Drafted {
  const ideal = circuit.source.form === 'current' && !Number.isFinite(circuit.source.ohm)
  const seriesOhm = circuit.source.ohm + circuit.lineOhm
  if (!(seriesOhm > 0)) throw new RangeError('a surge needs a source resistance above 0 Ω')
  const draft: Draft = { stored: [], rows: [], drive: [], fixed: [] }
  const add = (stored = 0): number => {
    draft.rows.push(new Map())
    draft.drive.push(0)
    draft.fixed.push(0)
    return draft.stored.push(stored) - 1
  }
  const bump = (row: number, column: number, by: number) =>
    draft.rows[row]?.set(column, (draft.rows[row]?.get(column) ?? 0) + by)
  const charge = (node: number, farads: number) => {
    draft.stored[node] = (draft.stored[node] ?? 0) + farads
  }
  /** current flows from → to; `from` undefined = the generator */
  const coil = (from: number | undefined, to: number, henries: number, ohm: number): number => {
    const branch = add(henries)
    bump(branch, branch, -ohm)
    bump(branch, to, -1)
    bump(to, branch, 1)
    if (from !== undefined) {
      bump(branch, from, 1)
      bump(from, branch, -1)
    }
    return branch
  }

  const connector = add()
  const drive =
    ideal || circuit.source.form === 'voltage' ? circuit.source.peak : circuit.source.peak * circuit.source.ohm
  feed({ circuit, draft, ideal, seriesOhm, connector, add, bump, coil })
  const { middle, load } = filterInto({ circuit, connector, add, charge, coil })
  bump(load, load, -1 / circuit.loadOhm)
  charge(load, circuit.loadF)
  const { suppressor } = circuit
  const terminal = circuit.placement === 'connector' ? connector : load
  let clamp = terminal
  if (suppressor) {
    if (suppressor.leadH > 0) {
      clamp = add()
      coil(terminal, clamp, suppressor.leadH, 0)
    }
    // without it the current left in the lead when the junction blocks again would become any voltage
    const leastF = suppressor.leadH > 0 ? LEAST_NODE_F : 0
    charge(clamp, Math.max(leastF, suppressor.capacitanceF))
  }
  const stray = straySie(seriesOhm)
  for (let i = 0; i < draft.stored.length; i++) if (draft.stored[i] === 0) bump(i, i, -stray)
  return { draft, connector, load, clamp, terminal, middle, drive, ideal, seriesOhm }
}

type Feed = {
  readonly circuit: SurgeCircuit
  readonly draft: Draft
  readonly ideal: boolean
  readonly seriesOhm: number
  readonly connector: number
  readonly add: (stored?: number) => number
  readonly bump: (row: number, column: number, by: number) => void
  readonly coil: (from: number | undefined, to: number, henries: number, ohm: number) => number
}

/** The generator with its series parts, into the connector. */
function feed({ circuit, draft, ideal, seriesOhm, connector, add, bump, coil }: Feed): void {
  if (ideal) {
    // whatever stands in series with an ideal current source changes nothing behind it
    draft.drive[connector] = 1
    return
  }
  const coupling = circuit.couplingF === undefined ? undefined : add(circuit.couplingF)
  if (circuit.lineH > 0) {
    const branch = coil(undefined, connector, circuit.lineH, seriesOhm)
    draft.drive[branch] = 1
    if (coupling !== undefined) {
      bump(branch, coupling, -1)
      bump(coupling, branch, 1)
    }
    return
  }
  const sie = 1 / seriesOhm
  draft.drive[connector] = sie
  bump(connector, connector, -sie)
  if (coupling === undefined) return
  bump(connector, coupling, -sie)
  draft.drive[coupling] = sie
  bump(coupling, coupling, -sie)
  bump(coupling, connector, -sie)
}

type Filter = Pick<Feed, 'circuit' | 'connector' | 'add' | 'coil'> & {
  readonly charge: (node: number, farads: number) => void
}

/** The filter from the connector on; gives the node behind its first inductor and the load node. */
function filterInto({ circuit, connector, add, charge, coil }: Filter): { middle: number; load: number } {
  const { topology, capacitanceF, capacitance2F, inductanceH, inductance2H, dcrOhm } = circuit.filter
  if (topology === 'C' || topology === 'CL' || topology === 'PI') charge(connector, capacitanceF)
  if (topology === 'none' || topology === 'C') return { middle: connector, load: connector }
  const middle = add()
  coil(connector, middle, inductanceH, dcrOhm)
  if (topology === 'LC') charge(middle, capacitanceF)
  if (topology === 'PI') charge(middle, capacitance2F)
  if (topology !== 'T') return { middle, load: middle }
  charge(middle, capacitanceF)
  const load = add()
  coil(middle, load, inductance2H, dcrOhm)
  return { middle, load }
}
