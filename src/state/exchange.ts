/**
 * Complaints in from a file.
 *
 * `previewImport(text | File, reading?)`   what would change, complaint by complaint; or a sentence
 * `performImport(preview, how)`            all of it or nothing; a sentence where the storage refuses
 * `takenIn`, `readTakenIn()`, `undoImport()`   what came in last can be taken back, also after a reload
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Progress } from '../calc/types.ts'
import { type Attached, ownersIn } from '../store/exchange/attached.ts'
import { attachedKeys, keyOf, nameOf, readAttachedAt } from '../store/exchange/attached-store.ts'
import { type Difference, differencesOf } from '../store/exchange/compare.ts'
import { readBlob } from '../store/exchange/read-blob.ts'
import { type How, readTaken, readWholes, takeBack, takeIn } from '../store/exchange/take.ts'
import type { Taken } from '../store/exchange/taken.ts'
import type { Whole } from '../store/exchange/whole.ts'
import { StoreError } from '../store/trouble.ts'
import { noteBroughtIn } from './brought-in.ts'
import { readConnectorsAgain, wholeConnectors } from './connector-shelves.ts'
import { inSlices } from './in-slices.ts'
import { find, loadComplaints } from './log.ts'
import { tell } from './other-windows.ts'
import { settled, unwritten } from './save-queue.ts'
import { stopped } from './stopped.ts'

export type { Difference, How }

/** Drawn in between: a Log of thousands takes its time. */
const sliced = <R>(steps: Generator<Progress, R>, signal: AbortSignal): Promise<R> =>
  inSlices(steps, () => undefined, signal)

/** Photos and measured files of a complaint of the file; `blocked`: a measured file whose place is taken here. */
export type Beside = { readonly photos: number; readonly traces: number; readonly blocked: number }

/** A complaint of the file beside the one that is here. */
export type Planned = {
  readonly whole: Whole
  readonly is: 'new' | 'same' | 'differs'
  readonly differences: readonly Difference[]
  readonly beside: Beside
}

export type Preview =
  | {
      readonly ok: true
      readonly planned: readonly Planned[]
      /** photos and measured files that are not here */
      readonly attached: readonly Attached[]
      readonly notes: readonly string[]
    }
  | { readonly ok: false; readonly message: string }

type Here = { readonly wholes: ReadonlyMap<string, Whole>; readonly besides: ReadonlyMap<string, Beside> }

const NOTHING_BESIDE: Beside = { photos: 0, traces: 0, blocked: 0 }

/** Compares each with the one that is here. */
function* planSteps(complaints: readonly Whole[], { wholes, besides }: Here): Generator<Progress, readonly Planned[]> {
  const planned: Planned[] = []
  for (const whole of complaints) {
    yield { doneFrac: planned.length / complaints.length }
    const { id } = whole.complaint
    const own = wholes.get(id)
    const differences = own === undefined ? [] : differencesOf(own, whole)
    const beside = besides.get(id) ?? NOTHING_BESIDE
    const isSame = differences.length === 0 && Object.values(beside).every((count) => count === 0)
    planned.push({ whole, is: own === undefined ? 'new' : isSame ? 'same' : 'differs', differences, beside })
  }
  return planned
}

export type Reading = { readonly onProgress?: (doneFrac: number) => void; readonly signal?: AbortSignal }

/** What a file would change here; nothing is changed by asking. Rejects with an `AbortError` when it was stopped. */
export async function previewImport(source: string | Blob, reading: Reading = {}): Promise<Preview> {
  const { onProgress = () => undefined, signal = new AbortController().signal } = reading
  const goOn = () => {
    if (signal.aborted) throw stopped()
  }
  const run = <R>(steps: Generator<Progress, R>): Promise<R> => sliced(steps, signal)
  let read: Awaited<ReturnType<typeof readBlob>>
  try {
    read = await readBlob(typeof source === 'string' ? new Blob([source]) : source, { run, onProgress, goOn })
  } catch {
    goOn()
    return {
      ok: false,
      message: 'The browser could not read this file. Copy it onto this device, then choose it again.',
    }
  }
  if (!read.ok) return read
  if (read.complaints.length === 0) return { ok: false, message: 'The file is in order, and holds no complaint.' }
  await settled()
  const wholes = await wholesHere(read.complaints.map(({ complaint }) => complaint.id))
  const { attached, besides } = await notHere(read.complaints, read.attached)
  const planned = await run(planSteps(read.complaints, { wholes, besides }))
  const notes = [
    'Whether parts may be tried is asked anew: the answers to the safety questions never come out of a file.',
    ...(read.aside > 0
      ? [`${read.aside} pieces are not understood by this version. They are kept as they are, for a version that does.`]
      : []),
  ]
  return { ok: true, planned, attached, notes }
}

/** Of the photos and measured files those that are not here, and how many of each complaint. */
async function notHere(
  wholes: readonly Whole[],
  all: readonly Attached[],
): Promise<{ readonly attached: readonly Attached[]; readonly besides: ReadonlyMap<string, Beside> }> {
  const known = new Set<string>()
  const roles = new Set<string>()
  try {
    const keys = all.length === 0 ? [] : await attachedKeys(ownersIn(wholes))
    for (const key of keys) {
      known.add(nameOf(key))
      const one = key.is === 'trace' ? await readAttachedAt(key) : undefined
      if (one?.is === 'trace') roles.add(`${one.record.owner} ${one.record.role}`)
    }
  } catch (error) {
    // without storage there is none
    if (!(error instanceof StoreError)) throw error
  }
  const attached = all.filter((one) => !known.has(nameOf(keyOf(one))))
  const besides = wholes.map((whole): readonly [string, Beside] => {
    const owners = ownersIn([whole])
    const own = attached.filter(({ record }) => owners.has(record.owner))
    const traces = own.flatMap((one) => (one.is === 'trace' ? [one.record] : []))
    const blocked = traces.filter(({ owner, role }) => roles.has(`${owner} ${role}`)).length
    const counts = { photos: own.length - traces.length, traces: traces.length - blocked, blocked }
    return [whole.complaint.id, counts]
  })
  return { attached, besides: new Map(besides) }
}

/** Without storage there is what is in memory. */
async function wholesHere(ids: readonly string[]): Promise<ReadonlyMap<string, Whole>> {
  try {
    return await readWholes(ids)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    const connectors = await wholeConnectors(ids)
    const present = ids.flatMap((id) => find(id) ?? [])
    return new Map(
      present.map((complaint) => [complaint.id, { complaint, connectors: connectors.get(complaint.id) ?? [] }]),
    )
  }
}

const taken = signal<Taken | undefined>(undefined)
/** What was brought in last and can be taken back. */
export const takenIn: ReadonlySignal<Taken | undefined> = taken

/** Reads what was brought in last, also before a reload. */
export async function readTakenIn(): Promise<void> {
  try {
    taken.value = await readTaken()
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
  }
}

export type Outcome = { readonly ok: true; readonly words: string } | { readonly ok: false; readonly message: string }

const counted = (count: number): string =>
  count === 0 ? 'No complaint' : count === 1 ? 'One complaint' : `${count} complaints`

const UNSAVED =
  'Something typed here is not saved yet, so nothing was brought in. Free some space or try to save again, then bring the file in.'

/** Shows what the disk holds now, here and in the other windows. */
async function showAll(ids: readonly string[]): Promise<void> {
  await loadComplaints()
  readConnectorsAgain(ids)
  tell({ is: 'log' })
  for (const id of ids) tell({ is: 'connector', id })
  await readTakenIn()
  noteBroughtIn()
}

async function attempt(job: () => Promise<string>): Promise<Outcome> {
  await settled()
  if (unwritten().length > 0) return { ok: false, message: UNSAVED }
  try {
    return { ok: true, words: await job() }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    return { ok: false, message: `Nothing was changed. ${error.message}` }
  }
}

/** Brings in all that is new or differs; what is the same stays untouched. */
export function performImport(preview: Preview, how: How): Promise<Outcome> {
  return attempt(async () => {
    const wanted = preview.ok ? preview.planned.filter(({ is }) => is !== 'same') : []
    await takeIn(
      wanted.map(({ whole }) => whole),
      how,
      new Date().toISOString(),
      preview.ok ? preview.attached : [],
    )
    await showAll(wanted.map(({ whole }) => whole.complaint.id))
    return `${counted(wanted.length)} brought in.`
  })
}

/** Takes back what was brought in last; what was changed since stays, and is named. */
export function undoImport(): Promise<Outcome> {
  return attempt(async () => {
    const { back, left } = await takeBack()
    const names = left.flatMap((id) => find(id) ?? []).map(({ title }) => `“${title || 'untitled complaint'}”`)
    await showAll(back)
    const stays = names.length === 0 ? '' : ` Changed since, so it stays as it is now: ${names.join(', ')}.`
    return `${counted(back.length)} taken back.${stays}`
  })
}
