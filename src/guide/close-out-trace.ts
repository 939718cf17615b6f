/**
 * A measured trace as proof: one that is stored with a line of the complaint, taken after the cure, and the one before it
 * where that line has one. Which they are is chosen from a list; a name that somebody typed proves nothing.
 */
import type { TraceFinding } from '../calc/trace/proof.ts'
import type { FilledRow } from './fill-ins.ts'

/** What is known of a stored trace without its content. `owner`: the line it was measured on. */
export type StoredTrace = {
  readonly owner: string
  readonly id: string
  readonly role: 'before' | 'after' | 'filter'
  readonly name: string
  readonly takenAt: string
  /** of one taken after: what it says against its limit and the one before it; undefined while it is worked out */
  readonly finding?: TraceFinding
}

/** Columns of the close-out that hold the chosen ones. Permanent. */
export const TRACE_COLUMNS = { before: 'traceBefore', after: 'traceAfter' } as const
/** Column that says whether bandwidth, detector, place and settings were those of the trace check: 'same' or 'other'. Permanent. */
export const TRACE_ALIKE = 'traceAlike'

/** What a column holds of a chosen trace. */
export const traceKey = ({ owner, id }: Pick<StoredTrace, 'owner' | 'id'>): string => `${owner}/${id}`

export type TraceProof =
  | {
      readonly is: 'stored'
      readonly after: StoredTrace
      readonly before?: StoredTrace
      readonly finding: Extract<TraceFinding, { holds: true }>
    }
  | { readonly is: 'not-begun' }
  /** what is missing, in a sentence */
  | { readonly is: 'lacking'; readonly sentence: string }
  /** the one chosen as “after” is over its limit, in a sentence */
  | { readonly is: 'missed'; readonly sentence: string }

const text = (row: FilledRow, id: string): string => (row[id] ?? '').trim()
const lacking = (sentence: string): TraceProof => ({ is: 'lacking', sentence })

/** Whether the chosen traces prove the cure. `traces`: those stored with its lines; undefined until they are read. */
export function traceProof(row: FilledRow, traces: readonly StoredTrace[] | undefined): TraceProof {
  const chosen = { before: text(row, TRACE_COLUMNS.before), after: text(row, TRACE_COLUMNS.after) }
  if (chosen.before === '' && chosen.after === '' && text(row, 'trace') === '') return { is: 'not-begun' }
  if (traces === undefined) return lacking('The stored traces are not read yet.')
  const ofRole = (role: StoredTrace['role']) => traces.filter((trace) => trace.role === role)
  if (ofRole('after').length === 0)
    return lacking(
      'No trace is stored as “after” with a line of this complaint: open its file beside the trace check of that line. A name alone proves nothing.',
    )
  if (chosen.after === '') return lacking('Choose which stored trace was taken after the cure.')
  const after = ofRole('after').find((trace) => traceKey(trace) === chosen.after)
  if (after === undefined)
    return lacking('The trace chosen as “after” is not stored any more: choose another, or open its file again.')
  const { finding } = after
  const alike = text(row, TRACE_ALIKE)
  // whatever else is not filled in yet: it was chosen, and it does not say that the noise is gone
  if (finding?.holds === false && finding.misses && alike !== 'other')
    return { is: 'missed', sentence: finding.missing }
  const befores = ofRole('before').filter(({ owner }) => owner === after.owner)
  const before = befores.find((trace) => traceKey(trace) === chosen.before)
  if (before === undefined && chosen.before !== '')
    return lacking('The trace chosen as “before” is not stored with the same line: choose another, or open its file.')
  if (before === undefined && befores.length > 0)
    return lacking('Choose which stored trace was taken before the cure, too.')
  if (text(row, 'before') === '' || text(row, 'after') === '')
    return lacking('Write what was read before and after, beside the traces.')
  if (alike === '')
    return lacking('Say whether it was taken in the bandwidth and with the detector that stand in the trace check.')
  if (alike !== 'same')
    return lacking(
      'Taken in another bandwidth, with another detector or elsewhere, it compares with nothing: measure again alike.',
    )
  if (finding === undefined) return lacking('The trace is being held against its limit.')
  if (!finding.holds) return lacking(finding.missing)
  return { is: 'stored', after, finding, ...(before !== undefined && { before }) }
}
