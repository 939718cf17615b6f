import { useMemo } from 'preact/hooks'
import { type CheckModel, onwardFrom } from '../../state/check.ts'
import checks from '../../state/check-reads.ts?built'
import type { Desk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { standing } from '../../state/runner.ts'
import { useLater } from '../parts/later.ts'

type Given = { readonly model: CheckModel; readonly desk: Desk }

const MOST_ONWARD = 5

/** Other checks of the same Line: nothing is copied on the way. */
export function Onward({ model, desk }: Given) {
  const now = model.line.value
  // not at the key itself
  const line = useLater(now) ?? now
  const { shown } = standing(model.answer.value)
  const onward = useMemo(() => onwardFrom(model.check, line, checks, expressionReading, shown), [model, line, shown])
  if (onward.length === 0) return null
  return (
    <section class="onward" aria-label="Other checks">
      <p class="muted small">Take these facts to</p>
      {onward.slice(0, MOST_ONWARD).map(({ check: other, sharedCount }) => (
        <a
          key={other.id}
          class="chip"
          href={desk.addressOf(other.id)}
          title={`${other.question} ${sharedCount === 1 ? 'One fact' : `${sharedCount} facts`} shared.`}
        >
          {other.title}
        </a>
      ))}
    </section>
  )
}
