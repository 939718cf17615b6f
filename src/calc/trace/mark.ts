/** What of an opened trace stands for all of its rows, and a mark of the facts under which it does. */
import type { ColumnEntry, Input } from '../types.ts'

const OPENED = 'From an opened trace'

export const rowCountInput = {
  key: 'traceRowCount',
  fact: 'traceRowCount',
  label: 'Rows of the opened trace',
  help: 'Only the few that carry the need stand in the fields. Opening the trace fills this in; empty it where the points were typed by hand.',
  type: { is: 'number', quantity: 'number', min: 1, max: 1e7 },
  whenEmpty: { do: 'omit' },
  group: OPENED,
} as const satisfies Input

const MARK = { is: 'column', words: [], min: 0, max: 0, example: '1k2j3hx9d8s' } as const

export const settledForInput = {
  key: 'traceSettledFor',
  fact: 'traceSettledFor',
  label: 'They stand for all under',
  help: 'A mark of limit, margin and reading under which those few carry the need of all rows. Opening the trace fills it in.',
  type: MARK,
  whenEmpty: { do: 'omit' },
  group: OPENED,
} as const satisfies Input

export const heldForInput = {
  key: 'traceHeldFor',
  fact: 'traceHeldFor',
  label: 'Every row is met under',
  help: 'A mark of the facts under which the part was tried on all rows and met them. Opening the trace fills it in.',
  type: MARK,
  whenEmpty: { do: 'omit' },
  group: OPENED,
} as const satisfies Input

type Values = Readonly<Record<string, unknown>>
const OF_THE_TRACE = ['traceRowCount', 'traceSettledFor', 'traceHeldFor']

/** A mark of all these values but what is filled in by opening: FNV-1a of their text, 32 bits forwards and 32 backwards. */
export function markOf(values: Values): string {
  const text = JSON.stringify(Object.entries(values).filter(([key]) => !OF_THE_TRACE.includes(key)))
  const mixed = (at: (i: number) => number): string => {
    let hash = 0x811c9dc5
    for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ at(i), 0x01000193) >>> 0
    return hash.toString(36)
  }
  return `${mixed((i) => text.charCodeAt(i))}x${mixed((i) => text.charCodeAt(text.length - 1 - i))}`
}

/** Whether rows that are not in the fields may say something else under these values than under those of the mark. */
export function isUntried(values: Values, mark: readonly ColumnEntry[] | undefined): boolean {
  const [entry] = mark ?? []
  return values['traceRowCount'] !== undefined && !(entry?.is === 'word' && entry.word === markOf(values))
}
