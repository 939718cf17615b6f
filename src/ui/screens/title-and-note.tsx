import { type Complaint, type ComplaintText, takeText, writeText } from '../../state/complaints.ts'
import { Rivals } from '../parts/rival.tsx'
import { useTyped } from '../parts/typed.ts'

/** The texts of a complaint, written at every key; what another window typed on the same text stands beside them. */
export function TitleAndNote({ complaint }: { readonly complaint: Complaint }) {
  return (
    <>
      <TextField complaint={complaint} text="title" label="Title" />
      <TextField
        complaint={complaint}
        text="aircraft"
        label="Aircraft"
        help="Optional: type and registration as you write it. Stays on this device unless shared."
      />
      <TextField complaint={complaint} text="note" label="Note" rows={4} />
    </>
  )
}

type Given = {
  readonly complaint: Complaint
  readonly text: ComplaintText
  readonly label: string
  readonly help?: string
  /** lines of text; one where it is absent */
  readonly rows?: number
}

function TextField({ complaint, text: field, label, help, rows }: Given) {
  const { id, rivals = [] } = complaint
  const stored = complaint[field] ?? ''
  const typed = useTyped(stored, (text, base) => writeText(id, field, text, base))
  const box = {
    id: field,
    value: typed.shown,
    onBlur: typed.leave,
    ...(help !== undefined && { 'aria-describedby': `${field}-help` }),
  }
  return (
    <div class="field wide">
      <label for={field}>{label}</label>
      {rows === undefined ? (
        <input
          {...box}
          type="text"
          autocomplete="off"
          enterkeyhint="done"
          onInput={(event) => typed.type(event.currentTarget.value)}
        />
      ) : (
        <textarea {...box} rows={rows} onInput={(event) => typed.type(event.currentTarget.value)} />
      )}
      {help !== undefined && (
        <p id={`${field}-help`} class="muted small">
          {help}
        </p>
      )}
      <Rivals
        what={field}
        shown={typed.shown}
        stored={stored}
        rivals={rivals.filter((one) => one.field === field)}
        onTake={(text, left) => {
          typed.leave()
          takeText(id, field, text, left)
        }}
      />
    </div>
  )
}
