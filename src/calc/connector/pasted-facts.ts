/** Cells of a pasted table that are facts of a line: read by the field that takes them, with the unit of their heading. */
import { type Express, readField } from '../line/fields.ts'
import { CHECKS } from '../registry.ts'
import type { FactKey, Input } from '../types.ts'
import { COLUMN_LABEL, type Column } from './pasted-columns.ts'

/** The fact of the line behind a column. */
export const FACT_OF_COLUMN = {
  frequencyHz: 'noiseHz',
  neededDb: 'neededDb',
  sourceOhm: 'noiseSourceOhm',
  loadOhm: 'noiseLoadOhm',
  existingF: 'existingF',
  busMaxV: 'busMaxV',
} as const satisfies { readonly [K in Column]?: FactKey }
export type FactColumn = keyof typeof FACT_OF_COLUMN
export const FACT_COLUMNS = Object.keys(FACT_OF_COLUMN) as readonly FactColumn[]

/** The field that reads a fact: of the first check that has one. */
export function inputOfFact(fact: FactKey): Input {
  for (const { inputs } of CHECKS) for (const input of inputs) if (input.fact === fact) return input
  throw new Error(`no check reads ${fact}`)
}

const INPUTS = Object.fromEntries(
  FACT_COLUMNS.map((column) => [column, inputOfFact(FACT_OF_COLUMN[column])]),
) as Readonly<Record<FactColumn, Input>>

export const inputOfColumn = (column: FactColumn): Input => INPUTS[column]

const BARE_NUMBERS = /^[\d\s.,;+\-−]+$/

/** The text of a cell as the field will hold it: the unit of the heading goes to every bare number. */
function withUnit(text: string, unit: string | undefined, input: Input): string {
  if (unit === undefined || !BARE_NUMBERS.test(text)) return text
  const said = text
    .split(';')
    .map((part) => (part.trim() === '' ? part : `${part.trim()} ${unit}`))
    .join(';')
  return readField(input, said, {}).state === 'value' ? said : text
}

export type FactCell = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string }

/** Reads one cell; a sentence naming its line and column where the field refuses it. */
export function readFactCell(
  { column, text, unit, line }: { column: FactColumn; text: string; unit: string | undefined; line: number },
  express?: Express,
): FactCell {
  const input = inputOfColumn(column)
  const said = withUnit(text, unit, input)
  const field = readField(input, said, {}, express)
  if (field.state !== 'refused') return { ok: true, text: said }
  return {
    ok: false,
    message: `Line ${line}, column “${COLUMN_LABEL[column]}”: ${field.issue?.message ?? 'not read.'}`,
  }
}
