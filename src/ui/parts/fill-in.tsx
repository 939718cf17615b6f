import { useState } from 'preact/hooks'
import { FILL_INS, type FilledRow, type FillIn, type FillInId, filledRows } from '../../guide/fill-ins.ts'
import { writeFilled } from '../../state/fill-in.ts'
import { triage } from '../../state/session.ts'
import { useFilled } from './filled.ts'
import { ScrollX } from './scroll-x.tsx'
import { useTyped } from './typed.ts'

type Given = {
  readonly id: FillInId
  /** the complaint it is kept in; absent: the triage under way */
  readonly complaintId?: string
  /** shown only where something was filled in */
  readonly whenFilled?: true
}

/** A table to fill in, one line at a time; there is always an empty line at its end. On paper it is a table. */
export function FillInTable({ id, complaintId, whenFilled }: Given) {
  const place = complaintId ?? triage.value.complaintId
  const form = FILL_INS[id]
  const rows = useFilled(place)?.[id] ?? []
  const isFilled = filledRows({ [id]: rows }, id).length > 0
  if (whenFilled && !isFilled) return null
  const count = isEmptyRow(rows.at(-1)) ? Math.max(1, rows.length) : rows.length + 1
  return (
    <section class="fill-in" aria-label={form.title}>
      <h2>{form.title}</h2>
      <div class="screen-only">
        {Array.from({ length: count }, (_, at) => (
          <Line key={`${form.id} ${at}`} form={form} at={at} row={rows[at] ?? {}} place={place} isOnly={count === 1} />
        ))}
      </div>
      {isFilled && (
        <div class="print-only">
          <FilledTable form={form} rows={filledRows({ [id]: rows }, id)} />
        </div>
      )}
    </section>
  )
}

const isEmptyRow = (row: FilledRow | undefined): boolean =>
  row !== undefined && Object.values(row).every((text) => text.trim() === '')

type LineGiven = {
  readonly form: FillIn
  readonly at: number
  readonly row: FilledRow
  readonly place: string | undefined
  readonly isOnly: boolean
}

function Line({ form, at, row, place, isOnly }: LineGiven) {
  const [isOpen, setOpen] = useState(isOnly)
  const summary = form.columns.flatMap(({ id }) => row[id]?.trim() || []).join(', ')
  return (
    <details class="fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {form.row} {at + 1}
        {summary === '' ? '' : `: ${summary}`}
      </summary>
      {form.columns.map((column) => (
        <Cell
          key={column.id}
          name={`${form.id}-${at}-${column.id}`}
          column={column}
          text={row[column.id] ?? ''}
          onType={(text, base) => writeFilled(place, { table: form.id, row: at, column: column.id, text, base })}
        />
      ))}
    </details>
  )
}

function Cell(given: {
  readonly name: string
  readonly column: FillIn['columns'][number]
  readonly text: string
  readonly onType: (text: string, base: string) => void
}) {
  const { name, column, text, onType } = given
  const { shown, type, leave } = useTyped(text, onType)
  return (
    <div class="field wide">
      <label for={name}>{column.label}</label>
      <input
        id={name}
        type="text"
        value={shown}
        autocomplete="off"
        {...(column.usual && { list: `${name}-usual` })}
        {...(column.hint !== undefined && { placeholder: column.hint })}
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={leave}
      />
      {column.usual && (
        <datalist id={`${name}-usual`}>
          {column.usual.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
    </div>
  )
}

/** What was filled in, to be read. */
export function FilledTable({ form, rows }: { readonly form: FillIn; readonly rows: readonly FilledRow[] }) {
  return (
    <ScrollX label={form.title}>
      <table>
        <thead>
          <tr>
            {form.columns.map(({ id, label }) => (
              <th key={id} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <tr key={`${at} ${Object.values(row).join()}`}>
              {form.columns.map(({ id, label }) => (
                <td key={id} data-label={label}>
                  {row[id]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollX>
  )
}
