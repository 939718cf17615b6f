/** Cells of one line of a measurement file, and the numbers in them. */

export type Divider = '\t' | ';' | ',' | ' '

export const DIVIDER_NAME: Readonly<Record<Divider, string>> = {
  '\t': 'tabs',
  ';': 'semicolons',
  ',': 'commas',
  ' ': 'spaces',
}

/** Cells as they stand, blanks and quotes around them taken off; a divider inside quotes divides nothing. */
export function cellsOf(line: string, divider: Divider): readonly string[] {
  if (line.includes('"')) return quotedCells(line, divider)
  if (divider === ' ') return line.trim().split(/\s+/)
  return line.split(divider).map((cell) => cell.trim())
}

function quotedCells(line: string, divider: Divider): readonly string[] {
  const cells: string[] = []
  let cell = ''
  let isQuoted = false
  for (const sign of divider === ' ' ? line.trim() : line) {
    if (sign === '"') isQuoted = !isQuoted
    else if (!isQuoted && (divider === ' ' ? sign.trim() === '' : sign === divider)) {
      if (divider !== ' ' || cell !== '') cells.push(cell.trim())
      cell = ''
    } else cell += sign
  }
  cells.push(cell.trim())
  return cells
}

const WITH_POINT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/
const WITH_COMMA = /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?$/
/** A number with letters behind it: "9 kHz", "45.2dBµV". */
const WITH_UNIT = /^([+\-−]?[\d.,]+(?:[eE][+-]?\d+)?)\s*([A-Za-zµ\u03bc][A-Za-zµ\u03bc/]*)$/u

/** The number a cell is, all of it; NaN where it is none. One decimal sign, a point or (where the file has them) a comma. */
export function numberIn(cell: string, hasDecimalComma: boolean): number {
  const text = cell.charCodeAt(0) === 0x2212 ? `-${cell.slice(1)}` : cell
  if (WITH_POINT.test(text)) return Number(text)
  if (hasDecimalComma && WITH_COMMA.test(text)) return Number(text.replace(',', '.'))
  return Number.NaN
}

/** A cell as a number and the unit written in it, if any. */
export function measureIn(cell: string, hasDecimalComma: boolean): { readonly figure: number; readonly unit: string } {
  const plain = numberIn(cell, hasDecimalComma)
  if (!Number.isNaN(plain)) return { figure: plain, unit: '' }
  const match = WITH_UNIT.exec(cell)
  return match
    ? { figure: numberIn(match[1] ?? '', hasDecimalComma), unit: match[2] ?? '' }
    : { figure: Number.NaN, unit: '' }
}

/** The unit of the figure in a column: written behind it, or alone in the next cell; '' where there is none. */
export function unitAt(cells: readonly string[], at: number, hasDecimalComma: boolean): string {
  const beside = cells[at + 1] ?? ''
  return measureIn(cells[at] ?? '', hasDecimalComma).unit || (WORD.test(beside) ? beside : '')
}

const WORD = /^[A-Za-zµ\u03bc/]+$/u

/** Digits, a comma and three digits: a thousand or a decimal. */
export const couldBeGrouped = (cell: string): boolean => /^[+-]?[1-9]\d{0,2},\d{3}$/.test(cell)
