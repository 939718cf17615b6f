import { useEffect } from 'preact/hooks'
import { isEvidence, replay } from '../../guide/engine.ts'
import { guide, loadGuide } from '../../state/guide-content.ts'
import { hashOf } from '../../state/router.ts'
import { triage } from '../../state/session.ts'

/** Where the triage under way stands, and the way back to it. */
export function Resume() {
  useEffect(() => {
    // The start screen goes on without it; the question itself says so when the guide cannot be loaded.
    void loadGuide().catch(() => undefined)
  }, [])
  const content = guide.value
  if (!content) return null
  const { trail, current } = replay(content, triage.value.answers, triage.value.events)
  return (
    <div class="resume">
      <p class="muted">
        {trail.length === 1 ? 'One answer' : `${trail.length} answers`} so far. Last: {trail.at(-1)?.label}
      </p>
      <a class="button strong wide" href={hashOf('ask', current.id)}>
        {isEvidence(current) ? 'Go on where you were' : 'See the result again'}
      </a>
    </div>
  )
}
