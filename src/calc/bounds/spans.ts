/** Stretches of an axis where everything asked still passes: what one interval of failure takes away. */

export type Stretch = readonly [number, number]

/** `passing` (ascending, apart) without the open interval `from`…`to`. */
export function without(passing: readonly Stretch[], from: number, to: number): Stretch[] {
  const left: Stretch[] = []
  for (const [a, b] of passing) {
    if (to <= a || from >= b) {
      left.push([a, b])
      continue
    }
    if (from > a) left.push([a, from])
    if (to < b) left.push([to, b])
  }
  return left
}

/** The intervals between passing stretches, the one below the first left out unless it begins inside. */
export function gapsBetween(passing: readonly Stretch[]): Stretch[] {
  return passing.slice(1).map(([from], i) => [(passing[i] as Stretch)[1], from])
}

/** Whether a stretch is more than rounding. */
export const isWide = ([a, b]: Stretch): boolean => b > a * (1 + 1e-9)
