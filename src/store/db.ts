/** The database: its schema, its upgrades and the few operations the store needs. The only file that knows idb. */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb'
import { databases } from './browser-storage.ts'
import { asStoreError, isLostConnection, reportTrouble, StoreError, type StoreTrouble } from './trouble.ts'

export const DB_NAME = 'stillpin'
export const DB_VERSION = 5

/** Nobody waits longer than this for a storage that does not answer: the app goes on in memory. */
export const SILENT_AFTER_MS = 2000

/** Values are `unknown` on purpose: whatever is read goes through a table of the gate or a check of its own. */
interface Schema extends DBSchema {
  complaints: { key: string; value: unknown }
  lines: { key: [string, string]; value: unknown }
  photos: { key: [string, string]; value: unknown }
  connectors: { key: [string, string]; value: unknown }
  traces: { key: [string, string]; value: unknown }
  guide: { key: string; value: unknown }
  meta: { key: string; value: unknown }
}
type Connection = IDBPDatabase<Schema>
export type StoreName = 'complaints' | 'lines' | 'connectors' | 'photos' | 'traces' | 'guide' | 'meta'
/** Stores whose records belong to another one, named first in their key. */
export type OwnedStore = 'lines' | 'connectors' | 'photos' | 'traces'
export type Upgrade = IDBPTransaction<Schema, StoreName[], 'versionchange'>

/** The step from the first version, fetched by those few who have it: a transaction waits for no file. */
let fromFirst: ((tx: Upgrade) => Promise<void>) | undefined

/** One step per version, each run once, oldest first, in the one transaction of the upgrade. Steps that shipped are never changed. */
async function upgrade(db: Connection, oldVersion: number, tx: Upgrade): Promise<void> {
  if (oldVersion < 1) {
    db.createObjectStore('complaints', { keyPath: 'id' })
    db.createObjectStore('guide')
    db.createObjectStore('meta')
  }
  if (oldVersion < 2) {
    db.createObjectStore('lines', { keyPath: ['complaintId', 'id'] })
    if (oldVersion === 1) await fromFirst?.(tx)
  }
  if (oldVersion < 3) db.createObjectStore('photos', { keyPath: ['owner', 'id'] })
  if (oldVersion < 4) db.createObjectStore('connectors', { keyPath: ['complaintId', 'id'] })
  if (oldVersion < 5) db.createObjectStore('traces', { keyPath: ['owner', 'id'] })
}

let opening: Promise<Connection> | undefined
let isBlocked = false
/** True from the first silence until anything answers: what comes after it does not wait again. */
let isSilent = false

/** True once this window has erased everything: what still runs must not open an empty database again. */
let isErased = false

/** Drops the connection, also one that never opens; the next use opens a new one. */
export const closeStore = (): void => letGo(false)

/** Drops the connection for good (`erased`), or lets it be opened again. */
export function letGo(erased: boolean): void {
  isErased = erased
  dropConnection()
}

function dropConnection(): void {
  const old = opening
  isSilent = false
  opening = undefined
  old?.then(
    (db) => db.close(),
    () => undefined,
  )
}

async function open(): Promise<Connection> {
  let db: Connection | undefined
  let isFirst = false
  try {
    if (isErased || databases() === undefined) throw new StoreError('unavailable')
    db = await openDB<Schema>(DB_NAME, DB_VERSION, {
      upgrade: (fresh, oldVersion, _newVersion, tx) => {
        tx.done.catch(() => undefined)
        isFirst = oldVersion === 1 && fromFirst === undefined
        // all of it or nothing: a step that fails takes the whole upgrade back
        if (isFirst) tx.abort()
        else upgrade(fresh, oldVersion, tx).catch(() => tx.abort())
      },
      blocked: () => {
        isBlocked = true
        reportTrouble(new StoreError('blocked'))
      },
      // Another window needs the storage: let go at once, or that window would stay blank.
      blocking: (_current, wanted) => {
        db?.close()
        opening = undefined
        if (wanted !== null) reportTrouble(new StoreError('newer'))
      },
      terminated: () => {
        opening = undefined
      },
    })
    if (isBlocked) reportTrouble(undefined)
    return db
  } catch (error) {
    if (!isFirst) throw error
    fromFirst = (await import('./first-version.ts')).makeLinesRecords
    return await open()
  } finally {
    isBlocked = false
  }
}

function connect(): Promise<Connection> {
  opening ??= open()
  const current = opening
  current.catch(() => {
    if (opening === current) opening = undefined
  })
  return current
}

/** Runs `job`, once more on a fresh connection when the old one was lost. */
async function withConnection<T>(job: (db: Connection) => Promise<T>): Promise<T> {
  try {
    return await job(await connect())
  } catch (error) {
    if (!isLostConnection(error)) throw error
    dropConnection()
    return await job(await connect())
  }
}

/**
 * Runs `job`; a storage that stays silent fails, so that nobody waits for it, and is told of when it answers after all.
 * Fails with a `StoreError`, also reported unless it is one the caller tells of (`ownTrouble`).
 */
async function withDb<T>(
  job: (db: Connection) => Promise<T>,
  ownTrouble?: StoreTrouble,
  patienceMs = SILENT_AFTER_MS,
): Promise<T> {
  const asked = withConnection(job)
  let isLate = false
  let timer: ReturnType<typeof setTimeout> | undefined
  const silence = new Promise<never>((_done, failed) => {
    const giveUp = () => {
      isLate = true
      isSilent = true
      failed(new StoreError(isBlocked ? 'blocked' : 'silent'))
    }
    timer = setTimeout(giveUp, isSilent ? 0 : patienceMs)
  })
  const answered = () => {
    isSilent = false
    if (isLate) reportTrouble(undefined)
  }
  asked.then(answered, () => undefined)
  try {
    return await Promise.race([asked, silence])
  } catch (error) {
    const trouble = asStoreError(error)
    if (trouble.trouble !== ownTrouble && !isErased) reportTrouble(trouble)
    throw trouble
  } finally {
    clearTimeout(timer)
  }
}

type Key = string | [string, string]
const rangeOf = (owner: string): IDBKeyRange => IDBKeyRange.bound([owner], [owner, []])

/** A store to read from; that its transaction was lost is told by the request. */
function toRead(db: Connection, store: StoreName) {
  const tx = db.transaction(store)
  tx.done.catch(() => undefined)
  return tx.store
}

/** The value under a key, or undefined. Fails with a `StoreError`. */
export function readOne(store: StoreName, key: Key): Promise<unknown> {
  return withDb((db) => toRead(db, store).get(key))
}

/** All values of a store. Fails with a `StoreError`. */
export function readAll(store: StoreName): Promise<readonly unknown[]> {
  return withDb((db) => toRead(db, store).getAll())
}

/** The keys of a store. Fails with a `StoreError`. */
export function readKeys(store: StoreName): Promise<readonly IDBValidKey[]> {
  return withDb((db) => toRead(db, store).getAllKeys())
}

/** What a job in one transaction may do. */
export type Desk = {
  readonly get: (store: StoreName, key: Key) => Promise<unknown>
  /** all values of a store with their keys */
  readonly all: (store: StoreName) => Promise<readonly (readonly [key: IDBValidKey, value: unknown])[]>
  readonly keys: (store: StoreName) => Promise<readonly IDBValidKey[]>
  readonly ownedBy: (store: OwnedStore, owner: string) => Promise<readonly unknown[]>
  /** the key only where the record does not name it itself */
  readonly put: (store: StoreName, value: unknown, key?: string) => Promise<unknown>
  readonly remove: (store: StoreName, key: IDBValidKey) => Promise<void>
  readonly removeOwned: (store: OwnedStore, owner: string) => Promise<void>
}

/** A job that failed by itself takes what it wrote back; one whose request failed is taken back already. */
function abort(tx: { readonly abort: () => void }): void {
  try {
    tx.abort()
  } catch {
    // it has ended
  }
}

/**
 * Reads and writes in one transaction: all of it is on disk before it resolves, or nothing is. Nothing but the desk may
 * be waited for inside. Fails with a `StoreError`; `ownTrouble` is told of by the caller alone. `patienceMs`: how long a large
 * job may take.
 */
export function inOneGo<T>(
  stores: StoreName[],
  job: (desk: Desk) => Promise<T>,
  ownTrouble?: StoreTrouble,
  patienceMs?: number,
): Promise<T> {
  return withDb(
    async (db) => {
      const tx = db.transaction(stores, 'readwrite', { durability: 'strict' })
      const remove = (store: StoreName, key: IDBValidKey | IDBKeyRange) => tx.objectStore(store).delete(key as Key)
      const desk: Desk = {
        get: (store, key) => tx.objectStore(store).get(key),
        all: async (store) => {
          const keysAsked = tx.objectStore(store).getAllKeys()
          // where the next request cannot even be made, nobody waits for this one
          keysAsked.catch(() => undefined)
          const [keys, values] = await Promise.all([keysAsked, tx.objectStore(store).getAll()])
          return keys.map((key, index) => [key, values[index]] as const)
        },
        keys: (store) => tx.objectStore(store).getAllKeys(),
        ownedBy: (store, owner) => tx.objectStore(store).getAll(rangeOf(owner)),
        put: (store, value, key) => tx.objectStore(store).put(value, key),
        remove,
        removeOwned: (store, owner) => remove(store, rangeOf(owner)),
      }
      const asked = job(desk).catch((error: unknown) => {
        abort(tx)
        throw error
      })
      const [result] = await Promise.all([asked, tx.done])
      return result
    },
    ownTrouble,
    patienceMs,
  )
}

/** Stores a value under a key, on disk before it resolves. Fails with a `StoreError`. */
export function writeOne(store: 'guide' | 'meta', key: string, value: unknown): Promise<void> {
  return changeOne(store, key, () => value)
}

/**
 * Replaces one value by what `change` makes of it, in one transaction; undefined from `change` leaves things as they are.
 * On disk before it resolves. Fails with a `StoreError`.
 */
export function changeOne(store: 'guide' | 'meta', key: string, change: (old: unknown) => unknown): Promise<void> {
  return inOneGo([store], async (desk) => {
    const value = change(await desk.get(store, key))
    if (value !== undefined) await desk.put(store, value, key)
  })
}
