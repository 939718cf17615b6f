/** The way back from a deletion. */
import { assemble, recordOf } from '../store/complaint.ts'
import { lastDeleted, noteBroughtBack } from './complaints.ts'
import { carryOut, find, showAgain } from './log.ts'

/** Brings back what was deleted last, or another thing deleted in this visit; then the one before it is offered. */
export function undoRemove(which = lastDeleted.value): void {
  if (which === undefined) return
  const { id, line, complaint, back } = which
  const old = find(id)
  // A line comes back into its complaint, which may have to come back first.
  if (line !== undefined && old === undefined) return
  noteBroughtBack(which)
  back?.()
  if (complaint !== undefined) {
    showAgain(complaint)
    void carryOut({ do: 'undelete', id, at: new Date().toISOString() })
  }
  if (line === undefined || old === undefined) return
  showAgain(assemble(recordOf(old), [...old.lines, line]))
  void carryOut({ do: 'undoRemoveLine', id, lineId: line.id, at: new Date().toISOString() })
}
