import { CHECKS } from '../../calc/registry.ts'
import type { Check, Result, Success } from '../../calc/types.ts'
import { type CheckModel, factsOf, onwardFrom } from '../../state/check.ts'
import { triage } from '../../state/session.ts'
import { isAnswered } from '../parts/answer.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { outputText } from '../parts/figure.ts'
import { Icon } from '../parts/icon.tsx'
import { PrintButton, ShareButton } from '../parts/share-button.tsx'
import { VERDICT_WORDS } from '../parts/verdict.tsx'
import { KeepCheck } from './keep-check.tsx'

export function hasFigures(result: Result): boolean {
  return result.ok && isAnswered(result)
}

/** While there is nothing to read yet, cautions and actions stand under the fields, so that these are near. */
export function Late({ model }: { readonly model: CheckModel }) {
  const answer = model.answer.value
  if (answer.is !== 'done' || hasFigures(answer.result)) return null
  return (
    <>
      {answer.result.ok && <Cautions ids={answer.result.cautions} />}
      <Actions model={model} result={answer.result} />
    </>
  )
}

/** Figures may always be read; fitting or trying a part waits for the safety questions. */
export function GateLine() {
  if (triage.value.line.gate === 'clear') return null
  return (
    <p class="muted small">
      Before any part is fitted or tried, answer the safety questions.{' '}
      <a class="link" href="#/ask">
        Open Ask
      </a>
    </p>
  )
}

export function Actions({ model, result }: { readonly model: CheckModel; readonly result: Result }) {
  const { check } = model
  const words = result.ok ? sharedWords(check, result) : ''
  return (
    <div class="actions">
      <KeepCheck model={model} />
      <ShareButton title={`${check.title}: ${check.question}`} words={words} hash={model.hash.value} />
      <PrintButton />
    </div>
  )
}

const MOST_ONWARD = 5

export function Onward({ model }: { readonly model: CheckModel }) {
  const { check } = model
  const answer = model.answer.value
  const facts = factsOf(check, model.texts.value, answer.is === 'done' ? answer.result : undefined)
  const onward = onwardFrom(check, facts, CHECKS)
  if (onward.length === 0) return null
  return (
    <section class="onward" aria-label="Other checks">
      <h2>Take these facts to</h2>
      <ul class="rows">
        {onward.slice(0, MOST_ONWARD).map(({ check: other, hash, sharedCount }) => (
          <li key={other.id}>
            <a href={hash}>
              <span>
                <strong>{other.title}</strong>
                <span class="row-note">
                  {other.question} {sharedCount === 1 ? 'One fact' : `${sharedCount} facts`} shared.
                </span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}

function sharedWords(check: Check, result: Success): string {
  const figures = check.outputs.flatMap((output) => {
    const cell = result.outputs[output.key]?.cell
    return cell && cell.is !== 'none' ? [`${output.label}: ${outputText(cell, output)}`] : []
  })
  const verdict = result.verdict ? `${VERDICT_WORDS[result.verdict]}. ` : ''
  return [`${verdict}${result.headline}`, ...figures].join('\n')
}
