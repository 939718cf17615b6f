import { forgetRemoved, type Removed } from '../../state/complaints.ts'
import { type TriageDraft, undoTriage } from '../../state/session.ts'
import { undoRemove } from '../../state/undo-remove.ts'
import { Icon } from '../parts/icon.tsx'
import { Bar, PutAway } from './bar.tsx'

/** As much of a name as leaves room for what can be done. */
const short = (name: string): string => ([...name].length > 60 ? `${[...name].slice(0, 59).join('')}…` : name)

/** What was deleted last, and the way back. */
export function UndoBar({ removed }: { readonly removed: Removed }) {
  return (
    <Bar>
      <p>Deleted “{short(removed.name)}”.</p>
      <button type="button" class="button" onClick={() => undoRemove()}>
        <Icon name="undo" />
        Undo
      </button>
      <PutAway onTap={() => forgetRemoved()} />
    </Bar>
  )
}

/** The triage that has made room for another one, and the way back to it. */
export function TriageBar({ before, onSeen }: { readonly before: TriageDraft; readonly onSeen: () => void }) {
  const count = Object.keys(before.answers).length
  return (
    <Bar>
      <p>The triage before this one ({count === 1 ? 'one answer' : `${count} answers`}) was not kept in the log.</p>
      <button
        type="button"
        class="button"
        onClick={() => {
          undoTriage()
          location.hash = '#/ask'
        }}
      >
        <Icon name="undo" />
        Go back to it
      </button>
      <PutAway onTap={onSeen} />
    </Bar>
  )
}
