import type { Result } from '../../calc/types.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { standing } from '../../state/runner.ts'
import { isAnswered } from '../parts/answer.tsx'
import { FoldedCautions } from '../parts/cautions.tsx'
import { PrintButton, ShareButton } from '../parts/share-button.tsx'
import { sharedWords } from '../parts/shared-words.ts'
import { KeepCheck } from './keep-check.tsx'

export function hasFigures(result: Result): boolean {
  return result.ok && isAnswered(result)
}

type Given = { readonly model: CheckModel; readonly desk: Desk }

/** While there is nothing to read yet, cautions and actions stand under the fields, so that these are near. */
export function Late({ model, desk }: Given) {
  const { shown, refused } = standing(model.answer.value)
  const result = shown ?? refused
  if (result === undefined || hasFigures(result)) return null
  return (
    <>
      {result.ok && <FoldedCautions ids={result.cautions} verdict={result.verdict} />}
      <Actions model={model} desk={desk} result={result} />
    </>
  )
}

/** Figures may always be read; fitting or trying a part waits for the safety questions. */
export function GateLine({ desk }: { readonly desk: Desk }) {
  if (desk.line.value.gate === 'clear') return null
  return (
    <a class="link small" href="#/ask">
      Before any part is fitted or tried, answer the safety questions
    </a>
  )
}

export function Actions({ model, desk, result }: Given & { readonly result: Result }) {
  const { check } = model
  return (
    <div class="actions">
      <KeepCheck model={model} desk={desk} />
      <ShareButton
        title={`${check.title}: ${check.question}`}
        words={() => (result.ok ? sharedWords(check, result) : '')}
        hash={model.hash.value}
      />
      <PrintButton />
    </div>
  )
}
