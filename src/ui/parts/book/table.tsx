import type { Block } from '../../../guide/book/types.ts'
import { ScrollX } from '../scroll-x.tsx'
import { Text } from './terms.tsx'

type Given = { readonly table: Extract<Block, { readonly is: 'table' }>; readonly title: string }

/** A table of the book; on a phone each of its rows is a card. */
export function BookTable({ table, title }: Given) {
  const met = new Set<string>()
  // the same words stand in many rows: the first of them is enough to be tapped
  const isFirst = (cell: string) => met.size < met.add(cell).size
  return (
    <ScrollX label={`Table: ${title}`}>
      <table>
        {table.caption !== undefined && (
          <caption>
            <Text of={table.caption} />
          </caption>
        )}
        <thead>
          <tr>
            {table.head.map((head) => (
              <th key={head} scope="col">
                <Text of={head} />
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
                    {isFirst(cell) ? <Text of={cell} /> : cell}
                  </th>
                ) : (
                  <td key={table.head[index]} data-label={table.head[index]}>
                    {isFirst(cell) ? <Text of={cell} /> : cell}
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
