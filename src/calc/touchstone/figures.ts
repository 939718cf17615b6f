/** The figures of a Touchstone file in the order they stand, each with its line, and which of them begin a line. */
export type Figures = {
  readonly add: (value: number, line: number) => void
  readonly count: () => number
  readonly value: (at: number) => number
  readonly line: (at: number) => number
  /** the rows of the file: where each begins */
  readonly beginRow: () => void
  readonly rows: readonly number[]
}

export function makeFigures(): Figures {
  let values = new Float64Array(1024)
  let lines = new Int32Array(1024)
  let count = 0
  const rows: number[] = []
  return {
    add: (value, line) => {
      if (count === values.length) {
        const more = new Float64Array(2 * count)
        more.set(values)
        const moreLines = new Int32Array(2 * count)
        moreLines.set(lines)
        values = more
        lines = moreLines
      }
      values[count] = value
      lines[count] = line
      count += 1
    },
    count: () => count,
    value: (at) => values[at] as number,
    line: (at) => lines[at] as number,
    beginRow: () => rows.push(count),
    rows,
  }
}
