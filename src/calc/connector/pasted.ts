/** A pasted table as rows of contacts: which column is what, and what does not fit; nothing is taken over here. */
import { type Column, columnsByHeading, isContactHeading, unitOfHeading } from './pasted-columns.ts'
import { type Delimiter, readTable } from './table-text.ts'

export type PastedRow = { readonly line: number; readonly cells: { readonly [K in Column]?: string } }

/** How a table is divided, also where a row of it is refused. */
export type TableColumns = {
  /** the column of each place; undefined = not taken over */
  readonly columns: readonly (Column | undefined)[]
  /** the headings as they stand, or undefined where the first row is a contact already */
  readonly headings: readonly string[] | undefined
}

export type Pasted =
  | ({
      readonly ok: true
      readonly delimiter: Delimiter
      readonly rows: readonly PastedRow[]
      /** the unit each column's heading gives */
      readonly units: { readonly [K in Column]?: string }
      /** words for the kind of line, each once, in order, with how many rows use it */
      readonly kindWords: readonly { readonly word: string; readonly rows: number }[]
    } & TableColumns)
  | ({ readonly ok: false; readonly message: string } & Partial<TableColumns>)

const MOST_CONTACT_CHARACTERS = 12

/** What the user says of a table against what it seems to be. */
export type PastedChoice = {
  /** the column of each place */
  readonly columns?: readonly (Column | undefined)[]
  /** whether its first row is headings */
  readonly hasHeadings?: boolean
}

/** Reads a pasted table. A sentence with its line where a row has no contact, or a contact stands twice: nothing is half taken over. */
export function readPasted(text: string, choice: PastedChoice = {}): Pasted {
  const table = readTable(text)
  if (!table.ok) return table
  const [first] = table.rows
  if (!first) return { ok: false, message: 'There is no row in this text.' }
  const named = columnsByHeading(first.cells)
  const seemsNamed = named.filter((column) => column !== undefined).length >= 2 || first.cells.some(isContactHeading)
  const hasHeadings = choice.hasHeadings ?? seemsNamed
  const width = table.rows.reduce((most, { cells }) => Math.max(most, cells.length), 0)
  const chosen = choice.columns ?? (hasHeadings ? named : byPlace(width))
  const divided: TableColumns = { columns: chosen, headings: hasHeadings ? first.cells : undefined }
  const refused = (message: string): Pasted => ({ ok: false, message, ...divided })
  const at = chosen.indexOf('contact')
  if (at < 0) return refused('No column names the contacts: give one the heading “contact”, or choose it below.')
  const rows: PastedRow[] = []
  const seen = new Map<string, number>()
  for (const { line, cells } of hasHeadings ? table.rows.slice(1) : table.rows) {
    const id = cells[at] ?? ''
    if (id === '') return refused(`Line ${line} names no contact: its “contact” cell is empty.`)
    if (id.length > MOST_CONTACT_CHARACTERS)
      return refused(`Line ${line}: “${id.slice(0, MOST_CONTACT_CHARACTERS)}…” is too long for a contact.`)
    const before = seen.get(id)
    if (before !== undefined)
      return refused(`Contact “${id}” stands on line ${before} and on line ${line}; it can stand once.`)
    seen.set(id, line)
    rows.push({ line, cells: cellsOf(cells, chosen) })
  }
  if (rows.length === 0) return refused('There are headings and no row below them.')
  return {
    ok: true,
    delimiter: table.delimiter,
    ...divided,
    rows,
    units: hasHeadings ? unitsOf(first.cells, chosen) : {},
    kindWords: wordsOf(rows),
  }
}

function unitsOf(headings: readonly string[], columns: readonly (Column | undefined)[]): { [K in Column]?: string } {
  const units: { [K in Column]?: string } = {}
  columns.forEach((column, i) => {
    const unit = unitOfHeading(headings[i] ?? '')
    if (column !== undefined && unit !== undefined) units[column] = unit
  })
  return units
}

function cellsOf(cells: readonly string[], columns: readonly (Column | undefined)[]): PastedRow['cells'] {
  const found: Partial<Record<Column, string>> = {}
  columns.forEach((column, i) => {
    const text = cells[i] ?? ''
    if (column !== undefined && text !== '') found[column] = text
  })
  return found
}

/** Words that differ in capitals and blanks alone are one. */
export const wordKey = (word: string): string => word.trim().toLowerCase().replaceAll(/\s+/g, ' ')

function wordsOf(rows: readonly PastedRow[]): readonly { readonly word: string; readonly rows: number }[] {
  const words = new Map<string, { word: string; rows: number }>()
  for (const { cells } of rows) {
    if (cells.kind === undefined) continue
    const key = wordKey(cells.kind)
    const found = words.get(key)
    if (found) found.rows += 1
    else words.set(key, { word: cells.kind, rows: 1 })
  }
  return [...words.values()]
}

/** Without headings: contact, function, kind, and what follows is left out. */
const byPlace = (width: number): readonly (Column | undefined)[] =>
  Array.from({ length: width }, (_, i) => (['contact', 'name', 'kind'] as const)[i])
