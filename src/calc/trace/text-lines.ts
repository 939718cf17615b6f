/** The lines of a long text one by one, without a second copy of it. */

export type Lines = {
  /** the next line without its end, or undefined behind the last */
  readonly next: () => string | undefined
  /** number of the line given last, from 1 */
  readonly line: () => number
  /** how many characters were read */
  readonly at: () => number
  /** the line that was too long to be one; there `next` ended */
  readonly tooLong: () => number | undefined
}

/** A line longer than this is no row of a table: nothing may take long over one line. */
export const MOST_LINE_CHARACTERS = 20_000

/** Lines end with LF or CR LF; where there is no LF at all, with CR. A byte-order mark is left out. */
export function linesOf(text: string): Lines {
  const end = text.includes('\n') ? '\n' : '\r'
  let at = text.startsWith('\uFEFF') ? 1 : 0
  let line = 0
  let tooLong: number | undefined
  return {
    next: () => {
      if (at >= text.length) return undefined
      const found = text.indexOf(end, at)
      const stop = found < 0 ? text.length : found
      if (stop - at > MOST_LINE_CHARACTERS) {
        tooLong = line + 1
        at = text.length
        return undefined
      }
      const cut = stop > at && text.charCodeAt(stop - 1) === 13 ? stop - 1 : stop
      const read = text.slice(at, cut)
      at = stop + 1
      line += 1
      return read
    },
    line: () => line,
    at: () => at,
    tooLong: () => tooLong,
  }
}

/** A line that says something about the file and holds no figures of it. */
export const isComment = (line: string): boolean => /^\s*(?:[#!%*']|\/\/|--(?!\d))/.test(line)

/** The same without its mark, since headings are often written as comments. */
export const withoutMark = (line: string): string => line.replace(/^\s*(?:[#!%*']+|\/\/+|--+|;+)\s*/, '')
