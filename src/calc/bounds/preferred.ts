/** Preferred values near a target (IEC 60063). */
import { E6, E12 } from '../../reference/preferred-values.ts'

export type Proposal = { readonly valueF: number; readonly series: 'E6' | 'E12' }

/**
 * The value of a series inside [least, most] nearest to the target by log distance; undefined when none lies inside.
 * Farads, all > 0; `mostF` may be Infinity.
 */
export function nearestInside(
  series: readonly number[],
  targetF: number,
  leastF: number,
  mostF: number,
): number | undefined {
  let best: number | undefined
  const centre = Math.floor(Math.log10(targetF))
  const from = leastF > 0 ? Math.floor(Math.log10(leastF)) : centre - 1
  const to = Number.isFinite(mostF) ? Math.floor(Math.log10(mostF)) : centre + 1
  for (let decade = from; decade <= to; decade++) {
    for (const digit of series) {
      // toPrecision undoes the rounding of 10^decade, so that 4.7 n is 4.7e-9 exactly.
      const value = Number((digit * 10 ** decade).toPrecision(3))
      if (value < leastF || value > mostF) continue
      const distance = Math.abs(Math.log(value / targetF))
      if (best === undefined || distance < Math.abs(Math.log(best / targetF))) best = value
    }
  }
  return best
}

/**
 * Proposal for a window: target min(2·least, √(least·most)), or 2·least when no most is known;
 * nearest E6 value inside, else E12, else undefined ("open, but no standard value").
 * Source: IEC 60063 series; the target is common practice (6 dB above the least, never past the middle).
 */
export function proposeF(leastF: number, mostF: number): Proposal | undefined {
  if (!(leastF > 0) || mostF < leastF) return undefined
  const targetF = Number.isFinite(mostF) ? Math.min(2 * leastF, Math.sqrt(leastF * mostF)) : 2 * leastF
  const six = nearestInside(E6, targetF, leastF, mostF)
  if (six !== undefined) return { valueF: six, series: 'E6' }
  const twelve = nearestInside(E12, targetF, leastF, mostF)
  return twelve === undefined ? undefined : { valueF: twelve, series: 'E12' }
}
