/**
 * What can still be read of a database that this version cannot open as its own: one that a newer version wrote, or one
 * that lacks a store. It is opened in whatever form it has, read, and left as it is.
 */
import { databases } from '../browser-storage.ts'
import { DB_NAME } from '../db.ts'
import { isRecord } from '../plain.ts'
import { StoreError } from '../trouble.ts'
import { restoreWhole, type Whole } from './whole.ts'

const STORES = ['complaints', 'lines', 'connectors'] as const

/** `absent`: the stores that are not there. */
export type Rescued = { readonly wholes: readonly Whole[]; readonly absent: readonly string[] }

const asked = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((done, failed) => {
    request.onsuccess = () => done(request.result)
    request.onerror = () => failed(request.error)
  })

/** The database in the form it has; one that is not there is not made. */
function openAsItIs(): Promise<IDBDatabase> {
  const here = databases()
  if (here === undefined) throw new StoreError('unavailable')
  const request = here.open(DB_NAME)
  request.onupgradeneeded = () => request.transaction?.abort()
  return asked(request)
}

const textAt = (raw: unknown, key: string): string => (isRecord(raw) && typeof raw[key] === 'string' ? raw[key] : '')

function groupedByOwner(all: readonly unknown[]): ReadonlyMap<string, readonly unknown[]> {
  const groups = new Map<string, unknown[]>()
  for (const raw of all) {
    const owner = textAt(raw, 'complaintId')
    const group = groups.get(owner)
    if (group === undefined) groups.set(owner, [raw])
    else group.push(raw)
  }
  return groups
}

/** All complaints that are not deleted; what has lost its complaint comes in one called “Recovered”. */
export async function readWhatCanBeRead(): Promise<Rescued> {
  const db = await openAsItIs()
  try {
    const read = async (name: string): Promise<readonly unknown[]> =>
      db.objectStoreNames.contains(name) ? asked(db.transaction(name).objectStore(name).getAll()) : []
    const [records, lines, connectors] = await Promise.all([read('complaints'), read('lines'), read('connectors')])
    const [linesOf, connectorsOf] = [groupedByOwner(lines), groupedByOwner(connectors)]
    const known = new Set(records.map((raw) => textAt(raw, 'id')))
    const lost = [...new Set([...linesOf.keys(), ...connectorsOf.keys()])].filter((id) => !known.has(id))
    const all = [...records, ...lost.map((id) => ({ id, title: 'Recovered' }))]
    const wholes = all.flatMap((raw): Whole[] => {
      if (isRecord(raw) && raw['deletedAt'] !== undefined) return []
      const id = textAt(raw, 'id')
      const own = { lines: linesOf.get(id) ?? [], connectors: connectorsOf.get(id) ?? [] }
      return [restoreWhole(isRecord(raw) ? { ...raw, ...own } : raw, 'stored')]
    })
    return { wholes, absent: STORES.filter((name) => !db.objectStoreNames.contains(name)) }
  } finally {
    db.close()
  }
}
