/** The sheet of a connector as it is printed, shared and written to files: its own copy whole, a maker's without what is internal. */
import type { SheetBody } from '../calc/connector/sheet/body.ts'
import { asDecided, type SheetWindow } from '../calc/connector/sheet/grounds.ts'
import { NONE, type SheetRow } from '../calc/connector/sheet/rows.ts'
import type { Connector } from '../calc/connector/types.ts'
import { checkById } from '../calc/registry.ts'
import type { Complaint } from '../store/complaint.ts'
import { addressFor } from './check.ts'
import { expressionReading } from './expression.ts'

/** The address that brings a window back in the app, with all its answer rests on; it names no complaint. */
export function windowHash({ line, decided }: SheetWindow, { shared }: Connector): string {
  const check = checkById('window')
  return check ? addressFor(check, asDecided(line, decided, shared), expressionReading) : '#/check'
}

/** What stands in a maker's copy where a text would name something internal. */
export const LEFT_OUT = 'left out'

/** Shorter texts are words of anything. */
const SHORTEST = 3

/** Texts of a complaint and its connector that no maker reads: each line of them on its own. */
export function internalTexts(complaint: Complaint, { texts }: Connector): readonly string[] {
  const { title, aircraft = '', note, tables, events } = complaint
  const typed = [title, aircraft, note, texts.equipment, texts.remark, ...stringsIn(tables), ...readingsIn(events)]
  const lines = typed.flatMap((text) => text?.split('\n') ?? [])
  return [...new Set(lines.map((text) => text.trim().toLowerCase()).filter((text) => text.length >= SHORTEST))]
}

function stringsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : []
}

const readingsIn = (events: Complaint['events']): readonly string[] =>
  (events ?? []).flatMap(({ reading }) => reading ?? [])

export type SupplierCopy = {
  readonly body: SheetBody
  /** contacts of which a text was left out, because it holds an internal one */
  readonly leftOut: readonly string[]
}

/** The same sheet for the maker of the connector: no equipment, remark or trial, and no text that holds an internal one. */
export function supplierCopy(body: SheetBody, complaint: Complaint): SupplierCopy {
  const { connector } = body
  const internal = internalTexts(complaint, connector)
  const isInternal = (text: string) => internal.some((one) => text.toLowerCase().includes(one))
  const leftOut: string[] = []
  const outward = (text: string, id: string): string => {
    if (text === NONE || !isInternal(text)) return text
    if (!leftOut.includes(id)) leftOut.push(id)
    return LEFT_OUT
  }
  const rows = body.rows.map(
    (row): SheetRow => ({
      ...row,
      function: outward(row.function, row.id),
      remark: outward(row.remark, row.id),
      suppressor: outward(row.suppressor, row.id),
      place: outward(row.place, row.id),
    }),
  )
  const { equipment: _equipment, remark: _remark, ...texts } = connector.texts
  return {
    body: { ...body, connector: { ...connector, texts }, rows, trials: [] },
    leftOut,
  }
}
