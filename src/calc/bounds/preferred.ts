/** Preferred values near a target (IEC 60063), the one that is best where several would do. */
import { E6, E12 } from '../../reference/preferred-values.ts'
import type { Verdict } from '../terms.ts'
import { VERDICT_RANK } from '../verdict.ts'

export type Proposal = { readonly valueF: number; readonly series: 'E6' | 'E12' }

/** A proposal with what it would be, the bounds of the capacitance apart. */
export type Judged = Proposal & { readonly verdict: Verdict }

/** Below this nobody sells or marks a capacitor: a contact alone has more. Common practice. */
const SMALLEST_F = 0.1e-12

/**
 * Values of a series inside [least, most], nearest to the target by log distance first. Farads, all > 0; `mostF` may be
 * Infinity: the series then ends a decade above the target.
 */
export function valuesInside(series: readonly number[], targetF: number, leastF: number, mostF: number): number[] {
  const found: number[] = []
  const from = Math.floor(Math.log10(Math.max(SMALLEST_F, leastF)))
  const to = Math.floor(Math.log10(Number.isFinite(mostF) ? mostF : targetF * 10))
  for (let decade = from; decade <= to; decade++) {
    for (const digit of series) {
      // toPrecision undoes the rounding of 10^decade, so that 4.7 n is 4.7e-9 exactly.
      const value = Number((digit * 10 ** decade).toPrecision(3))
      if (value >= leastF && value <= mostF) found.push(value)
    }
  }
  const away = (value: number) => Math.abs(Math.log(value / targetF))
  return found.sort((a, b) => away(a) - away(b))
}

export type Wish = {
  /** a document's figure: a value inside it is preferred, one above it is marginal */
  readonly permittedF?: number | undefined
  /** what else is true of a value (what it does to the signal beside an inductor); absent = nothing against any */
  readonly admits?: ((valueF: number) => Verdict) | undefined
}

/**
 * Proposal for a window: target min(2·least, √(least·most)), or 2·least when no most is known; the nearest E6 value
 * inside, else E12, else undefined ("open, but no standard value"). Values inside what is permitted come before others,
 * and a value that is ok before one that is marginal. Source: IEC 60063 series; the target is common practice (6 dB above
 * the least, never past the middle).
 */
export function proposeF(leastF: number, mostF: number, wish: Wish = {}): Judged | undefined {
  if (!(leastF > 0) || mostF < leastF) return undefined
  const targetF = Number.isFinite(mostF) ? Math.min(2 * leastF, Math.sqrt(leastF * mostF)) : 2 * leastF
  const permittedF = Math.min(wish.permittedF ?? Number.POSITIVE_INFINITY, mostF)
  const ends =
    permittedF < mostF
      ? ([
          [permittedF, 'ok'],
          [mostF, 'marginal'],
        ] as const)
      : ([[mostF, 'ok']] as const)
  let best: Judged | undefined
  const look = (name: Proposal['series'], endF: number, floor: Verdict) => {
    for (const valueF of valuesInside(name === 'E6' ? E6 : E12, targetF, leastF, endF)) {
      const admitted = wish.admits?.(valueF) ?? 'ok'
      const verdict = VERDICT_RANK[admitted] > VERDICT_RANK[floor] ? admitted : floor
      if (best && VERDICT_RANK[verdict] >= VERDICT_RANK[best.verdict]) continue
      best = { valueF, series: name, verdict }
      if (verdict === floor) return
    }
  }
  for (const [endF, floor] of ends) {
    for (const name of ['E6', 'E12'] as const) {
      look(name, endF, floor)
      // The finer series is for windows in which the coarser has nothing that may stand.
      if (best && best.verdict !== 'fails') return best
    }
  }
  return best
}
