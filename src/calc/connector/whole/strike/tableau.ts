/**
 * The step: a singly diagonally implicit Runge–Kutta formula of five stages, order 4 with one of order 3 inside it, L-stable
 * and ending on its last stage (E. Hairer, G. Wanner, "Solving Ordinary Differential Equations II", table 6.5, from
 * memory). That it has its order, the tests say by its conditions; what is stiff dies out, and every equation without a
 * store of energy holds at the end of a step.
 */
export const GAMMA = 1 / 4
export const STAGES = 5

/** Row by row, the diagonal left out. */
export const BEFORE: readonly (readonly number[])[] = [
  [],
  [1 / 2],
  [17 / 50, -1 / 25],
  [371 / 1360, -137 / 2720, 15 / 544],
  [25 / 24, -49 / 48, 125 / 16, -85 / 12],
]

export const AT: readonly number[] = [1 / 4, 3 / 4, 11 / 20, 1 / 2, 1]
export const WEIGHTS: readonly number[] = [25 / 24, -49 / 48, 125 / 16, -85 / 12, 1 / 4]
/** Those of order 3, taken off. */
export const WRONG: readonly number[] = [
  25 / 24 - 59 / 48,
  -49 / 48 + 17 / 96,
  125 / 16 - 225 / 32,
  -85 / 12 + 85 / 12,
  1 / 4,
]
