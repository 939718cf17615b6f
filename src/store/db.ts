/** The database: its schema, its upgrades and the few operations the store needs. The only file that knows idb. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { asStoreError, isLostConnection, reportTrouble, StoreError } from './trouble.ts'

export const DB_NAME = 'stillpin'
export const DB_VERSION = 1

/** A queued open gets no `blocked` event, so silence counts as blocked after this long. */
const BLOCKED_AFTER_MS = 1500

/** Values are `unknown` on purpose: whatever is read goes through restore.ts or a check of its own. */
interface Schema extends DBSchema {
  complaints: { key: string; value: unknown }
  guide: { key: string; value: unknown }
  meta: { key: string; value: unknown }
}
type Connection = IDBPDatabase<Schema>
export type StoreName = 'complaints' | 'guide' | 'meta'

/** One step per version, each run once, oldest first. Steps that shipped are never changed. */
function upgrade(db: Connection, oldVersion: number): void {
  if (oldVersion < 1) {
    db.createObjectStore('complaints', { keyPath: 'id' })
    db.createObjectStore('guide')
    db.createObjectStore('meta')
  }
}

let opening: Promise<Connection> | undefined

/** Drops the connection, also one that never opens; the next use opens a new one. */
export function closeStore(): void {
  const old = opening
  opening = undefined
  old?.then(
    (db) => db.close(),
    () => undefined,
  )
}

async function open(): Promise<Connection> {
  let db: Connection | undefined
  let wasBlocked = false
  const blocked = () => {
    wasBlocked = true
    reportTrouble(new StoreError('blocked'))
  }
  const timer = setTimeout(blocked, BLOCKED_AFTER_MS)
  try {
    db = await openDB<Schema>(DB_NAME, DB_VERSION, {
      upgrade,
      blocked,
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
    if (wasBlocked) reportTrouble(undefined)
    return db
  } finally {
    clearTimeout(timer)
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

/** Runs `job`, once more on a fresh connection when the old one was lost. Fails with a `StoreError`, also reported. */
async function withDb<T>(job: (db: Connection) => Promise<T>): Promise<T> {
  try {
    try {
      return await job(await connect())
    } catch (error) {
      if (!isLostConnection(error)) throw error
      closeStore()
      return await job(await connect())
    }
  } catch (error) {
    const trouble = asStoreError(error)
    reportTrouble(trouble)
    throw trouble
  }
}

/** The value under a key, or undefined. Fails with a `StoreError`. */
export function readOne(store: StoreName, key: string): Promise<unknown> {
  return withDb((db) => db.get(store, key))
}

/** All values of a store. Fails with a `StoreError`. */
export function readAll(store: StoreName): Promise<readonly unknown[]> {
  return withDb((db) => db.getAll(store))
}

/** Stores a value under a key, on disk before it resolves. Fails with a `StoreError`. */
export function writeOne(store: StoreName, key: string, value: unknown): Promise<void> {
  return changeOne(store, key, () => value)
}

/**
 * Replaces one value by what `change` makes of it, in one transaction; undefined from `change` leaves things as they are.
 * On disk before it resolves. Fails with a `StoreError`.
 */
export function changeOne(store: StoreName, key: string, change: (old: unknown) => unknown): Promise<void> {
  return withDb(async (db) => {
    const tx = db.transaction(store, 'readwrite', { durability: 'strict' })
    const step = async () => {
      const value = change(await tx.store.get(key))
      if (value !== undefined) await tx.store.put(value, tx.store.keyPath === null ? key : undefined)
    }
    await Promise.all([step(), tx.done])
  })
}

/** Removes the values under these keys in one transaction. Fails with a `StoreError`. */
export function removeMany(store: StoreName, keys: readonly string[]): Promise<void> {
  return withDb(async (db) => {
    const tx = db.transaction(store, 'readwrite', { durability: 'strict' })
    await Promise.all([...keys.map((key) => tx.store.delete(key)), tx.done])
  })
}
