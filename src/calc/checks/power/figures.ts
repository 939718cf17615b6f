/** The numbers of the power check. */
import { powerValues } from '../../power/figures.ts'
import { judgePower, type PowerJudgement } from '../../power/judge.ts'
import type { PowerLine } from '../../power/supply.ts'
import type { Figures, Refused, Verdict } from '../../types.ts'
import type { PowerGiven } from './inputs.ts'

export type PowerFigures = Figures & {
  readonly verdict: Verdict
  /** absent = something must still be entered */
  readonly worked?: { readonly line: PowerLine; readonly judgement: PowerJudgement }
}

export function powerFigures(given: PowerGiven): PowerFigures | Refused {
  const { workingRmsV, supplyHz, capacitanceF, lineCount, wiringOhm, wiringH, bleedOhm } = given
  if (workingRmsV === undefined || supplyHz === undefined || capacitanceF === undefined)
    return { verdict: 'unknown', values: {}, bounds: [], rungs: [] }
  if (!Number.isInteger(lineCount)) {
    const message = 'The number of lines is a whole number, such as 3.'
    return { ok: false, issues: [{ key: 'lineCount', code: 'not-whole', message }] }
  }
  const { crossF = 0 } = given
  const line: PowerLine = { workingRmsV, supplyHz, capacitanceF, lineCount, crossF, wiringOhm, wiringH, bleedOhm }
  const judgement = judgePower(line, given)
  const { verdict, bounds, rungs, inrush } = judgement
  return { verdict, values: { ...powerValues(line, inrush) }, bounds, rungs, worked: { line, judgement } }
}
