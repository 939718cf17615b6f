import { useEffect } from 'preact/hooks'
import { type Complaint, type ComplaintText, takeText, writeText } from '../../state/complaints.ts'
import { LONG_LETTERS } from '../../state/journal.ts'
import { KeptText } from '../parts/kept-text.tsx'

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
  readonly rows?: number
}

function TextField({ complaint, text: field, ...rest }: Given) {
  const { id, rivals = [] } = complaint
  const isLong = (complaint[field]?.length ?? 0) >= LONG_LETTERS
  useEffect(() => {
    // without it every key is written whole
    if (isLong) import('../../state/long-text.ts').catch(() => undefined)
  }, [isLong])
  return (
    <KeptText
      {...rest}
      id={field}
      what={field}
      isLong={isLong}
      stored={complaint[field] ?? ''}
      rivals={rivals.filter((one) => one.field === field)}
      onType={(text, base) => writeText(id, field, text, base)}
      onTake={(text, left) => takeText(id, field, text, left)}
    />
  )
}
