/** What travels of an answer: the same sentence as on the page and on paper, its figures, and the cautions that fit. */
import type { Check, Success } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import { isSafetyId, SAFETY_TEXTS } from '../../reference/safety.ts'
import { outputText } from './figure.ts'

/** The answer in lines of text. The screening statement is not among them: whatever is shared ends with it. */
export function sharedWords(check: Check, result: Success): string {
  const figures = check.outputs.flatMap((output) => {
    const cell = result.outputs[output.key]?.cell
    return cell && cell.is !== 'none' ? [`${output.label}: ${outputText(cell, output)}`] : []
  })
  const needed = result.needs === undefined ? [] : [result.needs.sentence]
  return [sentenceOf(result), ...needed, ...figures, ...cautionLines(result.cautions)].join('\n')
}

/** Cautions by id, one line each; an id that is not known says nothing. */
export function cautionLines(ids: readonly string[]): readonly string[] {
  const known = [...new Set(ids)].filter(isSafetyId).filter((id) => id !== 'screening')
  return known.map((id) => `Caution: ${SAFETY_TEXTS[id].title}. ${SAFETY_TEXTS[id].text}`)
}
