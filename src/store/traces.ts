/**
 * Measured files kept with a line: records of a store of their own, compressed, so that no list of complaints ever reads
 * them. Every function fails with a `StoreError`; a full storage is told of by whoever adds one.
 */
import { inOneGo } from './db.ts'
import { id, oneOf, positive, type Reader, readRecord, required, schema, type Table, text, time } from './gate.ts'
import { newId } from './ids.ts'
import { isRecord } from './plain.ts'

/** Version of a trace's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const TRACE_SCHEMA = 1

export const TRACE_KINDS = ['spectrum', 'network'] as const
export const TRACE_ROLES = ['before', 'after', 'filter'] as const

/** What a file is: a spectrum without or with what was tried, or a measured filter. */
export type TraceRole = (typeof TRACE_ROLES)[number]

/**
 * `bytes`: gzip of the frequencies in Hz and then the levels, 64-bit floats (`spectrum`), or of the text of a Touchstone
 * file (`network`). `unit`: of the levels, '' where none is known.
 */
export type TraceContent = {
  readonly kind: (typeof TRACE_KINDS)[number]
  readonly role: TraceRole
  readonly name: string
  readonly unit: string
  readonly rows: number
  readonly bytes: ArrayBuffer
}

/** `owner`: the line it was measured on. */
export type KeptTrace = TraceContent & {
  readonly owner: string
  readonly id: string
  readonly schemaVersion: number
  readonly takenAt: string
}

/** By its own name: a buffer read back may come from another realm. */
const bytesOf: Reader<ArrayBuffer> = (value) =>
  Object.prototype.toString.call(value) === '[object ArrayBuffer]' ? (value as ArrayBuffer) : undefined

const TRACE: Table<KeptTrace> = {
  owner: required(id),
  id: required(id),
  schemaVersion: { read: schema(TRACE_SCHEMA), or: () => TRACE_SCHEMA },
  kind: { read: oneOf(TRACE_KINDS), or: () => 'spectrum' },
  role: { read: oneOf(TRACE_ROLES), or: () => 'before' },
  name: { read: text, or: () => '' },
  unit: { read: text, or: () => '' },
  rows: { read: positive, or: () => 1 },
  takenAt: { read: time, or: () => '1970-01-01T00:00:00.000Z' },
  bytes: required(bytesOf),
}

/** Every field a trace's record has, for the guard over the fixtures. */
export const TRACE_FIELDS = Object.keys(TRACE)

/** A trace from anything at all; undefined where it has no owner, no name or no content. Never throws. */
export function restoreTrace(raw: unknown): KeptTrace | undefined {
  if (!isRecord(raw)) return undefined
  const { kept: _aside, ...trace } = readRecord(TRACE, raw, 'stored')
  const isWhole = [trace.owner, trace.id, trace.bytes].every((part) => part !== undefined)
  return isWhole ? trace : undefined
}

/** A trace taken in now. */
export const newTrace = (owner: string, content: TraceContent): KeptTrace => ({
  owner,
  id: newId(),
  schemaVersion: TRACE_SCHEMA,
  takenAt: new Date().toISOString(),
  ...content,
})

/** The traces of a line, the first taken first. */
export async function listTraces(owner: string): Promise<readonly KeptTrace[]> {
  const raws = await inOneGo(['traces'], (desk) => desk.ownedBy('traces', owner))
  return raws
    .flatMap((raw) => restoreTrace(raw) ?? [])
    .sort((a, b) => a.takenAt.localeCompare(b.takenAt) || a.id.localeCompare(b.id))
}

/** Writes a trace, new or brought back, in place of those of the same role. All of it or nothing. */
export function putTrace(trace: KeptTrace): Promise<void> {
  return inOneGo(
    ['traces'],
    async (desk) => {
      for (const raw of await desk.ownedBy('traces', trace.owner)) {
        const old = restoreTrace(raw)
        if (old?.role === trace.role && old.id !== trace.id) await desk.remove('traces', [old.owner, old.id])
      }
      await desk.put('traces', trace)
    },
    'full',
  )
}

/** Takes a trace out. */
export function removeTrace({ owner, id: traceId }: Pick<KeptTrace, 'owner' | 'id'>): Promise<void> {
  return inOneGo(['traces'], (desk) => desk.remove('traces', [owner, traceId]))
}
