import { COLUMN_LABEL, COLUMNS, type Column } from '../../../calc/connector/pasted-columns.ts'
import { DELIMITER_NAME, readTable } from '../../../calc/connector/table-text.ts'
import type { PasteModel } from '../../../state/paste.ts'

/** Which column is what, where the headings did not say it right; opened by itself where none names the contacts. */
export function Columns({ model }: { readonly model: PasteModel }) {
  const columns = model.pasted.value?.columns
  const table = readTable(model.text.value)
  const [first, second] = table.ok ? table.rows : []
  if (!table.ok || first === undefined || columns === undefined) return null
  const taken = columns.filter((column) => column !== undefined).length
  const hasHeadings = model.pasted.value?.headings !== undefined
  const choose = (at: number, column: Column | undefined) =>
    model.choose({
      ...model.choice.value,
      hasHeadings,
      // a column stands once
      columns: first.cells.map((_, i) => (i === at ? column : columns[i] === column ? undefined : columns[i])),
    })
  return (
    <details class="fold" open={columns.includes('contact') ? undefined : true}>
      <summary>
        Columns: {taken} of {first.cells.length} taken, divided by {DELIMITER_NAME[table.delimiter]}
      </summary>
      <div class="field flag">
        <label for="has-headings">The first row is headings</label>
        <input
          id="has-headings"
          type="checkbox"
          class="switch"
          checked={hasHeadings}
          onChange={(event) => model.choose({ ...model.choice.value, hasHeadings: event.currentTarget.checked })}
        />
      </div>
      {first.cells.map((heading, at) => (
        <div class="field wide" key={`${at} ${heading}`}>
          <label for={`column-${at}`}>
            {hasHeadings && heading !== '' ? heading : `Column ${at + 1}`}
            <span class="muted small"> {(hasHeadings ? second : first)?.cells[at] ?? ''}</span>
          </label>
          <select
            id={`column-${at}`}
            value={columns[at] ?? ''}
            onChange={(event) =>
              choose(
                at,
                COLUMNS.find((column) => column === event.currentTarget.value),
              )
            }
          >
            <option value="">not taken over</option>
            {COLUMNS.map((column) => (
              <option key={column} value={column}>
                {COLUMN_LABEL[column]}
              </option>
            ))}
          </select>
        </div>
      ))}
    </details>
  )
}
