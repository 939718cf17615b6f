/**
 * Tables filled in on the screen, written at every key: into the complaint where there is one, else into the triage.
 *
 * `filledOf(complaintId)`   what was filled in; without an id that of the triage under way
 * `writeFilled(complaintId, cell)`
 */
import type { Filled } from '../guide/fill-ins.ts'
import { type CellEdit, writeCell } from '../store/edits.ts'
import { carryOut, find } from './log.ts'
import { setTriageTables, triage } from './session.ts'

export function filledOf(complaintId: string | undefined): Filled | undefined {
  return complaintId === undefined ? triage.value.tables : find(complaintId)?.tables
}

/** Writes one cell; `cell.base` is what the field showed before this key. */
export function writeFilled(complaintId: string | undefined, cell: CellEdit): void {
  if (complaintId === undefined) {
    setTriageTables(writeCell(triage.peek().tables, cell))
    return
  }
  const key = `${complaintId}:${cell.table}:${cell.row}:${cell.column}`
  if (find(complaintId) !== undefined)
    void carryOut({ do: 'cell', id: complaintId, at: new Date().toISOString(), ...cell }, key)
}
