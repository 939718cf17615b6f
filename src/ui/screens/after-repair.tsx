import { useState } from 'preact/hooks'
import { CLOSE_OUT } from '../../guide/close-out.ts'
import { afterRepair } from '../../guide/investigate/standing.ts'
import type { Guide, Outcome, Position } from '../../guide/types.ts'
import { closeWith, giveRepair, lastEvent, type Repaired } from '../../state/ask.ts'
import { filledOf, writeFilled } from '../../state/fill-in.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { triage } from '../../state/session.ts'
import { Closed } from '../parts/closed.tsx'
import { Repeats } from '../parts/repeats.tsx'

const CHOICES: readonly { readonly how: Repaired; readonly label: string; readonly means: string }[] = [
  { how: 'gone', label: 'Gone', means: 'Take it off and put it back: on, off, on. Then note it.' },
  { how: 'less', label: 'Less', means: 'It is part of the cause; the guide goes on for the rest.' },
  { how: 'same-measured', label: 'The same, and the repair was measured good', means: 'This cause is ruled out.' },
  { how: 'same', label: 'The same, repair not measured', means: 'It stays open until the repair is measured.' },
  { how: 'worse', label: 'Worse', means: 'Undo it first; then go on.' },
]

type Given = { readonly guide: Guide; readonly outcome: Outcome; readonly position: Position }

/** What the repair or trial did; one that on, off, on confirms ends the triage. The complaint is closed out in the log. */
export function AfterRepair({ guide, outcome, position }: Given) {
  const { found, closed } = position
  if (closed !== undefined) return <Closed position={position} events={triage.value.events ?? []} />
  if (found === undefined) return null
  const { id } = found.cure.suspect
  const last = lastEvent(afterRepair(id))
  return (
    <section aria-label="After the repair">
      <h2>After the repair or trial</h2>
      <ul class="answers">
        {CHOICES.map(({ how, label, means }) => (
          <li key={how}>
            <button
              type="button"
              class="answer-row"
              value={how}
              aria-pressed={last?.option === how}
              onClick={() => {
                const next = giveRepair(guide, id, how)
                if (how !== 'gone') goTo(hashOf('ask', next.current.id))
              }}
            >
              <span>{label}</span>
              <span class="row-note">{means}</span>
            </button>
          </li>
        ))}
      </ul>
      {last?.option === 'gone' && (
        <>
          <Repeats value={last.repeats} onPick={(repeats) => giveRepair(guide, id, 'gone', { repeats })} />
          {last.repeats === 'agreed' ? (
            <Close guide={guide} suspect={id} headline={outcome.headline} />
          ) : (
            <p class="notice" role="status">
              {last.repeats === 'differed'
                ? 'It came out otherwise: that proves nothing. Look for a loose contact or a second source, then repeat.'
                : 'Once is no proof. Take it off and put it back until it agrees; then it can be noted as the cure.'}
            </p>
          )}
        </>
      )}
    </section>
  )
}

/** Cause, cure and proof go to the close-out of the complaint the triage is kept in, where nothing stands there yet. */
function noteClosing(guide: Guide, suspect: string, cure: string): void {
  const { complaintId } = triage.peek()
  if (complaintId === undefined) return
  const row = filledOf(complaintId)?.[CLOSE_OUT]?.[0] ?? {}
  const cause = guide.suspects.find(({ id }) => id === suspect)?.name ?? suspect
  const texts = { cause, cure, repeats: 'agreed' }
  for (const [column, text] of Object.entries(texts))
    if ((row[column] ?? '') === '') writeFilled(complaintId, { table: CLOSE_OUT, row: 0, column, text, base: '' })
}

function Close(given: { readonly guide: Guide; readonly suspect: string; readonly headline: string }) {
  const { guide, suspect, headline } = given
  const [cure, setCure] = useState(headline)
  const [proof, setProof] = useState('')
  return (
    <div class="field wide">
      <label for="cure">What was done?</label>
      <input id="cure" type="text" value={cure} onInput={(event) => setCure(event.currentTarget.value)} />
      <label for="proof">How was it proven?</label>
      <input
        id="proof"
        type="text"
        value={proof}
        placeholder="on, off, on: agreed three times"
        onInput={(event) => setProof(event.currentTarget.value)}
      />
      <button
        type="button"
        class="button strong"
        onClick={() => {
          noteClosing(guide, suspect, cure.trim())
          closeWith(guide, suspect, { cure: cure.trim(), proof: proof.trim() })
        }}
      >
        Note cause and cure
      </button>
      <p class="muted small">
        The complaint stays open until it is closed out in the log: everything put back, and somebody who checks.
      </p>
    </div>
  )
}
