import type { Line } from '../../calc/types.ts'
import { changeLine, removeLine, takeLineText } from '../../state/complaints.ts'
import { Icon } from '../parts/icon.tsx'
import { KeptText } from '../parts/kept-text.tsx'

type Given = { readonly complaintId: string; readonly line: Line }

/** What a line of a complaint is called, written at every key. */
export function LineName({ complaintId, line }: Given) {
  const { id, name, rivals = [] } = line
  return (
    <KeptText
      id={`line-name-${id}`}
      label="Name of the line"
      what="name"
      stored={name}
      rivals={rivals.filter(({ fact }) => fact === 'name')}
      onType={(text, base) => changeLine(complaintId, id, { name: text }, base)}
      onTake={(text, left) => takeLineText(complaintId, id, 'name', text, left)}
    />
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
