/** Reads the text of a column, entry by entry. */
import type { ColumnEntry, ColumnType } from '../column.ts'
import { foldText } from '../quantity/fold.ts'
import { formatQuantity } from '../quantity/format.ts'
import { levelUnitOf } from '../quantity/level-unit.ts'
import { parseQuantity } from '../quantity/parse.ts'
import { QUANTITIES } from '../quantity/quantity.ts'

export type ColumnReading =
  | { readonly is: 'entries'; readonly entries: readonly ColumnEntry[] }
  | { readonly is: 'refused'; readonly code: string; readonly message: string }

/** Steps of a trial on one morning; nobody goes on for longer. */
const MOST_ENTRIES = 60
const LONGEST_TEXT = 80

/**
 * The entries of a text such as "bare; 0; 1n; ; 10n". A semicolon at the end begins no entry. A refusal names the entry
 * by its number and says what would be right. Never throws.
 */
export function readColumn(type: ColumnType, text: string): ColumnReading {
  const items = text.split(';')
  if (items.length > 1 && foldText(items.at(-1) ?? '') === '') items.pop()
  if (items.length > MOST_ENTRIES)
    return refused('too-many', `That is ${items.length} entries; write at most ${MOST_ENTRIES}, separated by “;”.`)
  const entries: ColumnEntry[] = []
  for (const [index, item] of items.entries()) {
    const read = readEntry(type, foldText(item))
    if ('code' in read)
      return { ...read, message: items.length > 1 ? `Entry ${index + 1}: ${read.message}` : read.message }
    entries.push(read)
  }
  return { is: 'entries', entries }
}

const refused = (code: string, message: string) => ({ is: 'refused', code, message }) as const

function readEntry(type: ColumnType, item: string): ColumnEntry | ReturnType<typeof refused> {
  if (item === '') return { is: 'none' }
  const word = type.words.find((one) => one === item.toLowerCase())
  if (word !== undefined) return { is: 'word', word }
  if (type.quantity !== undefined) return readNumber(type, type.quantity, item)
  if (type.words.length > 0)
    return refused('unknown-choice', `“${item.slice(0, 40)}” is none of ${listed(type.words)}.`)
  if (item.length > LONGEST_TEXT)
    return refused('too-long', `That is ${item.length} characters; write at most ${LONGEST_TEXT}.`)
  return { is: 'word', word: item }
}

function readNumber(type: ColumnType, quantity: NonNullable<ColumnType['quantity']>, item: string) {
  const read = parseQuantity(item, quantity)
  const takes = `write ${type.words.length > 0 ? `${listed(type.words)}, or ` : ''}${QUANTITIES[quantity].word} such as ${type.example}`
  if (read.is === 'empty') return { is: 'none' } as const
  if (read.is === 'expression') return refused('not-a-number', `“${item.slice(0, 40)}” is a calculation; ${takes}.`)
  if (read.is === 'refused')
    return read.code === 'not-a-number'
      ? refused(read.code, `“${item.slice(0, 40)}” is not read here; ${takes}.`)
      : refused(read.code, read.message)
  const { si } = read
  if (si < type.min || si > type.max)
    return refused(
      'out-of-range',
      `${formatQuantity(si, quantity)} is outside what this field works with; give ${QUANTITIES[quantity].word} from ${formatQuantity(type.min, quantity)} to ${formatQuantity(type.max, quantity)}.`,
    )
  const unit = quantity === 'level' ? levelUnitOf(item) : undefined
  return { is: 'number', si, ...(unit === undefined ? {} : { unit }) } as const
}

const listed = (words: readonly string[]): string => words.join(', ')
