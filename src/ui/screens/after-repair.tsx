import { useState } from 'preact/hooks'
import type { Guide, Position } from '../../guide/types.ts'
import { closeWith, giveRepair, lastEvent, type Repaired } from '../../state/ask.ts'
import { goTo, hashOf } from '../../state/router.ts'

const CHOICES: readonly { readonly how: Repaired; readonly label: string; readonly means: string }[] = [
  { how: 'gone', label: 'Gone', means: 'Take it off and put it back once: on, off, on. Then close.' },
  { how: 'less', label: 'Less', means: 'It is part of the cause; the guide goes on for the rest.' },
  { how: 'same-measured', label: 'The same, and the repair was measured good', means: 'This cause is ruled out.' },
  { how: 'same', label: 'The same, repair not measured', means: 'It stays open until the repair is measured.' },
  { how: 'worse', label: 'Worse', means: 'Undo it first; then go on.' },
]

/** What the repair or trial did; a cure that on, off, on confirms closes the complaint with cause and proof. */
export function AfterRepair({ guide, position }: { readonly guide: Guide; readonly position: Position }) {
  const { found } = position
  const [proof, setProof] = useState('')
  if (found === undefined) return null
  const { id, name } = found.cure.suspect
  const tried = position.answers[`after-${id}`]
  const closed = position.answers['closed'] === id
  if (closed)
    return (
      <section aria-label="Closed">
        <h2>Closed</h2>
        <p>
          Cause: {name}. Proof: {lastEvent('closed')?.note || 'not written down'}.
        </p>
      </section>
    )
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
              aria-pressed={tried === how}
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
      {tried === 'gone' && (
        <div class="field wide">
          <label for="proof">How was it proven?</label>
          <input
            id="proof"
            type="text"
            value={proof}
            placeholder="on, off, on: agreed three times"
            onInput={(event) => setProof(event.currentTarget.value)}
          />
          <button type="button" class="button strong" onClick={() => closeWith(guide, id, proof.trim())}>
            Close with this cause
          </button>
        </div>
      )}
    </section>
  )
}
