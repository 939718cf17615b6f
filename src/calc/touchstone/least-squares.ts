/**
 * Least squares of a curve that is not linear in its parameters, all of them above 0 (Levenberg and Marquardt): the step
 * solves (JᵀJ + λ·diag JᵀJ)·d = −Jᵀr in the logarithms of the parameters. Source: any text on numerical methods; derived.
 */
const MOST_STEPS = 80
const SETTLED = 1e-13
const STEP = 1e-6
/** No parameter moves by more than this factor in one step. */
const FURTHEST = Math.log(10)

export type Residuals = (parameters: readonly number[]) => Float64Array

export type Fit = { readonly parameters: readonly number[]; readonly sum: number }

const sumOf = (residuals: Float64Array): number => {
  let sum = 0
  for (const one of residuals) sum += one * one
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY
}

/** From `start` down to the nearest lowest sum of squares. */
export function leastSquares(residualsOf: Residuals, start: readonly number[]): Fit {
  let logs = start.map(Math.log)
  let residuals = residualsOf(start)
  let sum = sumOf(residuals)
  let damping = 1e-3
  for (let step = 0; step < MOST_STEPS && Number.isFinite(sum); step++) {
    const { normal, slope } = normalOf(residualsOf, logs, residuals)
    let isBetter = false
    for (; damping < 1e12 && !isBetter; damping *= 4) {
      const move = solved(normal, slope, damping)
      const next = logs.map((log, i) => log - Math.max(-FURTHEST, Math.min(FURTHEST, move[i] ?? 0)))
      const tried = residualsOf(next.map(Math.exp))
      const triedSum = sumOf(tried)
      if (!(triedSum < sum)) continue
      isBetter = sum - triedSum > SETTLED * sum
      logs = next
      residuals = tried
      sum = triedSum
      damping /= 20
      if (!isBetter) return { parameters: logs.map(Math.exp), sum }
    }
    if (!isBetter) break
    damping = Math.max(damping, 1e-12)
  }
  return { parameters: logs.map(Math.exp), sum }
}

/**
 * One standard error of each parameter as a share of it, from what is left over: √(s²·(JᵀJ)⁻¹ᵢᵢ) with s² = sum/(count −
 * parameters), J in logarithms. Infinite where a parameter changes nothing. Source: any text on regression.
 */
export function errorsOf(residualsOf: Residuals, { parameters, sum }: Fit): readonly number[] {
  const logs = parameters.map(Math.log)
  const residuals = residualsOf(parameters)
  const { normal } = normalOf(residualsOf, logs, residuals)
  const square = sum / Math.max(1, residuals.length - parameters.length)
  // in units of their own, so that a parameter which hardly counts does not drown
  const units = normal.map((row, i) => Math.sqrt(row[i] ?? 0))
  return units.map((unit, i) => {
    if (!(unit > 0)) return Number.POSITIVE_INFINITY
    const scaled = normal.map((row, k) => row.map((one, j) => one / ((units[k] || 1) * (units[j] || 1))))
    const inverse = solved(
      scaled,
      units.map((_, k) => (k === i ? 1 : 0)),
      1e-12,
    )[i]
    const share = Math.sqrt(square * Math.max(0, inverse ?? 0)) / unit
    return Number.isFinite(share) ? share : Number.POSITIVE_INFINITY
  })
}

function normalOf(residualsOf: Residuals, logs: readonly number[], residuals: Float64Array) {
  const columns = logs.map((_, i) => {
    const moved = residualsOf(logs.map((log, j) => Math.exp(j === i ? log + STEP : log)))
    return moved.map((one, k) => (one - (residuals[k] as number)) / STEP)
  })
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, one, k) => sum + one * (b[k] as number), 0)
  return {
    normal: columns.map((a) => columns.map((b) => dot(a, b))),
    slope: columns.map((a) => dot(a, residuals)),
  }
}

/** Gauss with the largest pivot; a parameter that changes nothing does not move. */
function solved(normal: readonly (readonly number[])[], slope: readonly number[], damping: number): readonly number[] {
  const size = slope.length
  const rows = normal.map((row, i) => {
    const own = row[i] ?? 0
    const damped = row.map((value, j) => (i === j ? value + damping * Math.max(own, 1e-30) : value))
    return [...damped, slope[i] as number]
  })
  for (let i = 0; i < size; i++) {
    let pivot = i
    for (let k = i + 1; k < size; k++) if (Math.abs(at(rows, k, i)) > Math.abs(at(rows, pivot, i))) pivot = k
    const top = rows[pivot] as number[]
    rows[pivot] = rows[i] as number[]
    rows[i] = top
    const head = top[i] as number
    if (head === 0) continue
    for (let k = i + 1; k < size; k++) {
      const share = at(rows, k, i) / head
      const row = rows[k] as number[]
      for (let j = i; j <= size; j++) row[j] = (row[j] as number) - share * (top[j] as number)
    }
  }
  const result = new Array<number>(size).fill(0)
  for (let i = size - 1; i >= 0; i--) {
    let value = at(rows, i, size)
    for (let j = i + 1; j < size; j++) value -= at(rows, i, j) * (result[j] as number)
    const head = at(rows, i, i)
    result[i] = head === 0 ? 0 : value / head
  }
  return result
}

const at = (rows: readonly (readonly number[])[], i: number, j: number): number => rows[i]?.[j] ?? 0
