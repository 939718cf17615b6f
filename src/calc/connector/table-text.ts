/** Tables as text: read from a spreadsheet or a file, written as RFC 4180 with cells that no spreadsheet takes for a formula. */

export type Delimiter = '\t' | ';' | ','

export const DELIMITER_NAME: Readonly<Record<Delimiter, string>> = { '\t': 'tab', ';': 'semicolon', ',': 'comma' }

/** A row with the number of the line it starts on, from 1. */
export type TextRow = { readonly line: number; readonly cells: readonly string[] }

export type TextTable =
  | { readonly ok: true; readonly delimiter: Delimiter; readonly rows: readonly TextRow[] }
  | { readonly ok: false; readonly line?: number; readonly message: string }

export const MOST_CHARACTERS = 1_000_000
export const MOST_ROWS = 2000
const MOST_CELLS = 100

/**
 * Rows and cells of a text: divided by tab, semicolon or comma (found from the first lines, outside quotes), cells in
 * double quotes may hold anything, a doubled quote is one. Blank rows are left out, blanks around cells too. One pass:
 * the time grows with the length. A sentence with its line where the text is no table.
 */
export function readTable(text: string, delimiter: Delimiter = delimiterOf(text)): TextTable {
  if (text.length > MOST_CHARACTERS)
    return refused(`The text is longer than a million characters; paste one connector.`)
  const rows: TextRow[] = []
  let cells: string[] = []
  let [line, startLine] = [1, 1]
  let cell = ''
  let wasQuoted = false
  let at = text.startsWith('\uFEFF') ? 1 : 0
  const endCell = () => {
    cells.push(unguarded(wasQuoted ? cell : cell.trim()))
    cell = ''
    wasQuoted = false
  }
  const endRow = () => {
    endCell()
    if (cells.some((one) => one !== '')) rows.push({ line: startLine, cells })
    cells = []
    startLine = line
  }
  while (at < text.length) {
    const sign = text[at] as string
    if (sign === '"' && cell.trim() === '' && !wasQuoted) {
      const end = closingQuote(text, at + 1)
      if (end < 0) return refused(`A cell that begins with a quote on line ${line} is never closed.`, line)
      const inside = text.slice(at + 1, end)
      for (const one of inside) if (one === '\n') line += 1
      cell = inside.replaceAll('""', '"')
      wasQuoted = true
      at = end + 1
      continue
    }
    at += 1
    if (sign === delimiter) endCell()
    else if (sign === '\n' || sign === '\r') {
      if (sign === '\r' && text[at] === '\n') at += 1
      line += 1
      endRow()
    } else if (!wasQuoted) cell += sign
    else if (sign.trim() !== '')
      return refused(`On line ${line}, “${sign}” follows a closing quote; double the quotes inside a cell.`, line)
    if (cells.length > MOST_CELLS) return refused(`Line ${line} has more than ${MOST_CELLS} columns.`, line)
    if (rows.length > MOST_ROWS) return refused(`The table has more than ${MOST_ROWS} rows; paste one connector.`)
  }
  endRow()
  if (rows.length === 0)
    return refused('There is no table in this text: paste rows of cells divided by tabs, semicolons or commas.')
  return { ok: true, delimiter, rows }
}

/** Place of the quote that closes a cell, −1 where there is none. */
function closingQuote(text: string, from: number): number {
  for (let at = text.indexOf('"', from); at >= 0; at = text.indexOf('"', at + 2)) if (text[at + 1] !== '"') return at
  return -1
}

const LOOKED_AT = 20

/** The sign that divides the first lines: a tab wherever one stands, then what divides every line into as many cells. */
function delimiterOf(text: string): Delimiter {
  const head = text
    .slice(0, 20_000)
    .replace(/"(?:[^"]|"")*"/g, '')
    .split(/\r\n|\n|\r/, LOOKED_AT)
  const lines = head.filter((line) => line.trim() !== '')
  if (lines.some((line) => line.includes('\t'))) return '\t'
  const many = (sign: Delimiter) => lines.filter((line) => line.includes(sign)).length
  return many(';') >= many(',') ? ';' : ','
}

/**
 * A cell that a spreadsheet would take for a formula, guarded or not: one of the four signs (in full width too) behind
 * blanks that a reader may drop, or a control sign in front.
 */
const FORMULA = /^'*(?:\s*[=+\-@＝＋－＠]|[\t\r\n])/u
const GUARDED = /^'+(?:\s*[=+\-@＝＋－＠]|[\t\r\n])/u

/** The protecting apostrophe comes off again. */
const unguarded = (cell: string) => (GUARDED.test(cell) ? cell.slice(1) : cell)

/** RFC 4180: CRLF after every row, quotes where they are needed, an apostrophe before what looks like a formula. */
export function writeTable(rows: readonly (readonly string[])[], delimiter: Delimiter = ','): string {
  return rows.map((cells) => `${cells.map((cell) => written(cell, delimiter)).join(delimiter)}\r\n`).join('')
}

function written(cell: string, delimiter: Delimiter): string {
  const safe = FORMULA.test(cell) ? `'${cell}` : cell
  // whatever a reader may take for the delimiter is quoted
  const needsQuotes = /["\t;,\r\n]/.test(safe) || safe.includes(delimiter) || safe !== safe.trim()
  return needsQuotes ? `"${safe.replaceAll('"', '""')}"` : safe
}

const refused = (message: string, line?: number): TextTable => ({
  ok: false,
  message,
  ...(line === undefined ? {} : { line }),
})
