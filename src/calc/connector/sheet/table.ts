/**
 * The contact table as a file: what was typed, in the columns a pasted table is read by, then what was decided. Read back,
 * the same contacts come out of it. RFC 4180; cells a spreadsheet would work out are disarmed.
 */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Line } from '../../types.ts'
import { TEXT_OF_COLUMN, TYPE_WORD } from '../contact-words.ts'
import { meaningOfWord } from '../kind-words.ts'
import { COLUMN_LABEL, COLUMNS, type Column } from '../pasted-columns.ts'
import { FACT_OF_COLUMN } from '../pasted-facts.ts'
import { writeTable } from '../table-text.ts'
import type { Connector, Contact } from '../types.ts'
import { NONE, type SheetRow } from './rows.ts'

/** Headings of what was decided; no word of theirs names a column that is read. */
const DECIDED = [
  ['topology', 'Topology'],
  ['value', 'Part as marked'],
  ['build', 'To be built as'],
  ['spread', 'Over tolerance and service'],
  ['suppressor', 'Suppressor'],
  ['place', 'Placement'],
  ['word', 'Verdict'],
  ['why', 'Because'],
] as const satisfies readonly (readonly [keyof SheetRow, string])[]

type Given = {
  readonly connector: Connector
  readonly lines: readonly Line[]
  /** the rows of its sheet, in the order of its contacts */
  readonly rows: readonly SheetRow[]
}

export function tableFile({ connector, lines, rows }: Given): string {
  const byId = new Map(lines.map((line) => [line.id, line]))
  const headings = [...COLUMNS.map((column) => COLUMN_LABEL[column]), ...DECIDED.map(([, heading]) => heading)]
  const body = connector.contacts.map((contact, at) => {
    const line = contact.lineId === undefined ? undefined : byId.get(contact.lineId)
    const typed = COLUMNS.map((column) => typedCell(column, contact, { line, connector }))
    return [...typed, ...DECIDED.map(([key]) => decidedCell(rows[at]?.[key]))]
  })
  return writeTable([headings, ...body])
}

const decidedCell = (text: string | undefined): string => (text === undefined || text === NONE ? '' : text)

type Around = { readonly line: Line | undefined; readonly connector: Connector }

function typedCell(column: Column, contact: Contact, { line, connector }: Around): string {
  switch (column) {
    case 'contact':
      return contact.id
    case 'kind':
      return kindCell(line)
    case 'type':
      return TYPE_WORD[contact.type]
    case 'pair':
      return mateOf(contact, connector)
    case 'leg':
      return (line && contact.leg) ?? ''
    case 'name':
    case 'wire':
    case 'pin':
    case 'zone':
    case 'phase':
    case 'remark':
      return contact.texts[TEXT_OF_COLUMN[column]] ?? ''
    default:
      return line?.facts[FACT_OF_COLUMN[column]]?.text ?? ''
  }
}

/** The name of a kind; its id where the name could mean another. */
function kindCell(line: Line | undefined): string {
  const id = line?.facts.lineKind?.text.trim() ?? ''
  const name = lineKindById(id)?.name ?? id
  const meaning = meaningOfWord(name)
  return meaning?.is === 'kind' && meaning.kind === id ? name : id
}

/** The other contact of the same line. */
function mateOf({ id, lineId, leg }: Contact, { contacts }: Connector): string {
  if (lineId === undefined || leg === undefined) return ''
  return contacts.find((other) => other.lineId === lineId && other.leg !== undefined && other.id !== id)?.id ?? ''
}
