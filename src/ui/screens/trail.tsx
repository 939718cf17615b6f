import type { Position } from '../../guide/types.ts'
import { lastEvent } from '../../state/ask.ts'
import { hashOf } from '../../state/router.ts'

/** What is known so far: question and answer, each a way back to change it; every other answer stays. */
export function Trail({ position, hereId }: { readonly position: Position; readonly hereId: string }) {
  const steps = position.trail.filter((step) => step.node.id !== hereId)
  if (steps.length === 0) return null
  return (
    <details class="fold trail" open={steps.length <= 3}>
      <summary>{steps.length === 1 ? 'One answer' : `${steps.length} answers`} so far; tap one to change it</summary>
      <ol class="answered">
        {steps.map(({ node, label, isVoid }) => {
          const reading = lastEvent(node.id)?.reading
          return (
            <li key={node.id}>
              <a href={hashOf('ask', node.id)}>
                <span class="row-note">{node.text}</span> <span>{label}</span>
                {isVoid && <span class="row-note"> repeated, it differed: counts as not known</span>}
                {reading && (
                  <span class="row-note">
                    {' '}
                    read: {reading} {node.card?.unit}
                  </span>
                )}
              </a>
            </li>
          )
        })}
      </ol>
    </details>
  )
}
