/**
 * Complaints out to a file, and in from one.
 *
 * `exportComplaint(id)`, `exportAll()`   the file, and in words what is not in it; undefined where there is no such complaint
 * `previewImport(text | File)`           what would change, complaint by complaint; or a sentence
 * `performImport(preview, how)`          all of it or nothing; a sentence where the storage refuses
 * `takenIn`, `readTakenIn()`, `undoImport()`   what came in last can be taken back, also after a reload
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Progress } from '../calc/types.ts'
import { type Complaint, later } from '../store/complaint.ts'
import { type Difference, differencesOf } from '../store/exchange/compare.ts'
import { MOST_CHARACTERS, readSteps, writeSteps } from '../store/exchange/file.ts'
import { type How, readTaken, readWholes, type Taken, takeBack, takeIn } from '../store/exchange/take.ts'
import type { Whole } from '../store/exchange/whole.ts'
import { StoreError } from '../store/trouble.ts'
import { readConnectorsAgain, wholeConnectors } from './connector-shelves.ts'
import { inSlices } from './in-slices.ts'
import { complaints, find, loadComplaints } from './log.ts'
import { tell } from './other-windows.ts'
import { settled, unwritten } from './save-queue.ts'

export type { Difference, How }

/** `left`: in words, what is not in the file. */
export type ExportFile = { readonly name: string; readonly text: string; readonly left: readonly string[] }

/** A file name from a title: small letters, digits and dashes. */
function fileName(title: string): string {
  const words = title.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []
  return `${words.join('-').slice(0, 60) || 'complaint'}.stillpin.json`
}

const LEFT_OUT = [
  'Photos are not in the file; they stay on this device.',
  'The answers to the safety questions are not in the file; they are asked anew at the aircraft.',
] as const

/** Drawn in between: a Log of thousands takes its time. */
const sliced = <R>(steps: Generator<Progress, R>): Promise<R> =>
  inSlices(steps, () => undefined, new AbortController().signal)

async function fileOf(all: readonly Complaint[], name: string): Promise<ExportFile> {
  const connectors = await wholeConnectors(all.map(({ id }) => id))
  const wholes = all.map((complaint): Whole => ({ complaint, connectors: connectors.get(complaint.id) ?? [] }))
  return { name, text: await sliced(writeSteps(wholes)), left: LEFT_OUT }
}

/** One complaint with its lines and connectors as a file. */
export async function exportComplaint(id: string): Promise<ExportFile | undefined> {
  const complaint = find(id)
  return complaint && fileOf([complaint], fileName(complaint.title))
}

/** Everything in the Log as one file. */
export function exportAll(): Promise<ExportFile> {
  const all = complaints.value ?? []
  const newest = all.reduce((at, one) => later(at, one.updatedAt), '')
  return fileOf(all, `log-${newest.slice(0, 10) || 'empty'}.stillpin.json`)
}

/** A complaint of the file beside the one that is here. */
export type Planned = {
  readonly whole: Whole
  readonly is: 'new' | 'same' | 'differs'
  readonly differences: readonly Difference[]
}

export type Preview =
  | { readonly ok: true; readonly planned: readonly Planned[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string }

const TOO_LARGE = `The file is larger than ${MOST_CHARACTERS / 1024 / 1024} MB: no backup of complaints comes near it.`

/** Compares each with the one that is here. */
function* planSteps(
  complaints: readonly Whole[],
  here: ReadonlyMap<string, Whole>,
): Generator<Progress, readonly Planned[]> {
  const planned: Planned[] = []
  for (const whole of complaints) {
    yield { doneFrac: planned.length / complaints.length }
    const own = here.get(whole.complaint.id)
    const differences = own === undefined ? [] : differencesOf(own, whole)
    planned.push({ whole, is: own === undefined ? 'new' : differences.length === 0 ? 'same' : 'differs', differences })
  }
  return planned
}

/** What a file would change here; nothing is changed by asking. */
export async function previewImport(source: string | File): Promise<Preview> {
  if (typeof source !== 'string' && source.size > MOST_CHARACTERS) return { ok: false, message: TOO_LARGE }
  let text: string
  try {
    text = typeof source === 'string' ? source : await source.text()
  } catch {
    return {
      ok: false,
      message: 'The browser could not read this file. Copy it onto this device, then choose it again.',
    }
  }
  const read = await sliced(readSteps(text))
  if (!read.ok) return read
  if (read.complaints.length === 0) return { ok: false, message: 'The file is in order, and holds no complaint.' }
  await settled()
  const here = await wholesHere(read.complaints.map(({ complaint }) => complaint.id))
  const planned = await sliced(planSteps(read.complaints, here))
  const notes = [
    'Whether parts may be tried is asked anew: the answers to the safety questions never come out of a file.',
    ...(read.aside > 0
      ? [`${read.aside} pieces are not understood by this version. They are kept as they are, for a version that does.`]
      : []),
  ]
  return { ok: true, planned, notes }
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
