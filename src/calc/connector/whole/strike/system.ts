/**
 * The rows of all lines and of what they share: E·z' = A·z + b·s + c with an edge.
 *
 * Node volts u of a line are counted from the plate, so that filter and suppressor store and conduct by u alone. What goes
 * to the reference sees the plate: the source s − vp, the load u + vp with its capacitance. The edge holds
 *   plate   Σ C·u' + Σ i_junction = i_b,   bond   L·i_b' = vp − R·i_b,   each rail   C·w' = Σ i_steering − i_part
 * Junctions are straight pieces, in force one at a time. Source: nodal rows (derived); held against ngspice.
 */
import { FORWARD, LEAKAGE_SIE, LEAST_NODE_F } from '../../../../reference/suppressors.ts'
import { draftOf } from '../../../surge/draft.ts'
import { solveDense } from '../../../surge/matrix.ts'
import { type Piece, piecesOf } from '../../../surge/network.ts'
import type { SharedPart, Struck, StruckLine } from './together.ts'

/** Columns of the edge: plate volts, bond amperes, then the rails. */
export const [PLATE, BOND, FIRST_RAIL] = [0, 1, 2] as const

/** A junction between a node of a line and the plate (`rail` absent) or a rail. */
export type Junction = {
  readonly node: number
  readonly rail?: number
  readonly pieces: readonly Piece[]
  /** the suppressor itself, not a steering diode */
  readonly isPart: boolean
}

export type LineRows = {
  readonly size: number
  readonly count: number
  /** on the diagonal of E, by row; `toPlateF`: what of it goes to the plate */
  readonly stored: Float64Array
  readonly toPlateF: Float64Array
  readonly a: Float64Array
  /** of the source; drive = what it is at the peak of the shape */
  readonly b: Float64Array
  readonly drive: number
  readonly restDrive: number
  readonly restX: Float64Array
  /** of the plate volts: in A, and in E where a load capacitance stands on the reference */
  readonly plateA: Float64Array
  readonly plateE: Float64Array
  readonly junctions: readonly Junction[]
  readonly connector: number
  readonly load: number
  readonly capacitorNodes: readonly number[]
  /** volts and amperes the answer cannot exceed by much */
  readonly fullV: number
  readonly fullA: number
}

export type RailRows = {
  readonly group: number
  readonly farads: number
  readonly pieces: readonly Piece[]
  /** volts at which the part behind the drops breaks down, with its sign */
  readonly onV: number
  readonly dropV: number
  readonly dropOhm: number
  readonly restV: number
}

export type System = {
  readonly lines: readonly LineRows[]
  readonly rails: readonly RailRows[]
  readonly bondOhm: number
  readonly bondH: number
}

/** Assembles everything. Throws RangeError where a generator has no resistance. */
export function systemOf({ lines, groups, bondOhm, bondH }: Struck): System {
  const rests = groups.map((_, g) => lines.filter(({ group }) => group === g).map(({ circuit }) => circuit.restV ?? 0))
  const railOf = new Map<string, number>()
  const rails: RailRows[] = []
  groups.forEach((part, g) => {
    for (const sign of part.isBridge ? ([1, -1] as const) : ([1] as const)) {
      railOf.set(`${g} ${sign}`, rails.length)
      rails.push(railRows(part, g, sign, rests[g] ?? []))
    }
  })
  return {
    lines: lines.map((line) => lineRows(line, groups, (group, sign) => railOf.get(`${group} ${sign}`))),
    rails,
    bondOhm,
    bondH,
  }
}

/** The part from its rail to the plate, a second forward drop behind it. At rest the rail stands at the highest line. */
function railRows(part: SharedPart, group: number, sign: 1 | -1, restV: readonly number[]): RailRows {
  const { breakdownV, dynamicOhm, capacitanceF } = part
  const onV = breakdownV + FORWARD.dropV
  const sie = 1 / (dynamicOhm + FORWARD.ohm)
  const blocked: Piece = {
    sie: LEAKAGE_SIE,
    offsetA: 0,
    lowV: sign > 0 ? Number.NEGATIVE_INFINITY : -onV,
    highV: sign > 0 ? onV : Number.POSITIVE_INFINITY,
  }
  const conducts: Piece = {
    sie: LEAKAGE_SIE + sie,
    offsetA: -sign * onV * sie,
    lowV: sign > 0 ? onV : Number.NEGATIVE_INFINITY,
    highV: sign > 0 ? Number.POSITIVE_INFINITY : -onV,
  }
  const highest = sign > 0 ? Math.max(0, ...restV) : Math.min(0, ...restV)
  return {
    group,
    farads: Math.max(LEAST_NODE_F, capacitanceF),
    pieces: [blocked, conducts],
    onV: sign * onV,
    dropV: FORWARD.dropV,
    dropOhm: FORWARD.ohm,
    restV: sign * Math.min(0.999 * onV, Math.abs(highest)),
  }
}

function lineRows(
  { circuit, count, group }: StruckLine,
  groups: readonly SharedPart[],
  railOf: (group: number, sign: 1 | -1) => number | undefined,
): LineRows {
  const { draft, connector, load, clamp, terminal, middle, drive, ideal, seriesOhm } = draftOf(circuit)
  const size = draft.stored.length
  const stored = Float64Array.from(draft.stored)
  const toPlateF = new Float64Array(size)
  for (const node of new Set([connector, load, clamp, terminal, middle])) toPlateF[node] = stored[node] as number
  toPlateF[load] = (toPlateF[load] as number) - circuit.loadF
  const a = new Float64Array(size * size)
  draft.rows.forEach((row, r) => {
    for (const [c, value] of row) a[r * size + c] = value
  })
  const b = Float64Array.from(draft.drive)
  const plateA = new Float64Array(size)
  if (!ideal) for (let r = 0; r < size; r++) plateA[r] = -(b[r] as number)
  plateA[load] = (plateA[load] as number) - 1 / circuit.loadOhm
  const plateE = new Float64Array(size)
  plateE[load] = circuit.loadF
  const part = group === undefined ? undefined : groups[group]
  const junctions: readonly Junction[] =
    group !== undefined && part !== undefined
      ? steering(terminal, part, railOf(group, 1), railOf(group, -1))
      : circuit.suppressor
        ? [{ node: clamp, pieces: piecesOf(circuit.suppressor), isPart: true }]
        : []
  const { topology } = circuit.filter
  const rest = restOf({ size, a, b, junctions, load, restV: circuit.restV ?? 0 })
  const fullV = Math.abs(circuit.restV ?? 0) + Math.abs(drive) * (ideal ? 10 : 1)
  return {
    size,
    count,
    stored,
    toPlateF,
    a,
    b,
    drive,
    restDrive: rest.drive,
    restX: rest.x,
    plateA,
    plateE,
    junctions,
    connector,
    load,
    capacitorNodes:
      topology === 'none' || topology === 'L'
        ? []
        : topology === 'LC' || topology === 'T'
          ? [middle]
          : topology === 'PI'
            ? [connector, load]
            : [connector],
    fullV,
    fullA: ideal ? Math.abs(drive) : fullV / seriesOhm,
  }
}

/** Up into the rail; the other sign into the other rail, or into the plate. */
function steering(
  node: number,
  part: SharedPart,
  up: number | undefined,
  down: number | undefined,
): readonly Junction[] {
  const sie = 1 / FORWARD.ohm
  const blocked = (lowV: number, highV: number): Piece => ({ sie: LEAKAGE_SIE, offsetA: 0, lowV, highV })
  const forward: readonly Piece[] = [
    blocked(Number.NEGATIVE_INFINITY, FORWARD.dropV),
    { sie: LEAKAGE_SIE + sie, offsetA: -FORWARD.dropV * sie, lowV: FORWARD.dropV, highV: Number.POSITIVE_INFINITY },
  ]
  const backward: readonly Piece[] = [
    blocked(-FORWARD.dropV, Number.POSITIVE_INFINITY),
    { sie: LEAKAGE_SIE + sie, offsetA: FORWARD.dropV * sie, lowV: Number.NEGATIVE_INFINITY, highV: -FORWARD.dropV },
  ]
  return [
    ...(up === undefined ? [] : [{ node, rail: up, pieces: forward, isPart: false }]),
    { node, ...(part.isBridge && down !== undefined ? { rail: down } : {}), pieces: backward, isPart: false },
  ]
}

/** The steady state in which the load stands at its volts, the plate at rest and every junction blocked. */
function restOf(given: {
  readonly size: number
  readonly a: Float64Array
  readonly b: Float64Array
  readonly junctions: readonly Junction[]
  readonly load: number
  readonly restV: number
}): { readonly drive: number; readonly x: Float64Array } {
  const { size, a, b, junctions, load, restV } = given
  const x = new Float64Array(size)
  if (restV === 0) return { drive: 0, x }
  const m = a.map((value) => -value)
  for (const { node } of junctions) m[node * size + node] = (m[node * size + node] as number) + LEAKAGE_SIE
  const perDrive = solveDense(m, b, size, 1)
  const gain = perDrive[load] as number
  // a capacitor in series passes no steady volts: nothing rests behind it
  if (!(Math.abs(gain) > 1e-12)) return { drive: 0, x }
  return { drive: restV / gain, x: perDrive.map((value) => (value * restV) / gain) }
}
