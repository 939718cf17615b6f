import type { CheckId } from '../../calc/types.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { scratchBefore, undoScratch } from '../../state/session.ts'
import { Icon } from '../parts/icon.tsx'

/** The Line that made room for the one under way, and the way back to it. */
export function LineBefore({ check }: { readonly check?: CheckId }) {
  const before = scratchBefore.value
  if (before === undefined) return null
  const count = Object.keys(before.facts).length
  return (
    <div class="notice" role="status">
      <p>
        This is a fresh line. The one under way before, with {count === 1 ? 'one fact' : `${count} facts`}, is kept.
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
