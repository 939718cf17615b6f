import { trialSteps } from '../../calc/explain/trial.ts'
import type { ColumnTexts } from '../../calc/trial/edit.ts'
import { NOTED_FACTS } from '../../calc/trial/note.ts'
import type { FactKey, Trial } from '../../calc/types.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { newId } from '../../store/ids.ts'
import { useTyped } from './typed.ts'

type Given = { readonly model: CheckModel; readonly desk: Desk; readonly texts: ColumnTexts }

/** The trial goes to the earlier ones of a kept line, and another may begin; its adapters have to be out first. */
export function PutAway({ model, desk, texts }: Given) {
  const { keepTrials } = desk
  const isUnderWay = (model.line.value.facts.trialSteps?.text ?? '').trim() !== ''
  if (keepTrials === undefined || !isUnderWay) return null
  const removed = model.fields.value.find(({ key }) => key === 'removed')?.text ?? ''
  const isIn = removed.trim() === ''
  return (
    <>
      <button
        type="button"
        class="button"
        disabled={isIn}
        onClick={() => {
          const trial: Trial = { id: newId(), at: new Date().toISOString(), ...texts, removed }
          for (const fact of Object.keys(NOTED_FACTS) as FactKey[]) desk.write(fact, undefined)
          keepTrials((trials) => [...trials, trial])
        }}
      >
        Put it away and begin another
      </button>
      {isIn && <p class="muted small">Before another begins: who took the adapter out, and when.</p>}
    </>
  )
}

/** What was tried before on this line, step by step; one whose adapter nobody wrote out can still be recorded. */
export function EarlierTrials({ desk }: { readonly desk: Desk }) {
  const { trials } = desk.line.value
  if (trials.length === 0) return null
  return (
    <details class="fold" open={trials.some(({ removed }) => removed.trim() === '')}>
      <summary>Trials put away: {trials.length}</summary>
      <ol>
        {trials.map((trial) => (
          <li key={trial.id}>
            {trialSteps(trial).join('; ')}.
            <Removed
              trial={trial}
              onType={(removed) =>
                desk.keepTrials?.((all) => all.map((one) => (one.id === trial.id ? { ...one, removed } : one)))
              }
            />
          </li>
        ))}
      </ol>
    </details>
  )
}

function Removed({ trial, onType }: { readonly trial: Trial; readonly onType: (text: string) => void }) {
  const { shown, type, leave } = useTyped(trial.removed, onType)
  const name = `removed-${trial.id}`
  return (
    <div class="field">
      <label for={name}>Removed and recorded</label>
      <input
        id={name}
        type="text"
        value={shown}
        autocomplete="off"
        placeholder="by whom, and when"
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={leave}
      />
    </div>
  )
}
