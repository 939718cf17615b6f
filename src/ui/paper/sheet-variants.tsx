import { untracked } from '@preact/signals'
import { evaluateNow } from '../../calc/line/evaluate.ts'
import { resolve } from '../../calc/line/resolver.ts'
import type { Check, Line } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import { expressionReading } from '../../state/expression.ts'
import { lineOfVariant, VARIANT_IDS, type Variants } from '../../state/variants.ts'
import { Part } from './frame.tsx'
import { inputText } from './sheet-inputs.tsx'

type Given = { readonly check: Check; readonly line: Line; readonly variants: Variants }

/** What the check was compared with: the inputs that differ, and the sentence each comes to. */
export function SheetVariants({ check, line, variants }: Given) {
  const said = VARIANT_IDS.flatMap((id) => {
    const differs = variants[id]
    return differs === undefined ? [] : [{ id, words: variantWords(check, line, differs) }]
  })
  if (said.length === 0) return null
  return (
    <Part title="Compared with">
      {said.map(({ id, words: { changed, sentence } }) => (
        <p key={id} class="row">
          {id.toUpperCase()}, {changed}: <strong>{sentence}</strong>
        </p>
      ))}
    </Part>
  )
}

function variantWords(check: Check, line: Line, differs: Readonly<Record<string, string>>) {
  const fields = untracked(() =>
    resolve(lineOfVariant(check, line, differs, expressionReading), expressionReading).fields(check),
  )
  const result = evaluateNow(check, fields)
  const changed = fields.filter(({ key }) => differs[key] !== undefined)
  return {
    changed: changed.map((field) => `${field.input.label} ${inputText(field) || 'not entered'}`).join('; '),
    sentence: result.ok ? sentenceOf(result) : result.issues.map(({ message }) => message).join(' '),
  }
}
