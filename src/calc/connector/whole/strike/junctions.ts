/** Which piece of every junction is in force, and how far one has gone beyond its own. */
import type { Piece } from '../../../surge/network.ts'
import type { Pieces } from './factor.ts'
import { FIRST_RAIL, type System } from './system.ts'

/** Unknowns of every line, and of the edge. */
export type State = { readonly lines: readonly Float64Array[]; readonly edge: Float64Array }

type Seen = {
  readonly volts: number
  readonly piece: Piece
  readonly all: readonly Piece[]
  readonly set: (to: number) => void
}

function eachJunction(
  { lines, rails }: System,
  pieces: Pieces,
  { lines: x, edge }: State,
  see: (seen: Seen) => void,
): void {
  lines.forEach(({ junctions }, k) => {
    const inForce = pieces.lines[k] as Uint8Array
    junctions.forEach(({ node, rail, pieces: all }, j) => {
      const piece = all[inForce[j] as number]
      if (piece === undefined) return
      const volts = (x[k]?.[node] as number) - (rail === undefined ? 0 : (edge[FIRST_RAIL + rail] as number))
      see({ volts, piece, all, set: (to) => inForce.fill(to, j, j + 1) })
    })
  })
  rails.forEach(({ pieces: all }, r) => {
    const piece = all[pieces.rails[r] as number]
    if (piece !== undefined)
      see({ volts: edge[FIRST_RAIL + r] as number, piece, all, set: (to) => pieces.rails.fill(to, r, r + 1) })
  })
}

/** How far the junction that is farthest beyond its piece is, as a share of its volts and one more; below 0 = none is. */
export function farthestBeyond(system: System, pieces: Pieces, state: State): number {
  let most = Number.NEGATIVE_INFINITY
  eachJunction(system, pieces, state, ({ volts, piece }) => {
    const scale = 1 + Math.abs(volts)
    most = Math.max(most, (volts - piece.highV) / scale, (piece.lowV - volts) / scale)
  })
  return most
}

/** Every junction that is beyond its piece goes over to the piece it is in. */
export function changePieces(system: System, pieces: Pieces, state: State): void {
  eachJunction(system, pieces, state, ({ volts, piece, all, set }) => {
    if (volts >= piece.lowV && volts <= piece.highV) return
    const to = all.findIndex(({ lowV, highV }) => volts >= lowV && volts <= highV)
    if (to >= 0) set(to)
  })
}
