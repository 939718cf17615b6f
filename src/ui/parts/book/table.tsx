import { useState } from 'preact/hooks'
import type { Block } from '../../../guide/book/types.ts'
import { ScrollX } from '../scroll-x.tsx'
import { Text } from './terms.tsx'

type Given = {
  readonly table: Extract<Block, { readonly is: 'table' }>
  readonly title: string
  /** so many rows on a phone before the rest is asked for; absent: as many as fit a screen by themselves */
  readonly atOnce: number | undefined
}

/** On a phone a row is a card with a line a cell: so many lines are shown before the rest is asked for. */
const LINES_AT_ONCE = 24
const screenful = ({ head }: Given['table']): number => Math.max(2, Math.floor(LINES_AT_ONCE / head.length))

/** A table of the book; on a phone each of its rows is a card, and the later ones come by a tap. */
export function BookTable({ table, title, atOnce = screenful(table) }: Given) {
  const [isWhole, setWhole] = useState(false)
  const met = new Set<string>()
  // the same words stand in many rows: the first of them is enough to be tapped
  const isFirst = (cell: string) => met.size < met.add(cell).size
  const showAll = ({ currentTarget }: { readonly currentTarget: HTMLElement }) => {
    // the button goes, and must not take the focus with it
    const table = currentTarget.closest('.copy')?.previousElementSibling
    if (table instanceof HTMLElement) table.focus({ preventScroll: true })
    setWhole(true)
  }
  return (
    <ScrollX
      label={`Table: ${title}`}
      beside={
        table.rows.length > atOnce &&
        !isWhole && (
          <button type="button" class="button all-rows" onClick={showAll}>
            All {table.rows.length} rows
          </button>
        )
      }
    >
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
          {table.rows.map((row, at) => (
            <tr key={row.join('|')} class={at >= atOnce && !isWhole ? 'later' : undefined}>
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
