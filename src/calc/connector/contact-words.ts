/** Words for what is known of a contact: its type, zone and phase, as screens say them and tables write them. */
import { wordKey } from './pasted.ts'
import { COLUMN_LABEL, type Column } from './pasted-columns.ts'
import type { Contact, ContactText, ContactType, Leg } from './types.ts'

export const TYPE_WORD: Readonly<Record<ContactType, string>> = {
  line: 'line',
  ground: 'ground',
  spare: 'spare',
  'feed-through': 'feed-through',
}

export const ZONES = ['pressurised', 'unpressurised'] as const
export const PHASES = ['A', 'B', 'C', 'neutral'] as const

/** The text of a contact behind a column. */
export const TEXT_OF_COLUMN = {
  name: 'function',
  wire: 'wire',
  pin: 'pin',
  zone: 'zone',
  phase: 'phase',
  remark: 'remark',
} as const satisfies { readonly [K in Column]?: ContactText }
export type TextColumn = keyof typeof TEXT_OF_COLUMN
export const TEXT_COLUMNS = Object.keys(TEXT_OF_COLUMN) as readonly TextColumn[]

/** Pressurised or not, as people write it; undefined where it says neither. */
export function readZone(text: string): (typeof ZONES)[number] | undefined {
  const word = wordKey(text).replaceAll(/[^a-z]/g, '')
  if (['unpressurised', 'unpressurized', 'unpress', 'no', 'n', 'u'].includes(word)) return 'unpressurised'
  return ['pressurised', 'pressurized', 'press', 'yes', 'y', 'p'].includes(word) ? 'pressurised' : undefined
}

export function readPhase(text: string): (typeof PHASES)[number] | undefined {
  const word = wordKey(text).replace(/^(?:phase|ph|l)[\s.]*(?=[abcn123]$)/, '')
  const places: Readonly<Record<string, (typeof PHASES)[number]>> = {
    a: 'A',
    b: 'B',
    c: 'C',
    1: 'A',
    2: 'B',
    3: 'C',
    n: 'neutral',
    neutral: 'neutral',
  }
  return Object.hasOwn(places, word) ? places[word] : undefined
}

/** The leg of a pair, by its letter or by its sign. */
export function readLeg(text: string): Leg | undefined {
  const word = wordKey(text).replace(/^leg /, '')
  if (['a', '+', 'p', 'pos', 'positive', 'plus', 'h', 'hi', 'high'].includes(word)) return 'a'
  return ['b', '-', '−', '–', 'n', 'neg', 'negative', 'minus', 'l', 'lo', 'low'].includes(word) ? 'b' : undefined
}

export type ReadTexts = { readonly texts: Contact['texts']; readonly refusals: readonly string[] }

/** The texts of a contact in the cells of a row; zone and phase are read, the others are taken as they stand. */
export function readContactTexts(cells: { readonly [K in Column]?: string }, line: number): ReadTexts {
  const texts: { [K in ContactText]?: string } = {}
  const refusals: string[] = []
  for (const column of TEXT_COLUMNS) {
    const text = cells[column]
    if (text === undefined) continue
    const read = column === 'zone' ? readZone(text) : column === 'phase' ? readPhase(text) : text
    if (read !== undefined) texts[TEXT_OF_COLUMN[column]] = read
    else
      refusals.push(
        `Line ${line}, column “${COLUMN_LABEL[column]}”: “${text}” is not one of its words; write ` +
          `${column === 'zone' ? 'pressurised or unpressurised' : 'A, B, C or neutral'}.`,
      )
  }
  return { texts, refusals }
}
