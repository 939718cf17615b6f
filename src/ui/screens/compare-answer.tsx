import type { CheckModel } from '../../state/check.ts'
import { standing } from '../../state/runner.ts'
import { drawn } from '../parts/answer.tsx'
import type { Span } from '../parts/axis.ts'
import { Strip } from '../parts/strip.tsx'
import { AnswerSentence } from '../parts/verdict.tsx'
import { onSpan } from './compare-shape.ts'

type Given = { readonly model: CheckModel; readonly span: Span | undefined }

/** What a variant answers: its sentence, and its strip on the axis all of them share. */
export function VariantAnswer({ model, span }: Given) {
  const { shown: result, isLive, refused } = standing(model.answer.value)
  if (result === undefined)
    return <p class="muted">{refused?.issues.map(({ message }) => message).join(' ') ?? 'No answer yet.'}</p>
  const strip = drawn(result).find((picture) => picture.is === 'strip')
  return (
    <div class={isLive ? 'stack' : 'stack stale'}>
      <p class="variant-sentence">
        <AnswerSentence result={result} />
      </p>
      {refused && <p class="issue">{refused.issues.map(({ message }) => message).join(' ')}</p>}
      {strip && span && <Strip picture={onSpan(strip, span)} bounds={result.bounds} bare />}
    </div>
  )
}
