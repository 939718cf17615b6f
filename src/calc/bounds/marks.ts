/** Points of a box and the marked figures they can be parts of. Source: derived. */
import type { Feasible } from './certify.ts'
import type { Demand } from './demand.ts'

/** Two capacitors of one mark: a pair of values counts only when one marked figure can be both. */
export function feasibleMarks(demand: Demand): Feasible | undefined {
  const grown = demand.ranges.filter(({ scale }) => scale.most > 0)
  if (grown.length < 2) return undefined
  return (low, high) => {
    let most = Number.POSITIVE_INFINITY
    let least = 0
    for (let i = 0; i < demand.ranges.length; i++) {
      const { scale, fixed } = demand.ranges[i] as Demand['ranges'][number]
      if (!(scale.most > 0)) continue
      if (scale.least > 0) most = Math.min(most, ((high[i] as number) - fixed.least) / scale.least)
      least = Math.max(least, ((low[i] as number) - fixed.most) / scale.most)
    }
    return least <= most * (1 + 1e-12)
  }
}

/** Values of every part of a point of the box, where no frequency is there to work them out on the way through it. */
export function placeValues(demand: Demand, place: readonly number[], marked: number, values: Float64Array): void {
  demand.ranges.forEach(({ scale, fixed }, i) => {
    const at = place[i] as number
    values[i] = marked * (scale.least + at * (scale.most - scale.least)) + fixed.least + at * (fixed.most - fixed.least)
  })
}
