import type { Line } from '../../calc/types.ts'
import { changeLine, removeLine } from '../../state/complaints.ts'
import { Icon } from '../parts/icon.tsx'
import { useTyped } from '../parts/typed.ts'

/** What a line of a complaint is called, written at every key, and the way to be rid of it; that is undone in one tap. */
export function NameAndDelete({ complaintId, line }: { readonly complaintId: string; readonly line: Line }) {
  const typed = useTyped(line.name, (name) => changeLine(complaintId, line.id, { name }))
  const id = `line-name-${line.id}`
  return (
    <>
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
      <button type="button" class="button" onClick={() => removeLine(complaintId, line.id)}>
        <Icon name="close" />
        Delete the line
      </button>
    </>
  )
}
