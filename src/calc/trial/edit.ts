/** Writing a trial one entry at a time: texts of columns in, texts of columns out, what was typed elsewhere kept as it is. */
import type { TrialColumn } from './note.ts'

export type ColumnTexts = { readonly [K in TrialColumn]: string }

const entriesOf = (text: string): readonly string[] =>
  text.trim() === '' ? [] : text.split(';').map((one) => one.trim())

/** The entries of every column, a row a step; rows without a part come along, so that a row stays where it is. */
export function rowsOf(texts: ColumnTexts): readonly { readonly [K in TrialColumn]: string }[] {
  const columns = {
    steps: entriesOf(texts.steps),
    places: entriesOf(texts.places),
    noise: entriesOf(texts.noise),
    signal: entriesOf(texts.signal),
    repeats: entriesOf(texts.repeats),
    times: entriesOf(texts.times),
  }
  return columns.steps.map((steps, row) => ({
    steps,
    places: columns.places[row] ?? '',
    noise: columns.noise[row] ?? '',
    signal: columns.signal[row] ?? '',
    repeats: columns.repeats[row] ?? '',
    times: columns.times[row] ?? '',
  }))
}

/** The text of a column with one entry written, as far as the last one that says anything. */
export function withEntry(text: string, row: number, entry: string): string {
  const entries = [...entriesOf(text)]
  while (entries.length <= row) entries.push('')
  entries[row] = entry.trim().replaceAll(';', ',')
  return joined(entries)
}

/** An empty list is an empty text; a first entry without text keeps its semicolon, so that the second stays the second. */
function joined(entries: readonly string[]): string {
  const last = entries.findLastIndex((one) => one !== '')
  return entries.slice(0, last + 1).join('; ')
}

/** The order of a trial: bare, empty adapter, the values from small to large, empty, bare. */
export const orderOf = (values: readonly string[]): string => ['bare', 'empty', ...values, 'empty', 'bare'].join('; ')

/**
 * The columns with a value put in before the empty adapter at the end, in its place among the capacitors after the last
 * step that was noted; every other column moves along.
 */
export function withValue(texts: ColumnTexts, value: string): ColumnTexts {
  const rows = rowsOf(texts)
  if (rows.length === 0) return { ...texts, steps: orderOf([value]) }
  const noted = rows.findLastIndex(({ noise, signal }) => noise !== '' || signal !== '')
  const end = rows.findIndex(
    ({ steps }, row) => row > Math.max(noted, 0) && (steps === 'empty' || steps === 'bare') && row > 1,
  )
  const at = end < 0 ? rows.length : end
  const moved = (text: string, entry: string): string => {
    const entries = [...entriesOf(text)]
    while (entries.length < at) entries.push('')
    entries.splice(at, 0, entry)
    return joined(entries)
  }
  const closing = end < 0 ? '; empty; bare' : ''
  return {
    steps: `${moved(texts.steps, value)}${closing}`,
    places: texts.places === '' ? '' : moved(texts.places, ''),
    noise: texts.noise === '' ? '' : moved(texts.noise, ''),
    signal: texts.signal === '' ? '' : moved(texts.signal, ''),
    repeats: texts.repeats === '' ? '' : moved(texts.repeats, ''),
    times: texts.times === '' ? '' : moved(texts.times, ''),
  }
}
