/** Figures of a check by the texts of its fields, remembered for whoever asks again. */
import type { Figures, Progress, Refused, WordlessCheck } from '../types.ts'
import { atOnce, evaluateFigures } from './evaluate.ts'
import type { Field } from './fields.ts'

/**
 * Figures of the field texts seen last, by check, which is one with its words and without: a change of a fact that a check
 * does not read costs it nothing.
 */
const figuresByTexts = new WeakMap<WordlessCheck, Map<string, Figures | Refused>>()
/** A connector may have 256 contacts, each as proposed and as chosen, alone and beside the others. */
const MOST_REMEMBERED = 1024

/** The same at once. */
export const figuresOf = (check: WordlessCheck, fields: readonly Field[]): Figures | Refused =>
  atOnce(figuresInSteps(check, fields))

/** Figures of these fields, remembered by their texts, in steps for whoever may not stop for long. */
export function* figuresInSteps(
  check: WordlessCheck,
  fields: readonly Field[],
): Generator<Progress, Figures | Refused> {
  if (fields.some((field) => field.state === 'pending')) return yield* evaluateFigures(check, fields)
  const remembersAs = check.wordless ?? check
  const known = figuresByTexts.get(remembersAs) ?? new Map<string, Figures | Refused>()
  figuresByTexts.set(remembersAs, known)
  const texts = textsOf(fields)
  const before = known.get(texts)
  if (before !== undefined) return before
  const figures = yield* evaluateFigures(check, fields)
  const oldest = known.size >= MOST_REMEMBERED ? known.keys().next().value : undefined
  if (oldest !== undefined) known.delete(oldest)
  known.set(texts, figures)
  return figures
}

/** All that is read of the fields, in one text; each with its length before it, so that two never say the same. */
function textsOf(fields: readonly Field[]): string {
  let texts = ''
  for (const { text, state, issue } of fields)
    texts += `${text.length} ${text} ${state} ${issue === undefined ? '' : `${issue.code} ${issue.message}`};`
  return texts
}
