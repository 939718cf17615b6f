import type { Position } from '../../guide/types.ts'
import { hashOf } from '../../state/router.ts'

/** What is known so far: each answer is a way back to change it; later answers that still apply stay. */
export function Trail({ position, hereId }: { readonly position: Position; readonly hereId: string }) {
  const steps = position.trail.filter((step) => step.node.id !== hereId)
  if (steps.length === 0) return null
  return (
    <details class="fold trail" open={steps.length <= 3}>
      <summary>{steps.length === 1 ? 'One answer' : `${steps.length} answers`} so far; tap one to change it</summary>
      <ol class="chips">
        {steps.map((step) => (
          <li key={step.node.id}>
            <a class="chip" href={hashOf('ask', step.node.id)}>
              <span class="unseen">{step.node.text} </span>
              {step.label}
            </a>
          </li>
        ))}
      </ol>
    </details>
  )
}
