/** The few points of a need that a filter has to be solved on first. */

/** Slopes of a loss curve in dB a decade: one, two, three elements rising, one and two falling above their resonance. */
const SLOPES_DB = [0, 20, 40, 60, -20, -40] as const

/**
 * Rows that touch a straight line of each slope laid over the need from above: whatever loss runs along such a line above
 * them is above every row. Rising, each once; none where nothing is needed.
 */
export function supportRows(hz: Float64Array, neededDb: Float64Array): readonly number[] {
  const best = SLOPES_DB.map(() => -1)
  const height = SLOPES_DB.map(() => Number.NEGATIVE_INFINITY)
  for (let i = 0; i < hz.length; i++) {
    const needed = neededDb[i] as number
    if (!(needed > 0)) continue
    const decades = Math.log10(hz[i] as number)
    for (let s = 0; s < SLOPES_DB.length; s++) {
      const above = needed - (SLOPES_DB[s] as number) * decades
      if (above <= (height[s] as number)) continue
      height[s] = above
      best[s] = i
    }
  }
  return [...new Set(best.filter((row) => row >= 0))].sort((a, b) => a - b)
}
