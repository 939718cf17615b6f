/** The checks done last on this device: what each was about, as its address, and when. Results are never stored. */
import { changeOne, readOne } from './db.ts'
import { id, item, listOf, readRecord, required, type Table, time } from './gate.ts'
import { isRecord } from './plain.ts'
import { checkAddress } from './restore.ts'

export type Recent = {
  /** the Line it was done on: the same check of the same Line is listed once */
  readonly lineId: string
  readonly check: string
  readonly address: string
  readonly at: string
}

type Recents = { readonly checks: readonly Recent[] }

export const MOST_RECENT = 10

const RECENT: Table<Recent> = {
  lineId: required(id),
  check: required(id),
  address: required(checkAddress),
  at: required(time),
}

const RECENTS: Table<Recents> = { checks: { read: listOf(item(RECENT)), or: () => [] } }

/** The gate for the list; anything else becomes an empty one. Never throws. */
const restore = (raw: unknown) => readRecord(RECENTS, isRecord(raw) ? raw : {}, 'stored')

/** The newest first. Fails with a `StoreError`. */
export async function readRecents(): Promise<readonly Recent[]> {
  return restore(await readOne('meta', 'recents')).checks.slice(0, MOST_RECENT)
}

/** The list with a check on top; what makes it longer than ten goes. */
export const withRecent = (checks: readonly Recent[], recent: Recent): readonly Recent[] =>
  [recent, ...checks.filter((one) => one.lineId !== recent.lineId || one.check !== recent.check)].slice(0, MOST_RECENT)

/** Stores a check on top of the list that stands there by now. Fails with a `StoreError`. */
export function writeRecent(recent: Recent): Promise<void> {
  return changeOne('meta', 'recents', (old) => {
    const stored = restore(old)
    return { ...stored, checks: withRecent(stored.checks, recent) }
  })
}
