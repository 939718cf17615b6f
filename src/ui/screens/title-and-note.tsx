import { type Complaint, rename, takeText, writeNote } from '../../state/complaints.ts'
import { Rivals } from '../parts/rival.tsx'
import { useTyped } from '../parts/typed.ts'

/** The two texts of a complaint, written at every key; what another window typed on the same text stands beside them. */
export function TitleAndNote({ complaint }: { readonly complaint: Complaint }) {
  const { id } = complaint
  const title = useTyped(complaint.title, (text, base) => rename(id, text, base))
  const note = useTyped(complaint.note, (text, base) => writeNote(id, text, base))
  const rivalsOf = (field: 'title' | 'note') => (complaint.rivals ?? []).filter((one) => one.field === field)
  return (
    <>
      <div class="field wide">
        <label for="title">Title</label>
        <input
          id="title"
          type="text"
          value={title.shown}
          autocomplete="off"
          enterkeyhint="done"
          onInput={(event) => title.type(event.currentTarget.value)}
          onBlur={title.leave}
        />
        <Rivals
          what="title"
          shown={title.shown}
          stored={complaint.title}
          rivals={rivalsOf('title')}
          onTake={(text, left) => {
            title.leave()
            takeText(id, 'title', text, left)
          }}
        />
      </div>
      <div class="field wide">
        <label for="note">Note</label>
        <textarea
          id="note"
          rows={4}
          value={note.shown}
          onInput={(event) => note.type(event.currentTarget.value)}
          onBlur={note.leave}
        />
        <Rivals
          what="note"
          shown={note.shown}
          stored={complaint.note}
          rivals={rivalsOf('note')}
          onTake={(text, left) => {
            note.leave()
            takeText(id, 'note', text, left)
          }}
        />
      </div>
    </>
  )
}
