/** The gate for a complaint that comes with its lines: out of a file, or left behind by a window that ended too soon. */
import { assemble, type Complaint } from './complaint.ts'
import type { Provenance } from './gate.ts'
import { restoreKeptLine } from './line.ts'
import { isRecord } from './plain.ts'
import { restoreRecord } from './restore.ts'
import { splitLines } from './split-lines.ts'

function restoreWhole(raw: Record<string, unknown>, from: Provenance): Complaint {
  const { complaint, lines } = splitLines(raw)
  const record = restoreRecord(complaint, from)
  return assemble(
    record,
    lines.map((line) => restoreKeptLine({ ...line, complaintId: record.id }, from)),
  )
}

/**
 * A valid complaint, lines and all, from anything at all. Never throws. Restoring what was restored changes nothing.
 * With `import`, every line's safety gate goes back to `unknown`: it is answered at the aircraft, not in a file.
 */
export function restoreComplaint(raw: unknown, from: Provenance): Complaint {
  try {
    return restoreWhole(isRecord(raw) ? raw : { kept: [{ at: '', value: raw }] }, from)
  } catch (error) {
    // Only an object that fights back when read (a throwing getter) gets here; it cannot come from storage or a file.
    return restoreWhole({ kept: [{ at: '', value: `unreadable: ${String(error)}` }] }, from)
  }
}
