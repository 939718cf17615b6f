/** What a maker may have of a connector: everything about its contacts, nothing of whose complaint it is. */
import type { SheetBody } from '../calc/connector/sheet/body.ts'
import { NONE, type SheetRow } from '../calc/connector/sheet/rows.ts'
import type { Connector, Contact } from '../calc/connector/types.ts'
import { resolve } from '../calc/line/resolver.ts'
import { checkById } from '../calc/registry.ts'
import type { Fact, FactKey, Line } from '../calc/types.ts'
import type { Complaint } from '../store/complaint.ts'
import { type KeptConnector, keptConnector } from '../store/connector.ts'
import { writeFile } from '../store/exchange/file.ts'
import { newId } from '../store/ids.ts'
import { newComplaint } from '../store/new-complaint.ts'
import { expressionReading } from './expression.ts'

/** What stands in a maker's copy where a text would name something internal. */
export const LEFT_OUT = 'left out'

/** Shorter texts are words of anything. */
const SHORTEST = 3

/** Texts of a complaint and its connector that no maker reads, each line of them on its own, in small letters. */
export function internalTexts(complaint: Complaint, { name, texts }: Connector): readonly string[] {
  const { title, aircraft = '', note, tables, events } = complaint
  const readings = (events ?? []).flatMap(({ reading }) => reading ?? [])
  const typed = [title, aircraft, note, texts.equipment, texts.remark, ...stringsIn(tables), ...readings]
  const lines = typed.flatMap((text) => text?.split('\n') ?? []).map((text) => text.trim().toLowerCase())
  // the label of the connector is what a maker calls it
  return [...new Set(lines)].filter((text) => text.length >= SHORTEST && text !== name.trim().toLowerCase())
}

function stringsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : []
}

export type SupplierCopy = {
  readonly body: SheetBody
  /** lines the connector carries */
  readonly lines: readonly Line[]
  /** contacts of which a text was left out, because it holds an internal one */
  readonly leftOut: readonly string[]
}

/** The same sheet for the maker: no equipment, remark of the connector or trial, and no typed text that holds an internal one. */
export function supplierCopy(body: SheetBody, complaint: Complaint): SupplierCopy {
  const { connector } = body
  const internal = internalTexts(complaint, connector)
  const isInternal = (text: string) => internal.some((one) => text.toLowerCase().includes(one))
  const leftOut = new Set<string>()
  const outward = (text: string, id?: string): string => {
    if (!isInternal(text)) return text
    if (id !== undefined) leftOut.add(id)
    return LEFT_OUT
  }
  const contacts = connector.contacts.map(
    (contact): Contact => ({ ...contact, texts: mapped(contact.texts, (text) => outward(text, contact.id)) }),
  )
  const rows = body.rows.map((row): SheetRow => {
    const cell = (text: string) => (text === NONE ? text : outward(text, row.id))
    return {
      ...row,
      function: cell(row.function),
      suppressor: cell(row.suppressor),
      place: cell(row.place),
      remark: cell(row.remark),
    }
  })
  const { equipment: _equipment, remark: _remark, ...texts } = connector.texts
  const carried = new Set(contacts.map(({ lineId }) => lineId))
  const lines = complaint.lines.filter(({ id }) => carried.has(id)).map((line) => outwardLine(line, outward))
  return {
    body: {
      ...body,
      connector: { ...connector, contacts, texts: mapped(texts, (text) => outward(text)) },
      rows,
      trials: [],
    },
    lines,
    leftOut: body.rows.map(({ id }) => id).filter((id) => leftOut.has(id)),
  }
}

/** What window and surge read of a line, without how it was found out: of two levels that were measured, the need alone. */
function outwardLine(line: Line, outward: (text: string) => string): Line {
  const resolution = resolve(line, expressionReading)
  const keys = (['window', 'surge'] as const).flatMap((id) => checkById(id)?.inputs.map(({ fact }) => fact) ?? [])
  const facts: { [K in FactKey]?: Fact } = {}
  for (const key of keys) {
    const fact = resolution.fact(key)
    const isProposed = fact?.origin.by === 'check' && fact.origin.check === 'window'
    if (fact !== undefined && fact.origin.by !== 'kind' && !isProposed)
      facts[key] = { text: fact.text, origin: { by: 'user' } }
  }
  return { id: line.id, name: outward(line.name), gate: line.gate, trials: [], facts }
}

function mapped<K extends string>(
  texts: { readonly [P in K]?: string },
  to: (text: string) => string,
): { [P in K]?: string } {
  const found: { [P in K]?: string } = {}
  for (const key in texts) {
    const text = texts[key]
    if (text !== undefined) found[key] = to(text)
  }
  return found
}

/** The copy as a file that any copy of the app brings in, as a new design: it names the complaint it is of not even by its ids. */
export const supplierFile = (copy: SupplierCopy): string => writeFile([supplierDesign(copy)])

function supplierDesign({ body, lines }: SupplierCopy): {
  readonly complaint: Complaint
  readonly connectors: readonly KeptConnector[]
} {
  const ids = new Map(lines.map(({ id }) => [id, newId()]))
  const own = lines.map((line) => ({ ...line, id: ids.get(line.id) ?? newId() }))
  const complaint = newComplaint({ title: `Connector ${body.connector.name}`.trim(), purpose: 'design', lines: own })
  const contacts = body.connector.contacts.map(({ lineId, ...contact }): Contact => {
    const id = lineId === undefined ? undefined : ids.get(lineId)
    return id === undefined ? contact : { ...contact, lineId: id }
  })
  const { name, shape, shared, texts, suppressors, adjacent } = body.connector
  const connector: Connector = { id: newId(), name, shape, contacts, shared, texts, suppressors, adjacent }
  return { complaint, connectors: [keptConnector(connector, complaint.id, 0)] }
}
