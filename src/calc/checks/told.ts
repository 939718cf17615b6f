/** A check whose answer is still worked out and told in one go: its figures are read back from what it told. */
import type { Figures, Progress, Refused, Result, Success } from '../types.ts'

/** Figures that carry the finished answer along. */
export type Told = Figures & { readonly told: Success }

/** The two halves of a check from a function that computes and tells at once. */
export function told<G>(compute: (given: G) => Result | Generator<Progress, Result>) {
  return {
    figures: (given: G): Told | Refused | Generator<Progress, Told | Refused> => {
      const outcome = compute(given)
      return 'next' in outcome ? finish(outcome) : withFigures(outcome)
    },
    explain: (_given: G, figures: Told): Success => figures.told,
  }
}

function* finish(running: Generator<Progress, Result>): Generator<Progress, Told | Refused> {
  return withFigures(yield* running)
}

function withFigures(result: Result): Told | Refused {
  if (!result.ok) return result
  const values: Record<string, number> = {}
  for (const [key, { cell }] of Object.entries(result.outputs)) if (cell.is === 'si') values[key] = cell.si
  return {
    ...(result.verdict === undefined ? {} : { verdict: result.verdict }),
    values,
    bounds: [],
    rungs: result.rungs,
    told: result,
  }
}
