/**
 * Measured files of a line: read in a worker, kept compressed with the line, never leaving the device.
 *
 * `openTraces(owner)`        reads what is kept; `kept` shows it by role, undefined until read
 * `takeFile(owner, file, as)`  reads and keeps a file in a role; what was there before stays until it is kept
 * `traceRefusals`            why files were not taken, of those that were chosen last
 * `dropTrace(role)`, `undoDropTrace()`, `droppedTrace`   one deletion can be undone
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { atOnce } from '../calc/line/evaluate.ts'
import { readTouchstone } from '../calc/touchstone/read.ts'
import type { Network } from '../calc/touchstone/types.ts'
import { type Blocks, blocksOf } from '../calc/trace/decimate.ts'
import type { LevelColumn, ReadOptions, Spectrum } from '../calc/trace/types.ts'
import { askToKeepStorage } from '../store/browser-storage.ts'
import { type KeptTrace, listTraces, newTrace, putTrace, removeTrace, type TraceRole } from '../store/traces.ts'
import { StoreError } from '../store/trouble.ts'
import { canPack, unpackText } from '../worker/packed.ts'
import type { ReadSpectrum } from '../worker/read-trace.ts'
import { broughtIn } from './brought-in.ts'
import { nextTurn } from './next-turn.ts'
import { doing, leaveTraceWork, traceWork } from './trace-work.ts'
import { spectrumOf } from './unpacked-spectrum.ts'
import { type OutputOf, runInWorker } from './work.ts'

export type OpenTrace = {
  readonly name: string
  readonly role: TraceRole
  /** absent while it is only shown, or could not be kept */
  readonly record?: KeptTrace
} & (
  | {
      readonly is: 'spectrum'
      readonly spectrum: Spectrum
      readonly blocks: Blocks
      /** the same rows in one run of bytes, which another thread opens */
      readonly rows: Blob
      readonly remarks: readonly string[]
      /** just read: the columns that could be the level, and the file to read one of the others from */
      readonly again?: { readonly file: TraceFile; readonly columns: readonly LevelColumn[]; readonly at: number }
    }
  | { readonly is: 'network'; readonly network: Network; readonly remarks: readonly string[] }
)

/** A spectrum that is open. */
export type SpectrumTrace = Extract<OpenTrace, { is: 'spectrum' }>

export type TraceFile = { readonly name: string; readonly source: Blob | string }
export type TraceRefusal = {
  readonly file: TraceFile
  readonly role: TraceRole
  readonly message: string
  readonly asks?: 'frequency-unit' | 'level-column'
}
export type { TraceRole }

type Read = OutputOf<'readTrace'>

const open = signal<readonly OpenTrace[] | undefined>(undefined)
const refusals = signal<readonly TraceRefusal[]>([])
const trouble = signal<string | undefined>(undefined)
const dropped = signal<OpenTrace | undefined>(undefined)
export const kept: ReadonlySignal<readonly OpenTrace[] | undefined> = open
export const traceRefusals: ReadonlySignal<readonly TraceRefusal[]> = refusals
export const traceTrouble: ReadonlySignal<string | undefined> = trouble
export const droppedTrace: ReadonlySignal<OpenTrace | undefined> = dropped

let owner = ''
let readAt = 0
let opening: Promise<void> = Promise.resolve()

const FULL =
  'The trace is shown and was not kept: the storage of this device is full. Free some space, then open it again.'

function storeWords(error: unknown): string {
  if (error instanceof StoreError) return error.trouble === 'full' ? FULL : `The trace was not kept. ${error.message}`
  throw error
}

/** Reads what is kept with a line, unless it is open already. */
export function openTraces(of: string): Promise<void> {
  if (of === owner && readAt === broughtIn()) return opening
  opening = readKept(of)
  return opening
}

async function readKept(of: string): Promise<void> {
  readAt = broughtIn()
  leaveTraceWork()
  owner = of
  open.value = undefined
  refusals.value = []
  trouble.value = undefined
  dropped.value = undefined
  try {
    const records = await listTraces(of)
    const read = await Promise.all(records.map(unpacked))
    if (owner === of) open.value = read.flatMap((one) => one ?? [])
  } catch (error) {
    if (owner !== of) return
    open.value = []
    trouble.value = storeWords(error)
  }
}

/** A record opened; undefined where its content is damaged. */
async function unpacked(record: KeptTrace): Promise<OpenTrace | undefined> {
  const { name, role } = record
  try {
    if (record.kind === 'network') {
      const reading = atOnce(readTouchstone(await unpackText(record.bytes), { fileName: name }))
      return reading.ok
        ? { is: 'network', name, role, record, network: reading.network, remarks: reading.remarks }
        : undefined
    }
    const { spectrum, rows } = await spectrumOf(record)
    return { is: 'spectrum', name, role, record, spectrum, rows, blocks: blocksOf(spectrum.db), remarks: [] }
  } catch {
    return undefined
  }
}

/** Reads a file and keeps it, after those that were chosen before; a refusal or a stop leaves everything as it was. */
export function takeFile(file: TraceFile, role: TraceRole, options: ReadOptions = {}): Promise<OpenTrace | undefined> {
  const of = owner
  // what is said of a file that was chosen together with this one stays, and is seen
  const isAlone = traceWork.peek() === undefined
  refusals.value = isAlone ? [] : refusals.value.filter((one) => one.file !== file)
  if (isAlone) trouble.value = undefined
  return doing({
    what: `Reading ${file.name}`,
    about: file,
    job: async (tell, stop) => {
      // what is kept is read first: it would take the place of what a quick hand opened meanwhile
      await opening
      return runInWorker(
        { is: 'readTrace', input: { source: file.source, fileName: file.name, options } },
        ({ doneFrac }) => tell(doneFrac),
        stop,
      )
    },
    take: (read) => (owner === of ? taken(of, file, role, read) : undefined),
  })
}

async function taken(of: string, file: TraceFile, role: TraceRole, read: Read): Promise<OpenTrace | undefined> {
  if (!read.reading.ok) {
    const { message } = read.reading
    const asks = 'asks' in read.reading ? read.reading.asks : undefined
    refusals.value = [...refusals.value, { file, role, message, ...(asks === undefined ? {} : { asks }) }]
    return undefined
  }
  const shown: OpenTrace =
    read.is === 'network'
      ? { is: 'network', name: file.name, role: 'filter', network: read.reading.network, remarks: read.reading.remarks }
      : spectrumShown(file, role === 'filter' ? 'before' : role, read.reading)
  show(shown)
  // it is painted before it is packed
  await nextTurn()
  await keep(of, shown, shown.is === 'spectrum' ? shown.rows : new Blob([read.is === 'network' ? read.text : '']))
  return shown
}

function spectrumShown(
  file: TraceFile,
  role: TraceRole,
  { spectrum, blocks, rows, remarks, levelColumns, levelAt }: ReadSpectrum,
): OpenTrace {
  return {
    is: 'spectrum',
    name: file.name,
    role,
    spectrum,
    blocks,
    rows,
    remarks,
    ...(levelColumns.length > 1 ? { again: { file, columns: levelColumns, at: levelAt } } : {}),
  }
}

function show(trace: OpenTrace): void {
  open.value = [...(open.value ?? []).filter(({ role }) => role !== trace.role), trace]
}

/** Onto the disk, in place of what had its role. One that does not fit stays shown and is told of. */
async function keep(of: string, trace: OpenTrace, content: Blob): Promise<void> {
  if (!canPack()) {
    trouble.value = 'This browser cannot pack files, so the trace is shown and not kept.'
    return
  }
  const bytes = await runInWorker({ is: 'pack', input: content }, () => {}, new AbortController().signal)
  const record = newTrace(of, {
    kind: trace.is,
    role: trace.role,
    name: trace.name,
    unit: trace.is === 'spectrum' ? (trace.spectrum.unit ?? '') : '',
    rows: trace.is === 'spectrum' ? trace.spectrum.hz.length : trace.network.hz.length,
    bytes,
  })
  try {
    await putTrace(record)
    void askToKeepStorage()
    if (owner === of) open.value = (open.value ?? []).map((one) => (one === trace ? { ...trace, record } : one))
  } catch (error) {
    trouble.value = storeWords(error)
  }
}

/** Takes a trace out; `undoDropTrace` brings it back. */
export async function dropTrace(role: TraceRole): Promise<void> {
  const trace = (open.value ?? []).find((one) => one.role === role)
  if (trace === undefined) return
  try {
    if (trace.record !== undefined) await removeTrace(trace.record)
    dropped.value = trace
    open.value = (open.value ?? []).filter((one) => one !== trace)
  } catch (error) {
    trouble.value = storeWords(error)
  }
}

/** Brings back the trace that was taken out last. */
export async function undoDropTrace(): Promise<void> {
  const trace = dropped.value
  if (trace === undefined) return
  try {
    if (trace.record !== undefined) await putTrace(trace.record)
    dropped.value = undefined
    show(trace)
  } catch (error) {
    trouble.value = storeWords(error)
  }
}

/** Gives a line that was made from another one what was measured on that. */
export async function copyTraces(from: string, to: string): Promise<void> {
  try {
    for (const record of await listTraces(from)) await putTrace({ ...record, owner: to })
    if (owner !== to) return
    owner = ''
    await openTraces(to)
  } catch (error) {
    trouble.value = storeWords(error)
  }
}
