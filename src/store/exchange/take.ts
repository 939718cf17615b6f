/**
 * Complaints out of a file onto the disk, all of them in one transaction or none; what stood there before is kept beside
 * until the next file, so that it can be taken back, also after a reload. Every function fails with a `StoreError` and
 * nothing else.
 */
import { assemble, later, recordOf } from '../complaint.ts'
import { restoreConnector } from '../connector.ts'
import { type Desk, inOneGo, readOne } from '../db.ts'
import { restoreKeptLine } from '../line.ts'
import { restoreRecord } from '../restore.ts'
import type { Attached } from './attached.ts'
import { addBeside, isBesideSince, placesOf, takeBeside } from './attached-store.ts'
import { mergeWhole } from './merge.ts'
import { type Before, ownersAmong, type Records, restoreTaken, STORES, TAKEN, type Taken } from './taken.ts'
import { restoreWhole, type Whole } from './whole.ts'

/** What is done with a complaint that is there already: the file's laid over it, or put in its place. */
export type How = 'merge' | 'replace'

/** A backup of thousands of complaints takes its time on a phone. */
const PATIENCE_MS = 60_000

const inOneLongGo = <T>(stores: Parameters<typeof inOneGo>[0], job: (desk: Desk) => Promise<T>): Promise<T> =>
  inOneGo(stores, job, undefined, PATIENCE_MS)

async function recordsOf(desk: Desk, id: string): Promise<Records> {
  const [complaint, lines, connectors] = await Promise.all([
    desk.get('complaints', id),
    desk.ownedBy('lines', id),
    desk.ownedBy('connectors', id),
  ])
  return { complaints: complaint === undefined ? [] : [complaint], lines, connectors }
}

/** The complaint these records make, removed lines and connectors left out; undefined where there is none, or it was deleted. */
function wholeOf({ complaints, lines, connectors }: Records): Whole | undefined {
  const [raw] = complaints
  const record = raw === undefined ? undefined : restoreRecord(raw)
  if (record === undefined || record.deletedAt !== undefined) return undefined
  const complaint = assemble(
    record,
    lines.map((line) => restoreKeptLine(line)),
  )
  return restoreWhole({ ...complaint, connectors: connectors.map((one) => restoreConnector(one)) }, 'stored')
}

/** The complaints of these ids that are here, by id. */
export function readWholes(ids: readonly string[]): Promise<ReadonlyMap<string, Whole>> {
  return inOneLongGo([...STORES], async (desk) => {
    const found = await Promise.all(ids.map(async (id) => [id, wholeOf(await recordsOf(desk, id))] as const))
    return new Map(found.flatMap(([id, whole]) => (whole === undefined ? [] : [[id, whole] as const])))
  })
}

/** When anything of a complaint was changed last. */
const lastChange = ({ complaint, connectors }: Whole): string =>
  connectors.reduce((at, one) => later(at, one.updatedAt), complaint.updatedAt)

/** What is to be written; of lines that are here and barred, that they are. */
function nextOf(here: Whole | undefined, there: Whole, how: How): Whole {
  if (here === undefined) return there
  if (how === 'merge') return mergeWhole(here, there)
  const barred = new Set(here.complaint.lines.flatMap(({ id, gate }) => (gate === 'barred' ? [id] : [])))
  const lines = there.complaint.lines.map((line) => (barred.has(line.id) ? { ...line, gate: 'barred' as const } : line))
  return { ...there, complaint: { ...there.complaint, lines } }
}

type Counted = { readonly id: string; readonly turn?: number }

/** Counted on from what stands here, so that a change that was made on that and comes late is known by it. */
const countedOn = <T extends Counted>(next: T, here: readonly Counted[]): T => ({
  ...next,
  turn: (here.find(({ id }) => id === next.id)?.turn ?? 0) + 1,
})

function afterHere({ complaint, connectors }: Whole, here: Whole | undefined): Whole {
  const lines = complaint.lines.map((line) => countedOn(line, here?.complaint.lines ?? []))
  return {
    complaint: { ...countedOn(complaint, here === undefined ? [] : [here.complaint]), lines },
    connectors: connectors.map((one) => countedOn(one, here?.connectors ?? [])),
  }
}

/** Takes everything of a complaint off the disk. */
async function clear(desk: Desk, id: string): Promise<void> {
  await desk.remove('complaints', id)
  await desk.removeOwned('lines', id)
  await desk.removeOwned('connectors', id)
}

async function write(desk: Desk, { complaint, connectors }: Whole): Promise<void> {
  await desk.put('complaints', recordOf(complaint))
  for (const line of complaint.lines) await desk.put('lines', line)
  for (const connector of connectors) await desk.put('connectors', connector)
}

/** Takes these in, on top of what stands there at that moment. Photos and measured files that are here stay. */
export function takeIn(
  wholes: readonly Whole[],
  how: How,
  at: string,
  attached: readonly Attached[] = [],
): Promise<void> {
  return inOneLongGo([...STORES, 'photos', 'traces', 'meta'], async (desk) => {
    const before: Before[] = []
    for (const there of wholes) {
      const { id } = there.complaint
      const records = await recordsOf(desk, id)
      const here = wholeOf(records)
      const next = afterHere(nextOf(here, there, how), here)
      if (how === 'replace') await clear(desk, id)
      await write(desk, next)
      const owners = new Set([id, ...there.complaint.lines.map((line) => line.id)])
      const own = attached.filter(({ record }) => owners.has(record.owner))
      before.push({ id, until: lastChange(next), records, beside: await addBeside(desk, own, how === 'replace') })
    }
    await desk.put('meta', { at, before } satisfies Taken, TAKEN)
  })
}

/** What was taken in last and can be taken back; undefined where nothing was. */
export async function readTaken(): Promise<Taken | undefined> {
  return restoreTaken(await readOne('meta', TAKEN))
}

/** `left`: ids of complaints that were changed since they came in; they stay as they are. */
export type TakenBack = { readonly back: readonly string[]; readonly left: readonly string[] }

/** Owners that are there now and were not before. */
function lostOwners(now: Records, before: Records): ReadonlySet<string> {
  const stay = new Set(ownersAmong(before))
  return new Set(ownersAmong(now).filter((id) => !stay.has(id)))
}

/** Puts what was taken in last back as it was. */
export function takeBack(): Promise<TakenBack> {
  return inOneLongGo([...STORES, 'photos', 'traces', 'meta'], async (desk) => {
    const taken = restoreTaken(await desk.get('meta', TAKEN))
    const places = await placesOf(desk)
    const [back, left]: [string[], string[]] = [[], []]
    for (const { id, until, records, beside } of taken?.before ?? []) {
      const there = await recordsOf(desk, id)
      const now = wholeOf(there)
      const isChanged = now === undefined || lastChange(now) !== until
      // deleted by hand meanwhile, or changed, or something was put beside it that would have no place any more
      if (isChanged || isBesideSince(places, beside, lostOwners(there, records))) {
        left.push(id)
        continue
      }
      await clear(desk, id)
      for (const store of STORES) for (const record of records[store]) await desk.put(store, record)
      await takeBeside(desk, beside)
      back.push(id)
    }
    await desk.remove('meta', TAKEN)
    return { back, left }
  })
}
