import type { Line } from '../../calc/types.ts'
import { changeLine, removeLine } from '../../state/complaints.ts'
import { Icon } from '../parts/icon.tsx'
import { useTyped } from '../parts/typed.ts'

type Given = { readonly complaintId: string; readonly line: Line }

/** What a line of a complaint is called, written at every key. */
export function LineName({ complaintId, line }: Given) {
  const typed = useTyped(line.name, (name) => changeLine(complaintId, line.id, { name }))
  const id = `line-name-${line.id}`
  return (
    <div class="field wide">
      <label for={id}>Name of the line</label>
      <input
        id={id}
        type="text"
        value={typed.shown}
        autocomplete="off"
        enterkeyhint="done"
        onInput={(event) => typed.type(event.currentTarget.value)}
        onBlur={typed.leave}
      />
    </div>
  )
}

/** The way to be rid of a line; that is undone in one tap. */
export function DeleteLine({ complaintId, line }: Given) {
  return (
    <button type="button" class="button" onClick={() => removeLine(complaintId, line.id)}>
      <Icon name="close" />
      Delete the line
    </button>
  )
}
