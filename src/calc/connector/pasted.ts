/** A pasted table as rows of contacts: which column is what, and what does not fit; nothing is taken over here. */
import { type Delimiter, readTable } from './table-text.ts'

/** What a column can hold. Texts stay as typed; the fields of the checks read them. */
export const COLUMNS = [
  'contact',
  'name',
  'kind',
  'wire',
  'frequencyHz',
  'neededDb',
  'sourceOhm',
  'loadOhm',
  'existingF',
  'busMaxV',
  'remark',
] as const
export type Column = (typeof COLUMNS)[number]

export const COLUMN_LABEL: Readonly<Record<Column, string>> = {
  contact: 'Contact',
  name: 'Function',
  kind: 'Line kind',
  wire: 'Wire',
  frequencyHz: 'Noise frequency',
  neededDb: 'Needed attenuation',
  sourceOhm: 'Noise source impedance',
  loadOhm: 'Noise load impedance',
  existingF: 'Capacitance on the line',
  busMaxV: 'Highest line voltage',
  remark: 'Remark',
}

/** Words of a header, small letters, one list a column; the longest word found in a heading decides. */
const HEADER_WORDS: Readonly<Record<Column, readonly string[]>> = {
  contact: ['contact', 'pin', 'position', 'way', 'cavity', 'terminal', 'pos', 'id', 'no', 'nr', '#'],
  name: ['function', 'signal', 'name', 'description', 'circuit', 'use', 'signal name'],
  kind: ['line kind', 'kind', 'type', 'line', 'interface', 'signal type', 'standard', 'bus', 'class'],
  wire: ['wire', 'wire no', 'wire number', 'cable', 'conductor', 'wire id'],
  frequencyHz: ['noise frequency', 'frequency', 'freq', 'hz', 'noise'],
  neededDb: ['needed attenuation', 'attenuation', 'need', 'needed', 'db', 'loss'],
  sourceOhm: ['noise source impedance', 'source impedance', 'source', 'zs', 'source ohm'],
  loadOhm: ['noise load impedance', 'load impedance', 'load', 'zl', 'load ohm'],
  existingF: ['capacitance on the line', 'existing', 'existing capacitance', 'wiring capacitance'],
  busMaxV: ['highest line voltage', 'voltage', 'volts', 'volt', 'v', 'max voltage'],
  remark: ['remark', 'remarks', 'note', 'notes', 'comment', 'comments'],
}

export type PastedRow = { readonly line: number; readonly cells: { readonly [K in Column]?: string } }

export type Pasted =
  | {
      readonly ok: true
      readonly delimiter: Delimiter
      /** the column of each place; undefined = not taken over */
      readonly columns: readonly (Column | undefined)[]
      /** the headings as they stand, or undefined where the first row is a contact already */
      readonly headings: readonly string[] | undefined
      readonly rows: readonly PastedRow[]
      /** words for the kind of line, each once, in order, with how many rows use it */
      readonly kindWords: readonly { readonly word: string; readonly rows: number }[]
    }
  | { readonly ok: false; readonly message: string }

const MOST_CONTACT_CHARACTERS = 12

/**
 * Reads a pasted table. `columns` overrules what the headings say. A sentence with its line where a row has no contact,
 * or a contact stands twice: nothing is half taken over.
 */
export function readPasted(text: string, columns?: readonly (Column | undefined)[]): Pasted {
  const table = readTable(text)
  if (!table.ok) return table
  const [first] = table.rows
  if (!first) return { ok: false, message: 'There is no row in this text.' }
  const named = first.cells.map(columnOf)
  const hasHeadings = named.filter((column) => column !== undefined).length >= 2 || first.cells.some(isContactHeading)
  const width = table.rows.reduce((most, { cells }) => Math.max(most, cells.length), 0)
  const chosen = columns ?? (hasHeadings ? withoutDoubles(named) : byPlace(width))
  const at = chosen.indexOf('contact')
  if (at < 0)
    return { ok: false, message: 'No column names the contacts: give one the heading “contact”, or choose it below.' }
  const rows: PastedRow[] = []
  const seen = new Map<string, number>()
  for (const { line, cells } of hasHeadings ? table.rows.slice(1) : table.rows) {
    const id = cells[at] ?? ''
    if (id === '') return { ok: false, message: `Line ${line} names no contact: its “contact” cell is empty.` }
    if (id.length > MOST_CONTACT_CHARACTERS)
      return {
        ok: false,
        message: `Line ${line}: “${id.slice(0, MOST_CONTACT_CHARACTERS)}…” is too long for a contact.`,
      }
    const before = seen.get(id)
    if (before !== undefined)
      return { ok: false, message: `Contact “${id}” stands on line ${before} and on line ${line}; it can stand once.` }
    seen.set(id, line)
    rows.push({ line, cells: cellsOf(cells, chosen) })
  }
  if (rows.length === 0) return { ok: false, message: 'There are headings and no row below them.' }
  return {
    ok: true,
    delimiter: table.delimiter,
    columns: chosen,
    headings: hasHeadings ? first.cells : undefined,
    rows,
    kindWords: wordsOf(rows),
  }
}

function cellsOf(cells: readonly string[], columns: readonly (Column | undefined)[]): PastedRow['cells'] {
  const found: Partial<Record<Column, string>> = {}
  columns.forEach((column, i) => {
    const text = cells[i] ?? ''
    if (column !== undefined && text !== '') found[column] = text
  })
  return found
}

function wordsOf(rows: readonly PastedRow[]): readonly { readonly word: string; readonly rows: number }[] {
  const words = new Map<string, { word: string; rows: number }>()
  for (const { cells } of rows) {
    if (cells.kind === undefined) continue
    const key = cells.kind.toLowerCase().replaceAll(/\s+/g, ' ')
    const found = words.get(key)
    if (found) found.rows += 1
    else words.set(key, { word: cells.kind, rows: 1 })
  }
  return [...words.values()]
}

/** What a heading says; its longest word that is known decides. */
function columnOf(heading: string): Column | undefined {
  const said = heading
    .toLowerCase()
    .replaceAll(/[^a-z#]+/g, ' ')
    .trim()
  let best: { column: Column; length: number } | undefined
  for (const column of COLUMNS) {
    for (const word of HEADER_WORDS[column]) {
      if (!` ${said} `.includes(` ${word} `) || (best && word.length <= best.length)) continue
      best = { column, length: word.length }
    }
  }
  return best?.column
}

const isContactHeading = (heading: string) => columnOf(heading) === 'contact' && !/\d/.test(heading)

/** A column is taken once, the first time it is named. */
function withoutDoubles(columns: readonly (Column | undefined)[]): readonly (Column | undefined)[] {
  return columns.map((column, i) => (column !== undefined && columns.indexOf(column) === i ? column : undefined))
}

/** Without headings: contact, function, kind, and what follows is left out. */
const byPlace = (width: number): readonly (Column | undefined)[] =>
  Array.from({ length: width }, (_, i) => (['contact', 'name', 'kind'] as const)[i])
