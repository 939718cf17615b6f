import { CLOSED, newestOf } from '../../guide/investigate/events.ts'
import type { Event } from '../../guide/investigation.ts'
import type { Position } from '../../guide/types.ts'

/** What ended a triage: the cause, what was done about it, and how that was proven. */
export function Closed({ position, events }: { readonly position: Position; readonly events: readonly Event[] }) {
  const { closed, standings } = position
  if (closed === undefined) return null
  const { reading: cure, note: proof } = newestOf(events, CLOSED) ?? {}
  const name = standings.find(({ suspect }) => suspect.id === closed)?.suspect.name ?? closed
  return (
    <section aria-label="Cause and cure">
      <h2>Cause and cure</h2>
      <dl class="facts">
        <div>
          <dt>Cause</dt>
          <dd>{name}</dd>
        </div>
        <div>
          <dt>Cure</dt>
          <dd>{cure || 'not written down'}</dd>
        </div>
        <div>
          <dt>Proof</dt>
          <dd>{proof || 'on, off, on agreed'}</dd>
        </div>
      </dl>
    </section>
  )
}
