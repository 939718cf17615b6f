/**
 * Overshoot of a step through coil, capacitance (with a damping branch across it) and coil, by trapezoidal steps of its
 * state equations: currents of both coils, volts of both capacitors. Shares nothing with a solution by poles.
 */
export type StepCircuit = {
  readonly sourceOhm: number
  /** Infinity = a high impedance: the second coil carries nothing */
  readonly loadOhm: number
  readonly source1H: number
  readonly load2H: number
  readonly farads: number
  readonly dampF: number
  readonly dampOhm: number
}

const MOST_STEPS = 6000

/** Share by which the load goes over its end, 0 where it never does. */
export function overshootOf(q: StepCircuit): number {
  const { sourceOhm, loadOhm, source1H, load2H, farads, dampF, dampOhm } = q
  const isOpen = !Number.isFinite(loadOhm)
  const conductance = dampF > 0 ? 1 / dampOhm : 0
  // x' = A·x + b: i1, vC, vd, i2
  const rate = [
    [-sourceOhm / source1H, -1 / source1H, 0, 0],
    [1 / farads, -(conductance + (isOpen || load2H > 0 ? 0 : 1 / loadOhm)) / farads, conductance / farads, -1 / farads],
    [0, dampF > 0 ? conductance / dampF : 0, dampF > 0 ? -conductance / dampF : 0, 0],
    [0, isOpen || load2H === 0 ? 0 : 1 / load2H, 0, isOpen || load2H === 0 ? 0 : -loadOhm / load2H],
  ]
  const ringSec = 2 * Math.PI * Math.sqrt(source1H * farads)
  const slowSec = Math.max(
    sourceOhm * (farads + dampF),
    dampOhm * dampF,
    (source1H + load2H) / (sourceOhm + (isOpen ? 0 : loadOhm)),
  )
  const step = Math.min(ringSec / 60, slowSec / 60)
  const count = Math.min(MOST_STEPS, Math.ceil((3 * ringSec + 6 * slowSec) / step))
  const end = isOpen ? 1 : loadOhm / (sourceOhm + loadOhm)
  const ahead = inverse(rate.map((row, i) => row.map((value, j) => (i === j ? 1 : 0) - (step / 2) * value)))
  let x = [0, 0, 0, 0]
  let most = 0
  for (let k = 0; k < count; k++) {
    const now = rate.map((row, i) => (x[i] ?? 0) + (step / 2) * dot(row, x) + (i === 0 ? step / source1H : 0))
    x = ahead.map((row) => dot(row, now))
    most = Math.max(most, isOpen || load2H === 0 ? (x[1] ?? 0) : loadOhm * (x[3] ?? 0))
  }
  return Math.max(0, most / end - 1)
}

const dot = (row: readonly number[], x: readonly number[]): number =>
  row.reduce((sum, value, i) => sum + value * (x[i] ?? 0), 0)

/** Of a small matrix, by elimination with pivots. */
function inverse(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const n = matrix.length
  const rows = matrix.map((row, i) => [...row, ...Array.from({ length: n }, (_, j) => (i === j ? 1 : 0))])
  for (let k = 0; k < n; k++) {
    const pivot = rows.slice(k).reduce((best, row, i) => {
      const size = Math.abs(row[k] ?? 0)
      return size > Math.abs(rows[best]?.[k] ?? 0) ? k + i : best
    }, k)
    const swapped = rows[pivot] as number[]
    rows[pivot] = rows[k] as number[]
    rows[k] = swapped
    const by = swapped[k] ?? 1
    rows[k] = swapped.map((value) => value / by)
    for (let i = 0; i < n; i++) {
      if (i === k) continue
      const factor = rows[i]?.[k] ?? 0
      rows[i] = (rows[i] as number[]).map((value, j) => value - factor * (rows[k]?.[j] ?? 0))
    }
  }
  return rows.map((row) => row.slice(n))
}

/** Damping of the section of second order that goes over as much; Infinity where nothing does. */
export function dampingLike(overshoot: number): number {
  if (overshoot <= 1e-4) return Number.POSITIVE_INFINITY
  const log = Math.log(overshoot)
  return -log / Math.hypot(Math.PI, log)
}
