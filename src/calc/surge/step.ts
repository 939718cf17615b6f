/** One step of a linear circuit whose source is a parabola over the step, exact. Seconds, SI. */
import { exponentialMinusOne } from './matrix.ts'
import type { Region } from './network.ts'

export type StepMatrix = {
  readonly phi: Float64Array
  readonly start: Float64Array
  readonly middle: Float64Array
  readonly end: Float64Array
  readonly fixed: Float64Array
}

/** x(h) − x(0) over one step: Φ·x + α·s(0) + β·s(h/2) + γ·s(h) + k, from the exponential of the widened matrix. */
export function stepMatrix(region: Region, stepSec: number): StepMatrix {
  const n = region.size
  const w = n + 4
  const m = new Float64Array(w * w)
  for (let r = 0; r < n; r++) {
    for (let c = 0; c < n; c++) m[r * w + c] = (region.a[r * n + c] ?? 0) * stepSec
    m[r * w + n] = (region.b[r] ?? 0) * stepSec
    m[r * w + n + 3] = (region.c[r] ?? 0) * stepSec
  }
  // the source and its two derivatives over the step, time scaled to 0…1
  m[n * w + n + 1] = 1
  m[(n + 1) * w + n + 2] = 1
  const e = exponentialMinusOne(m, w)
  const phi = new Float64Array(n * n)
  const start = new Float64Array(n)
  const middle = new Float64Array(n)
  const end = new Float64Array(n)
  const fixed = new Float64Array(n)
  for (let r = 0; r < n; r++) {
    for (let c = 0; c < n; c++) phi[r * n + c] = e[r * w + c] ?? 0
    const u = e[r * w + n] ?? 0
    const du = e[r * w + n + 1] ?? 0
    const ddu = e[r * w + n + 2] ?? 0
    // u' = −3s0 + 4sm − s1, u'' = 4s0 − 8sm + 4s1
    start[r] = u - 3 * du + 4 * ddu
    middle[r] = 4 * du - 8 * ddu
    end[r] = -du + 4 * ddu
    fixed[r] = e[r * w + n + 3] ?? 0
  }
  return { phi, start, middle, end, fixed }
}
