import type { CheckId } from '../../calc/types.ts'
import { isFresh } from '../../state/fresh-line.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { scratchBefore, undoScratch } from '../../state/session.ts'
import { Icon } from '../parts/icon.tsx'

/** The Line that made room for the one under way, and the way back to it: on a check only right after that happened. */
export function LineBefore({ check }: { readonly check?: CheckId }) {
  const before = scratchBefore.value
  if (before === undefined || (check !== undefined && !isFresh.value)) return null
  const count = Object.keys(before.facts).length
  const facts = count === 1 ? 'one fact' : `${count} facts`
  return (
    <div class="notice" role="status">
      <p>
        {isFresh.value
          ? `This is a fresh line. The one under way before, with ${facts}, is kept.`
          : `The line under way before this one, with ${facts}, is kept.`}
      </p>
      <div class="actions">
        <button
          type="button"
          class="button"
          onClick={() => {
            undoScratch()
            goTo(hashOf('check', check))
          }}
        >
          <Icon name="undo" />
          Go back to it
        </button>
      </div>
    </div>
  )
}
