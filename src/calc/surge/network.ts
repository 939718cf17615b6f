/**
 * The circuit as a piecewise-linear system: E·z' = A·z + b·s(t) + c for each state of the suppressor, with E diagonal,
 * reduced to its capacitors and inductors. z: node volts, inductor amperes, volts of the coupling capacitor.
 */
import { FORWARD, LEAKAGE_SIE } from '../../reference/suppressors.ts'
import type { SurgeCircuit } from './circuit.ts'
import { type Draft, draftOf } from './draft.ts'
import { solveDense } from './matrix.ts'

/** One straight piece of the suppressor law: i = sie·v + offsetA for lowV ≤ v ≤ highV. */
export type Piece = {
  readonly sie: number
  readonly offsetA: number
  readonly lowV: number
  readonly highV: number
}

/** x' = a·x + b·s + c; watched volts = outX·x + outS·s + outC. */
export type Region = {
  readonly piece: Piece | undefined
  readonly size: number
  readonly a: Float64Array
  readonly b: Float64Array
  readonly c: Float64Array
  readonly outX: Float64Array
  readonly outS: Float64Array
  readonly outC: Float64Array
}

/** Order of the watched volts. `clamp` is across the junction, `terminal` at the far end of the suppressor's lead, `middle` where the capacitor of a T sits. */
export const WATCHED = ['connector', 'load', 'clamp', 'terminal', 'middle'] as const
const OUTS = WATCHED.length

export type Network = {
  readonly regions: readonly Region[]
  /** source volts (or amperes) at the peak, and the volts and amperes the answer cannot exceed by much */
  readonly drive: number
  /** source and state before the pulse: the load at its volts at rest, the suppressor blocked */
  readonly restDrive: number
  readonly restX: Float64Array
  readonly fullV: number
  readonly fullA: number
}

/** Assembles the circuit. Throws RangeError where the generator has no resistance at all. */
export function networkOf(circuit: SurgeCircuit): Network {
  const { draft, connector, load, clamp, terminal, middle, drive, ideal, seriesOhm } = draftOf(circuit)
  const { suppressor } = circuit
  const watched = [connector, load, clamp, terminal, middle]
  const pieces = suppressor ? piecesOf(suppressor) : [undefined]
  const regions = pieces.map((piece) => reduce(draft, piece, clamp, watched))
  const rest = restOf(regions[0], circuit.restV ?? 0)
  return {
    regions,
    drive,
    restDrive: rest.drive,
    restX: rest.x,
    fullV: Math.abs(circuit.restV ?? 0) + (ideal ? Math.abs(drive) * 10 : Math.abs(drive)),
    fullA: ideal ? Math.abs(drive) : Math.abs(drive) / seriesOhm,
  }
}

/** The steady state in which the load stands at `restV`: A·x + b·s = 0, s scaled until the load has its volts. */
function restOf(blocked: Region | undefined, restV: number): { drive: number; x: Float64Array } {
  const none = { drive: 0, x: new Float64Array(blocked?.size ?? 0) }
  if (!blocked || restV === 0) return none
  const n = blocked.size
  const perDrive =
    n === 0
      ? new Float64Array(0)
      : solveDense(
          blocked.a,
          blocked.b.map((each) => -each),
          n,
          1,
        )
  const load = WATCHED.indexOf('load')
  let gain = blocked.outS[load] ?? 0
  for (let i = 0; i < n; i++) gain += (blocked.outX[load * n + i] ?? 0) * (perDrive[i] ?? 0)
  // a capacitor in series passes no steady volts: nothing rests behind it
  if (!(Math.abs(gain) > 1e-12)) return none
  const drive = restV / gain
  return { drive, x: perDrive.map((each) => each * drive) }
}

/** Blocked, breakdown, and forward or the other breakdown. */
export function piecesOf({
  breakdownV,
  dynamicOhm,
  bidirectional,
}: NonNullable<SurgeCircuit['suppressor']>): readonly Piece[] {
  const sie = 1 / dynamicOhm
  const reverseV = bidirectional ? breakdownV : FORWARD.dropV
  const reverseSie = bidirectional ? sie : 1 / FORWARD.ohm
  return [
    { sie: LEAKAGE_SIE, offsetA: 0, lowV: -reverseV, highV: breakdownV },
    { sie: LEAKAGE_SIE + sie, offsetA: -breakdownV * sie, lowV: breakdownV, highV: Number.POSITIVE_INFINITY },
    { sie: LEAKAGE_SIE + reverseSie, offsetA: reverseV * reverseSie, lowV: Number.NEGATIVE_INFINITY, highV: -reverseV },
  ]
}

/** Eliminates the rows that store nothing. */
function reduce(draft: Draft, piece: Piece | undefined, clamp: number, watched: readonly number[]): Region {
  const total = draft.stored.length
  const cell = (row: number, column: number) =>
    (draft.rows[row]?.get(column) ?? 0) - (piece && row === clamp && column === clamp ? piece.sie : 0)
  const fixed = (row: number) => (draft.fixed[row] ?? 0) - (piece && row === clamp ? piece.offsetA : 0)
  const all = Array.from({ length: total }, (_, i) => i)
  const slow = all.filter((i) => (draft.stored[i] ?? 0) > 0)
  const fast = all.filter((i) => (draft.stored[i] ?? 0) === 0)
  const n = slow.length
  const width = n + 2
  // fast rows: 0 = Aff·zf + Afs·x + b·s + c, so zf = −Aff⁻¹·[Afs b c]·[x s 1]
  const aff = Float64Array.from(fast.flatMap((r) => fast.map((c) => -cell(r, c))))
  const right = Float64Array.from(fast.flatMap((r) => [...slow.map((c) => cell(r, c)), draft.drive[r] ?? 0, fixed(r)]))
  const follow = solveDense(aff, right, fast.length, width)
  const rowOf = (index: number): Float64Array => {
    const at = fast.indexOf(index)
    if (at >= 0) return follow.slice(at * width, (at + 1) * width)
    const unit = new Float64Array(width)
    unit[slow.indexOf(index)] = 1
    return unit
  }
  const a = new Float64Array(n * n)
  const b = new Float64Array(n)
  const c = new Float64Array(n)
  slow.forEach((row, r) => {
    const line = new Float64Array(width)
    for (const column of all) {
      const share = cell(row, column)
      if (share === 0) continue
      const from = rowOf(column)
      for (let i = 0; i < width; i++) line[i] = (line[i] ?? 0) + share * (from[i] ?? 0)
    }
    const stored = draft.stored[row] ?? 1
    for (let i = 0; i < n; i++) a[r * n + i] = (line[i] ?? 0) / stored
    b[r] = ((line[n] ?? 0) + (draft.drive[row] ?? 0)) / stored
    c[r] = ((line[n + 1] ?? 0) + fixed(row)) / stored
  })
  const outs = watched.map(rowOf)
  return {
    piece,
    size: n,
    a,
    b,
    c,
    outX: Float64Array.from(outs.flatMap((row) => [...row.slice(0, n)])),
    outS: Float64Array.from(outs, (row) => row[n] ?? 0),
    outC: Float64Array.from(outs, (row) => row[n + 1] ?? 0),
  }
}

/** Writes the watched volts of a state into `out`. */
export function watchInto(region: Region, x: Float64Array, s: number, out: Float64Array): void {
  const n = region.size
  for (let o = 0; o < OUTS; o++) {
    let sum = (region.outS[o] ?? 0) * s + (region.outC[o] ?? 0)
    for (let i = 0; i < n; i++) sum += (region.outX[o * n + i] ?? 0) * (x[i] ?? 0)
    out[o] = sum
  }
}

/** Current of the suppressor junction at a voltage, by the piece in force; 0 without a suppressor. */
export const junctionA = (region: Region, clampV: number): number =>
  region.piece ? region.piece.sie * clampV + region.piece.offsetA : 0
