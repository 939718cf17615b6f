import { readdirSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { listComplaints } from '../../src/store/complaints.ts'
import { changeOne, closeStore, DB_NAME, DB_VERSION, readAll, readOne, writeOne } from '../../src/store/db.ts'
import { readTheme } from '../../src/store/meta.ts'
import { StoreError, type StoreTrouble, watchStore } from '../../src/store/trouble.ts'
import v1 from './fixtures/v1.json' with { type: 'json' }
import { freshStore } from './fresh-store.ts'

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

/** Opens the database the plain way, as another window or another version would. */
function openRaw(version: number, upgrade: (db: IDBDatabase) => void = () => undefined): Promise<IDBDatabase> {
  return new Promise((done, failed) => {
    const request = indexedDB.open(DB_NAME, version)
    request.onupgradeneeded = () => upgrade(request.result)
    request.onsuccess = () => done(request.result)
    request.onerror = () => failed(request.error)
  })
}

async function seedVersion1(): Promise<void> {
  const db = await openRaw(1, (fresh) => {
    for (const [name, { keyPath, records }] of Object.entries(v1.stores)) {
      const store = fresh.createObjectStore(name, keyPath === null ? {} : { keyPath })
      if (Array.isArray(records)) for (const record of records) store.put(record)
      else for (const [key, record] of Object.entries(records)) store.put(record, key)
    }
  })
  db.close()
}

function troubles(): (StoreTrouble | undefined)[] {
  const seen: (StoreTrouble | undefined)[] = []
  watchStore((trouble) => seen.push(trouble?.trouble))
  return seen
}

describe('the database', () => {
  it('creates its three stores', async () => {
    await writeOne('meta', 'theme', 'dark')
    closeStore()
    const db = await openRaw(DB_VERSION)
    expect([...db.objectStoreNames]).toEqual(['complaints', 'guide', 'meta'])
    db.close()
  })

  it('has a fixture of every version it ever had', () => {
    const fixtures = readdirSync(`${import.meta.dirname}/fixtures`)
    for (let version = 1; version <= DB_VERSION; version++) expect(fixtures).toContain(`v${version}.json`)
  })

  it('opens a version 1 storage and loses nothing', async () => {
    await seedVersion1()
    const [kept, ...others] = await listComplaints()
    expect(others).toEqual([])
    expect(kept).toEqual(v1.stores.complaints.records[0])
    expect(await readAll('complaints')).toHaveLength(2)
    expect(await readTheme()).toBe('night')
  })

  it('writes with strict durability', async () => {
    const spy = vi.spyOn(IDBDatabase.prototype, 'transaction')
    await writeOne('meta', 'theme', 'day')
    expect(spy).toHaveBeenCalledWith('meta', 'readwrite', { durability: 'strict' })
  })

  it('lets go when another window upgrades, and says so', async () => {
    const seen = troubles()
    await writeOne('meta', 'theme', 'day')
    const newer = await openRaw(DB_VERSION + 1)
    expect(seen).toEqual(['newer'])
    newer.close()
  })

  it('says that the storage is newer than this window', async () => {
    ;(await openRaw(DB_VERSION + 1)).close()
    const seen = troubles()
    await expect(readOne('meta', 'theme')).rejects.toMatchObject({ trouble: 'newer' })
    expect(seen).toEqual(['newer'])
  })

  it('reopens once when the connection was lost, and the write arrives', async () => {
    await writeOne('meta', 'scratch', 'before')
    const real = IDBDatabase.prototype.transaction
    let failures = 1
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
      if (failures-- > 0) throw new DOMException('The database connection is closing.', 'InvalidStateError')
      return real.apply(this, args)
    })
    await writeOne('meta', 'scratch', 'after')
    vi.restoreAllMocks()
    expect(await readOne('meta', 'scratch')).toBe('after')
  })

  it('tells the user when reopening did not help', async () => {
    await writeOne('meta', 'scratch', 'before')
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
      throw new DOMException('Connection to Indexed Database server lost.', 'UnknownError')
    })
    const seen = troubles()
    await expect(writeOne('meta', 'scratch', 'after')).rejects.toBeInstanceOf(StoreError)
    expect(seen).toEqual(['lost'])
  })

  it('names a full storage', async () => {
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('too much', 'QuotaExceededError')
    })
    await expect(writeOne('meta', 'scratch', 'x')).rejects.toMatchObject({ trouble: 'full' })
  })

  it('works without any storage by saying so', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('denied', 'SecurityError')
      },
    })
    await expect(readOne('meta', 'theme')).rejects.toMatchObject({ trouble: 'unavailable' })
    vi.unstubAllGlobals()
  })

  it('reports a storage that stays silent as blocked, and that it opened after all', async () => {
    const holder = await openRaw(1, (db) => {
      for (const name of ['guide', 'meta']) db.createObjectStore(name)
      db.createObjectStore('complaints', { keyPath: 'id' })
    })
    const seen = troubles()
    const deletion = indexedDB.deleteDatabase(DB_NAME)
    const reading = readOne('meta', 'theme')
    await vi.waitFor(() => expect(seen).toEqual(['blocked']), { timeout: 3000 })
    holder.close()
    await reading
    expect(deletion.readyState).toBe('done')
    expect(seen).toEqual(['blocked', undefined])
  })

  it('changes a value on top of what is stored at that moment', async () => {
    await writeOne('meta', 'count', 0)
    const step = () => changeOne('meta', 'count', (old) => Number(old) + 1)
    await Promise.all([step(), step(), step()])
    expect(await readOne('meta', 'count')).toBe(3)
  })
})
