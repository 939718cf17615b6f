import { Fragment } from 'preact'
import { useContext } from 'preact/hooks'
import type { Cell, Picture } from '../../calc/types.ts'
import { cellText } from './figure.ts'
import { ScrollX } from './scroll-x.tsx'
import { UseButton, UseValues } from './use-values.tsx'
import { VerdictMark } from './verdict.tsx'

export type TablePicture = Extract<Picture, { is: 'table' }>

/** Rows and columns; on a phone each row is a card of its own. A row that can be used is entered by a tap. */
export function Table({ picture }: { readonly picture: TablePicture }) {
  const enter = useContext(UseValues)
  const isUsed = enter !== undefined && picture.rows.some((row) => row.use !== undefined)
  return (
    <figure class="picture table">
      <figcaption>{picture.title}</figcaption>
      <ScrollX label={picture.title}>
        <table>
          <thead>
            <tr>
              {picture.columns.map((column, index) => (
                <Fragment key={column.key}>
                  <th scope="col">{column.label}</th>
                  {isUsed && index === 0 && (
                    <th scope="col">
                      <span class="unseen">Enter</span>
                    </th>
                  )}
                </Fragment>
              ))}
            </tr>
          </thead>
          <tbody>
            {picture.rows.map((row) => (
              <tr key={row.id} class={row.strong ? 'strong' : undefined}>
                {row.cells.map((cell, index) => (
                  <Fragment key={picture.columns[index]?.key ?? index}>
                    <TableCell cell={cell} column={picture.columns[index]} head={index === 0} />
                    {isUsed && index === 0 && (
                      <td class="use">{row.use && <UseButton name={nameOf(row)} use={row.use} enter={enter} />}</td>
                    )}
                  </Fragment>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </figure>
  )
}

/** A row as its button names it: by its first cell, else by what it enters. */
function nameOf({ cells, use }: TablePicture['rows'][number]): string {
  const [first] = cells
  return first?.is === 'word' ? first.word : (use?.find(({ text }) => text !== '')?.text ?? '')
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
  const label = { 'data-label': column?.label }
  if (cell.is === 'none')
    return (
      <td class="muted small none" {...label}>
        {text}
      </td>
    )
  if (cell.is === 'word') {
    return <td {...label}>{cell.verdict ? <VerdictMark verdict={cell.verdict} word={cell.word} /> : text}</td>
  }
  return (
    <td class="number" {...label}>
      {text}
    </td>
  )
}
