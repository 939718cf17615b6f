/** What the rows of a pasted table say, cell by cell, each read by what takes it; nothing is laid over anything here. */
import type { Express } from '../line/fields.ts'
import { readContactTexts, readLeg } from './contact-words.ts'
import { meaningOfWord, typeOfWord, type WordMeaning } from './kind-words.ts'
import { type Pasted, type PastedRow, wordKey } from './pasted.ts'
import { COLUMN_LABEL } from './pasted-columns.ts'
import { FACT_COLUMNS, type FactColumn, readFactCell } from './pasted-facts.ts'
import type { Contact, ContactType, Leg } from './types.ts'

export type ReadRow = {
  readonly line: number
  readonly id: string
  /** the contact as it stands, where the connector has it */
  readonly old: Contact | undefined
  readonly meaning: WordMeaning | undefined
  readonly type: ContactType
  readonly texts: Contact['texts']
  readonly facts: { readonly [K in FactColumn]?: string }
  /** what the column for pairs holds */
  readonly partner: string
  /** what the column for legs says */
  readonly leg: Leg | undefined
}

export type RowsGiven = {
  readonly pasted: Extract<Pasted, { ok: true }>
  readonly contacts: readonly Contact[]
  /** what the user said words for the kind of line mean, by `wordKey` */
  readonly said: ReadonlyMap<string, WordMeaning>
  readonly express?: Express
}

/** Every row, and a sentence naming line and column for each cell that cannot be taken. */
export function readRows(given: RowsGiven): {
  readonly rows: readonly ReadRow[]
  readonly refusals: readonly string[]
} {
  const refusals: string[] = []
  const old = new Map(given.contacts.map((contact) => [contact.id, contact]))
  const rows = given.pasted.rows.map((row) => readRow(row, old.get(row.cells.contact ?? ''), given, refusals))
  return { rows, refusals }
}

function readRow(row: PastedRow, old: Contact | undefined, given: RowsGiven, refusals: string[]): ReadRow {
  const { pasted, said, express } = given
  const { cells, line } = row
  const meaning = cells.kind === undefined ? undefined : (said.get(wordKey(cells.kind)) ?? meaningOfWord(cells.kind))
  const facts: { [K in FactColumn]?: string } = {}
  for (const column of FACT_COLUMNS) {
    const text = cells[column]
    if (text === undefined) continue
    const cell = readFactCell({ column, text, unit: pasted.units[column], line }, express)
    if (cell.ok) facts[column] = cell.text
    else refusals.push(cell.message)
  }
  const { texts, refusals: ofTexts } = readContactTexts(cells, line)
  refusals.push(...ofTexts)
  const type = typeOf(row, meaning, old, refusals)
  const extra = [...FACT_COLUMNS, 'leg' as const].filter((column) =>
    column === 'leg' ? cells.leg !== undefined : facts[column] !== undefined,
  )
  if (type !== 'line' && extra.length > 0)
    refusals.push(
      `Line ${line}: a ${type} contact carries no line, yet ${extra.map((column) => `“${COLUMN_LABEL[column]}”`).join(' and ')} of ` +
        'one is filled in; empty it, or say what line it is.',
    )
  const leg = cells.leg === undefined ? undefined : readLeg(cells.leg)
  if (cells.leg !== undefined && leg === undefined)
    refusals.push(
      `Line ${line}, column “${COLUMN_LABEL.leg}”: “${cells.leg}” is no leg of a pair; write a or b, or leave it empty.`,
    )
  return { line, id: cells.contact ?? '', old, meaning, type, texts, facts, partner: cells.pair ?? '', leg }
}

/** Said by its own column, by the word for its kind, by a function that is nothing but such a word; else as it was. */
function typeOf(
  { cells, line }: PastedRow,
  meaning: WordMeaning | undefined,
  old: Contact | undefined,
  refusals: string[],
): ContactType {
  if (cells.type !== undefined) {
    const said = ['line', 'signal', 'filtered'].includes(wordKey(cells.type)) ? 'line' : typeOfWord(cells.type)
    if (said !== undefined) return said
    refusals.push(
      `Line ${line}, column “${COLUMN_LABEL.type}”: “${cells.type}” is no type; write line, ground, spare or feed-through.`,
    )
  }
  if (meaning !== undefined) return meaning.is === 'type' ? meaning.type : 'line'
  const byFunction = cells.name === undefined ? undefined : typeOfWord(cells.name)
  return byFunction ?? old?.type ?? 'line'
}
