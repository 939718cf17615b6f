import type { Block } from '../../../guide/book/types.ts'
import { ScrollX } from '../scroll-x.tsx'

type Given = { readonly table: Extract<Block, { readonly is: 'table' }>; readonly title: string }

/** A table of the book; on a phone each of its rows is a card. */
export function BookTable({ table, title }: Given) {
  return (
    <ScrollX label={`Table: ${title}`}>
      <table>
        {table.caption !== undefined && <caption>{table.caption}</caption>}
        <thead>
          <tr>
            {table.head.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, index) =>
                index === 0 ? (
                  <th key={table.head[index]} scope="row" data-label={table.head[index]}>
                    {cell}
                  </th>
                ) : (
                  <td key={table.head[index]} data-label={table.head[index]}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollX>
  )
}
