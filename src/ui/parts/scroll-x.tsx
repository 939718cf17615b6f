import type { ComponentChildren } from 'preact'
import { useRef } from 'preact/hooks'
import { writeTable } from '../../calc/connector/table-text.ts'
import { CopyButton } from './copy-button.tsx'

/** A region that scrolls takes focus, so that arrow keys can scroll it. */
const REACHABLE = { tabIndex: 0 }

/** What a cell says: its words, or what is typed in it. */
function wordsOf(cell: HTMLTableCellElement): string {
  const field = cell.querySelector('input, textarea')
  const isTyped = field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement
  return (isTyped ? field.value : (cell.textContent ?? '')).replace(/\s+/g, ' ').trim()
}

/** The cells of a table as they are read, row by row. */
export const cellsOf = (table: HTMLTableElement): string[][] =>
  [...table.rows].map((row) => [...row.cells].map(wordsOf))

/**
 * A table, which may be wider than the screen: it scrolls inside this, never the page; on a phone each row is a card, and
 * a cell says its column by `data-label`. It can be copied as text with
 * tabs between the cells, as a spreadsheet takes it.
 */
export function ScrollX(given: {
  readonly label: string
  readonly children: ComponentChildren
  /** what stands beside the copying */
  readonly beside?: ComponentChildren
}) {
  const { label, children, beside } = given
  const box = useRef<HTMLElement>(null)
  const text = () => {
    const table = box.current?.querySelector('table')
    return table ? writeTable(cellsOf(table), '\t') : ''
  }
  return (
    <>
      <section ref={box} class="scroll-x" aria-label={label} {...REACHABLE}>
        {children}
      </section>
      <CopyButton text={text} words="Copy the table" beside={beside} />
    </>
  )
}
