import type { CheckModel } from '../../state/check.ts'
import { Icon } from '../parts/icon.tsx'

/** Takes the last change of the Line back. Its place is kept while there is none, so that nothing moves when there is. */
export function UndoButton({ model }: { readonly model: CheckModel }) {
  const what = model.undoable.value
  return (
    <button
      type="button"
      class={what === undefined ? 'icon-button undo none' : 'icon-button undo'}
      onClick={() => {
        // a field that has the focus shows what was typed until it is left
        if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur()
        model.undo()
      }}
    >
      <Icon name="undo" />
      <span class="unseen">Undo{what === undefined ? '' : `: ${what}`}</span>
    </button>
  )
}
