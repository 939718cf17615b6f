import type { Cell, Picture } from '../../calc/types.ts'
import { cellText } from './figure.ts'
import { ScrollX } from './scroll-x.tsx'
import { VerdictMark } from './verdict.tsx'

export type TablePicture = Extract<Picture, { is: 'table' }>

/** Rows and columns; wider than the screen it scrolls inside itself, never the page. */
export function Table({ picture }: { readonly picture: TablePicture }) {
  return (
    <figure class="picture table">
      <figcaption>{picture.title}</figcaption>
      <ScrollX label={picture.title}>
        <table>
          <thead>
            <tr>
              {picture.columns.map((column) => (
                <th key={column.key} scope="col">
                  {column.label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {picture.rows.map((row) => (
              <tr key={row.id} class={row.strong ? 'strong' : undefined}>
                {row.cells.map((cell, index) => (
                  <TableCell
                    key={picture.columns[index]?.key ?? index}
                    cell={cell}
                    column={picture.columns[index]}
                    head={index === 0}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </figure>
  )
}

type Column = TablePicture['columns'][number]

function TableCell(given: { readonly cell: Cell; readonly column: Column | undefined; readonly head: boolean }) {
  const { cell, column, head } = given
  const { quantity = 'number', side } = column ?? {}
  const text = cellText(cell, { quantity, side })
  if (head) {
    const verdict = cell.is === 'word' ? cell.verdict : undefined
    return <th scope="row">{verdict ? <VerdictMark verdict={verdict} word={text} /> : text}</th>
  }
  if (cell.is === 'none') return <td class="muted small">{text}</td>
  if (cell.is === 'word') {
    return <td>{cell.verdict ? <VerdictMark verdict={cell.verdict} word={cell.word} /> : text}</td>
  }
  return <td class="number">{text}</td>
}
