/** Small dense matrices, row by row in one Float64Array. Sizes up to about 15. */

/** A copy of a·x = b solved by elimination with pivoting; `columns` right-hand sides side by side. Singular: RangeError. */
export function solveDense(a: Float64Array, b: Float64Array, size: number, columns: number): Float64Array {
  const m = a.slice()
  const x = b.slice()
  for (let p = 0; p < size; p++) {
    let pivot = p
    for (let r = p + 1; r < size; r++)
      if (Math.abs(m[r * size + p] ?? 0) > Math.abs(m[pivot * size + p] ?? 0)) pivot = r
    const top = m[pivot * size + p] ?? 0
    if (top === 0) throw new RangeError('a node of the circuit is tied to nothing')
    if (pivot !== p) {
      swapRows(m, size, p, pivot)
      swapRows(x, columns, p, pivot)
    }
    for (let r = 0; r < size; r++) {
      if (r === p) continue
      const share = (m[r * size + p] ?? 0) / top
      if (share === 0) continue
      addRow(m, size, r, p, -share)
      addRow(x, columns, r, p, -share)
    }
  }
  for (let r = 0; r < size; r++) {
    const top = m[r * size + r] ?? 1
    for (let c = 0; c < columns; c++) x[r * columns + c] = (x[r * columns + c] ?? 0) / top
  }
  return x
}

function swapRows(m: Float64Array, width: number, a: number, b: number): void {
  for (let c = 0; c < width; c++) {
    const held = m[a * width + c] ?? 0
    m[a * width + c] = m[b * width + c] ?? 0
    m[b * width + c] = held
  }
}

function addRow(m: Float64Array, width: number, to: number, from: number, share: number): void {
  for (let c = 0; c < width; c++) m[to * width + c] = (m[to * width + c] ?? 0) + share * (m[from * width + c] ?? 0)
}

/** out = a·b, all square. */
export function multiplyInto(a: Float64Array, b: Float64Array, size: number, out: Float64Array): void {
  out.fill(0)
  for (let r = 0; r < size; r++) {
    for (let k = 0; k < size; k++) {
      const share = a[r * size + k] ?? 0
      if (share === 0) continue
      const to = r * size
      const from = k * size
      for (let c = 0; c < size; c++) out[to + c] = (out[to + c] ?? 0) + share * (b[from + c] ?? 0)
    }
  }
}

const TERMS = 11

/**
 * e^a − 1 of a square matrix. Scaled until its norm is below ¼, Taylor to the 11th power, then doubled by
 * E(2a) = 2·E + E². Carrying E instead of e^a keeps the slow modes exact when fast ones force many doublings.
 */
export function exponentialMinusOne(a: Float64Array, size: number): Float64Array {
  let norm = 0
  for (let r = 0; r < size; r++) {
    let sum = 0
    for (let c = 0; c < size; c++) sum += Math.abs(a[r * size + c] ?? 0)
    norm = Math.max(norm, sum)
  }
  if (!Number.isFinite(norm)) throw new RangeError('a part of the circuit is too small or too large to follow')
  const doublings = norm > 0.25 ? Math.ceil(Math.log2(norm / 0.25)) : 0
  const scale = 2 ** -doublings
  const scaled = a.map((x) => x * scale)
  let e = taylor(scaled, size)
  let square: Float64Array = new Float64Array(size * size)
  for (let i = 0; i < doublings; i++) {
    multiplyInto(e, e, size, square)
    for (let j = 0; j < e.length; j++) square[j] = (square[j] ?? 0) + 2 * (e[j] ?? 0)
    ;[e, square] = [square, e]
  }
  return e
}

/** a + a²/2 + … by Horner: a·(1 + a/2·(1 + a/3·(…))). */
function taylor(a: Float64Array, size: number): Float64Array {
  let sum: Float64Array = new Float64Array(size * size)
  let next: Float64Array = new Float64Array(size * size)
  for (let n = TERMS; n >= 1; n--) {
    multiplyInto(a, sum, size, next)
    for (let j = 0; j < a.length; j++) next[j] = ((next[j] ?? 0) + (a[j] ?? 0)) / n
    ;[sum, next] = [next, sum]
  }
  return sum
}
