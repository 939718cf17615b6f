/** Rows of a golden file: one figure, what goes in, what must come out, within what, and who says so. */
import { expect, it } from 'vitest'

export type Given = Readonly<Record<string, number | string | undefined>>
export type GoldenRow = {
  readonly id: string
  readonly figure: string
  readonly given: Given
  readonly expected: number
  readonly tolerance: number
  readonly source: string
}

export type Numbers = (key: string) => number
export type Words = (key: string) => string
export type Figure = (numbers: Numbers, words: Words, given: Given) => number

/** What the program says for a row; throws for a row of an unknown figure. */
export function calculated(row: GoldenRow, figures: Readonly<Record<string, Figure>>): number {
  const figure = figures[row.figure]
  if (figure === undefined) throw new Error(`no figure ${row.figure}`)
  return figure(numbersOf(row.given), wordsOf(row.given), row.given)
}

/** One test per row; a row of an unknown figure fails. */
export function testRows(rows: readonly GoldenRow[], figures: Readonly<Record<string, Figure>>): void {
  for (const row of rows) {
    it(`${row.id} (${row.source})`, () => {
      const got = calculated(row, figures)
      expect(Math.abs(got - row.expected), `got ${got}, expected ${row.expected}`).toBeLessThanOrEqual(row.tolerance)
    })
  }
}

const numbersOf =
  (given: Given): Numbers =>
  (key) => {
    const value = given[key]
    if (typeof value !== 'number') throw new Error(`row lacks the number ${key}`)
    return value
  }

const wordsOf =
  (given: Given): Words =>
  (key) => {
    const value = given[key]
    if (typeof value !== 'string') throw new Error(`row lacks the word ${key}`)
    return value
  }
