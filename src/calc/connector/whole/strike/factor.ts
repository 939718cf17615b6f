/** The implicit rows E − γh·A of one step length and one set of pieces, ready to be solved: lines by themselves, then their edge. */
import { solveDense } from '../../../surge/matrix.ts'
import { BOND, FIRST_RAIL, type LineRows, PLATE, type System } from './system.ts'
import { GAMMA } from './tableau.ts'

/** Which piece of each junction is in force, line by line, then of each rail. */
export type Pieces = { readonly lines: readonly Uint8Array[]; readonly rails: Uint8Array }

export type Factor = {
  /** inverse of the rows of each line, and that times its columns of the edge */
  readonly inverses: readonly Float64Array[]
  readonly reaches: readonly Float64Array[]
  /** rows of the edge over each line's unknowns */
  readonly edges: readonly Float64Array[]
  readonly corner: Float64Array
  readonly width: number
}

export const edgeWidth = ({ rails }: System): number => FIRST_RAIL + rails.length

export function factorOf(system: System, pieces: Pieces, stepSec: number): Factor {
  const width = edgeWidth(system)
  const gh = GAMMA * stepSec
  const corner = cornerOf(system, pieces, gh, width)
  const inverses: Float64Array[] = []
  const reaches: Float64Array[] = []
  const edges: Float64Array[] = []
  system.lines.forEach((line, k) => {
    const { columns, rows, inverse } = lineOf(line, pieces.lines[k] as Uint8Array, gh, width)
    const reach = times(inverse, columns, line.size, line.size, width)
    const back = times(rows, reach, width, line.size, width)
    for (let i = 0; i < corner.length; i++) corner[i] = (corner[i] as number) - (back[i] as number)
    // the corner's own share of junctions to a rail
    inverses.push(inverse)
    reaches.push(reach)
    edges.push(rows)
  })
  const unit = new Float64Array(width * width)
  for (let i = 0; i < width; i++) unit[i * width + i] = 1
  return { inverses, reaches, edges, corner: solveDense(corner, unit, width, width), width }
}

/** What the edge stores and conducts by itself: bond, rails with their parts, and steering diodes seen from their rail. */
function cornerOf({ lines, rails, bondOhm, bondH }: System, pieces: Pieces, gh: number, width: number): Float64Array {
  const m = new Float64Array(width * width)
  const put = (row: number, column: number, value: number) => {
    m[row * width + column] = (m[row * width + column] as number) + value
  }
  put(PLATE, BOND, -gh)
  put(BOND, PLATE, -gh)
  put(BOND, BOND, bondH + gh * bondOhm)
  rails.forEach(({ farads, pieces: own }, r) => {
    const sie = own[pieces.rails[r] as number]?.sie ?? 0
    put(FIRST_RAIL + r, FIRST_RAIL + r, farads + gh * sie)
    put(PLATE, FIRST_RAIL + r, farads + gh * sie)
  })
  lines.forEach(({ junctions, count }, k) => {
    junctions.forEach(({ rail, pieces: own }, j) => {
      if (rail === undefined) return
      put(FIRST_RAIL + rail, FIRST_RAIL + rail, gh * count * (own[pieces.lines[k]?.[j] as number]?.sie ?? 0))
    })
  })
  return m
}

function lineOf(line: LineRows, inForce: Uint8Array, gh: number, width: number) {
  const { size, count, stored, toPlateF, a, plateA, plateE, junctions } = line
  const m = new Float64Array(size * size)
  const columns = new Float64Array(size * width)
  const rows = new Float64Array(width * size)
  for (let r = 0; r < size; r++) {
    for (let c = 0; c < size; c++) m[r * size + c] = -gh * (a[r * size + c] as number)
    m[r * size + r] = (m[r * size + r] as number) + (stored[r] as number)
    columns[r * width + PLATE] = (plateE[r] as number) - gh * (plateA[r] as number)
    rows[PLATE * size + r] = count * (toPlateF[r] as number)
  }
  junctions.forEach(({ node, rail, pieces }, j) => {
    const sie = gh * (pieces[inForce[j] as number]?.sie ?? 0)
    m[node * size + node] = (m[node * size + node] as number) + sie
    const edge = rail === undefined ? PLATE : FIRST_RAIL + rail
    if (rail === undefined) rows[edge * size + node] = (rows[edge * size + node] as number) + count * sie
    else {
      columns[node * width + edge] = (columns[node * width + edge] as number) - sie
      rows[edge * size + node] = (rows[edge * size + node] as number) - count * sie
    }
  })
  const unit = new Float64Array(size * size)
  for (let i = 0; i < size; i++) unit[i * size + i] = 1
  return { columns, rows, inverse: solveDense(m, unit, size, size) }
}

/** a (rows × inner) · b (inner × columns). */
export function times(a: Float64Array, b: Float64Array, rows: number, inner: number, columns: number): Float64Array {
  const out = new Float64Array(rows * columns)
  for (let r = 0; r < rows; r++)
    for (let k = 0; k < inner; k++) {
      const share = a[r * inner + k] as number
      if (share === 0) continue
      for (let c = 0; c < columns; c++)
        out[r * columns + c] = (out[r * columns + c] as number) + share * (b[k * columns + c] as number)
    }
  return out
}
