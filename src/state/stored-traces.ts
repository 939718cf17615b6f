/**
 * Which traces are stored with the lines of a complaint, without their content: what a close-out may rest on.
 *
 * `storedTraces(lines)`      those of these lines, one taken after with what it says against its limit; undefined until all are read
 * `readStoredTraces(lines)`  reads them, anew at every call; holds each one taken after against its limit
 */
import { signal } from '@preact/signals'
import type { TraceFinding } from '../calc/trace/proof.ts'
import type { Line } from '../calc/types.ts'
import type { StoredTrace } from '../guide/close-out-trace.ts'
import { type KeptTrace, listTraces } from '../store/traces.ts'
import { StoreError } from '../store/trouble.ts'

const byLine = signal<ReadonlyMap<string, readonly StoredTrace[]>>(new Map())
/** what each trace taken after says, by the traces and the facts it rests on */
const findings = signal<ReadonlyMap<string, TraceFinding>>(new Map())

/** Everything a finding rests on, as one text: the traces by id, the facts of the line. */
function groundsOf({ facts }: Line, traces: readonly Pick<StoredTrace, 'role' | 'id' | 'owner'>[]): string {
  const ids = traces.filter(({ role }) => role !== 'filter').map(({ owner, role, id }) => `${owner}/${role}/${id}`)
  return JSON.stringify([...ids, Object.entries(facts).map(([key, fact]) => [key, fact?.text])])
}

export function storedTraces(lines: readonly Line[]): readonly StoredTrace[] | undefined {
  const read = byLine.value
  if (!lines.every(({ id }) => read.has(id))) return undefined
  return lines.flatMap((line) => {
    const traces = read.get(line.id) ?? []
    if (!traces.some(({ role }) => role === 'after')) return traces
    const finding = findings.value.get(groundsOf(line, traces))
    return traces.map((trace) => (trace.role === 'after' && finding ? { ...trace, finding } : trace))
  })
}

/** A storage that does not answer leaves them unread, which proves nothing; that it is silent is told of elsewhere. */
export async function readStoredTraces(lines: readonly Line[]): Promise<void> {
  try {
    const found = await Promise.all(lines.map(async (line) => [line, await listTraces(line.id)] as const))
    byLine.value = new Map([
      ...byLine.peek(),
      ...found.map(([{ id }, traces]) => [id, traces.map(withoutContent)] as const),
    ])
    for (const [line, traces] of found) await holdAgainstLimit(line, traces)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
  }
}

async function holdAgainstLimit(line: Line, traces: readonly KeptTrace[]): Promise<void> {
  const grounds = groundsOf(line, traces)
  if (!traces.some(({ role }) => role === 'after') || findings.peek().has(grounds)) return
  const { findingOf } = await import('./trace-finding.ts')
  const finding = await findingOf(line, traces)
  findings.value = new Map([...findings.peek(), [grounds, finding]])
}

const withoutContent = ({ owner, id, role, name, takenAt }: StoredTrace): StoredTrace => ({
  owner,
  id,
  role,
  name,
  takenAt,
})
