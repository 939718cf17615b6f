/** What all checks of one Line find out, as numbers: the bounds on its capacitance, the rungs of its ladder, the verdicts. */
import { CHECKS } from '../registry.ts'
import type { Bound, Check, CheckId, Line, RungFigure, Verdict } from '../types.ts'
import { isRefused } from './evaluate.ts'
import type { Express } from './fields.ts'
import { resolve } from './resolver.ts'

export type LineFigures = {
  /** each bound once, though several checks may find it */
  readonly bounds: readonly Bound[]
  readonly rungs: readonly RungFigure[]
  /** of the checks that give one; a check whose texts are refused gives none */
  readonly verdicts: ReadonlyMap<CheckId, Verdict>
}

/**
 * Gathers the figures of `checks` (all of them unless told otherwise) on a Line, doubts included. No sentence is
 * written. Each check is remembered by the resolver: asking again for the same Line costs nothing.
 */
export function lineFigures(line: Line, express?: Express, checks: readonly Check[] = CHECKS): LineFigures {
  const resolution = resolve(line, express)
  const bounds = new Map<string, Bound>()
  const rungs = new Map<string, RungFigure>()
  const verdicts = new Map<CheckId, Verdict>()
  for (const check of checks) {
    const figures = resolution.figures(check)
    if (isRefused(figures)) continue
    if (figures.verdict !== undefined) verdicts.set(check.id, figures.verdict)
    for (const bound of figures.bounds) {
      const name = `${bound.id} ${bound.side} ${bound.topology}`
      if (!bounds.has(name)) bounds.set(name, bound)
    }
    for (const rung of figures.rungs) rungs.set(`${check.id} ${rung.id}`, rung)
  }
  return { bounds: [...bounds.values()], rungs: [...rungs.values()], verdicts }
}
