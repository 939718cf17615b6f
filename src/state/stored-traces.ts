/**
 * Which traces are stored with the lines of a complaint, without their content: what a close-out may rest on.
 *
 * `storedTraces(lineIds)`      those of these lines; undefined until all of them are read
 * `readStoredTraces(lineIds)`  reads them, anew at every call
 */
import { signal } from '@preact/signals'
import type { StoredTrace } from '../guide/close-out-trace.ts'
import { listTraces } from '../store/traces.ts'
import { StoreError } from '../store/trouble.ts'

const byLine = signal<ReadonlyMap<string, readonly StoredTrace[]>>(new Map())

export function storedTraces(lineIds: readonly string[]): readonly StoredTrace[] | undefined {
  const read = byLine.value
  return lineIds.every((id) => read.has(id)) ? lineIds.flatMap((id) => read.get(id) ?? []) : undefined
}

/** A storage that does not answer leaves them unread, which proves nothing; that it is silent is told of elsewhere. */
export async function readStoredTraces(lineIds: readonly string[]): Promise<void> {
  try {
    const found = await Promise.all(
      lineIds.map(async (id) => [id, (await listTraces(id)).map(withoutContent)] as const),
    )
    byLine.value = new Map([...byLine.peek(), ...found])
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
  }
}

const withoutContent = ({ owner, id, role, name, takenAt }: StoredTrace): StoredTrace => ({
  owner,
  id,
  role,
  name,
  takenAt,
})
