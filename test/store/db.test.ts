import { readdirSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { eventsFrom } from '../../src/guide/investigate/events.ts'
import { translateEvents } from '../../src/guide/retired.ts'
import type { Answers } from '../../src/guide/types.ts'
import { COMPLAINT_SCHEMA } from '../../src/store/complaint.ts'
import { getComplaint, listComplaints } from '../../src/store/complaints.ts'
import { CONNECTOR_FIELDS, CONNECTOR_SCHEMA } from '../../src/store/connector.ts'
import { readConnectors } from '../../src/store/connector-steps.ts'
import {
  changeOne,
  closeStore,
  DB_NAME,
  DB_VERSION,
  readAll,
  readOne,
  SILENT_AFTER_MS,
  writeOne,
} from '../../src/store/db.ts'
import { LINE_FIELDS, LINE_SCHEMA } from '../../src/store/line.ts'
import { readScratch, readTheme, readTriage, TRIAGE_FIELDS, TRIAGE_SCHEMA } from '../../src/store/meta.ts'
import { listPhotos, PHOTO_FIELDS, PHOTO_SCHEMA } from '../../src/store/photos.ts'
import { COMPLAINT_FIELDS, restoreRecord } from '../../src/store/restore.ts'
import { listTraces, TRACE_FIELDS, TRACE_SCHEMA } from '../../src/store/traces.ts'
import { StoreError, type StoreTrouble, watchStore } from '../../src/store/trouble.ts'
import v1 from './fixtures/v1.json' with { type: 'json' }
import v2 from './fixtures/v2.json' with { type: 'json' }
import v3 from './fixtures/v3.json' with { type: 'json' }
import v4 from './fixtures/v4.json' with { type: 'json' }
import v5 from './fixtures/v5.json' with { type: 'json' }
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

type Fixture = {
  readonly databaseVersion: number
  readonly stores: Readonly<
    Record<string, { readonly keyPath: string | string[] | null; readonly records: object | readonly object[] }>
  >
}

/** JSON has no buffers: those of a fixture are written in base 64. */
const withBytes = (record: object): object =>
  'bytes' in record ? { ...record, bytes: new Uint8Array(Buffer.from(String(record.bytes), 'base64')).buffer } : record

async function seed({ databaseVersion, stores }: Fixture): Promise<void> {
  const db = await openRaw(databaseVersion, (fresh) => {
    for (const [name, { keyPath, records }] of Object.entries(stores)) {
      const store = fresh.createObjectStore(name, keyPath === null ? {} : { keyPath })
      if (Array.isArray(records)) for (const record of records) store.put(withBytes(record))
      else for (const [key, record] of Object.entries(records)) store.put(record, key)
    }
  })
  db.close()
}

/** A trial of the first version of a line, as a step of the columns it is kept in now: by hand from what it says. */
const FIRST_TRIAL = {
  id: 't1',
  at: '1970-01-01T00:00:00.000Z',
  steps: '4.7e-9 F',
  places: '',
  noise: 'gone',
  signal: 'good',
  repeats: 'agreed',
  times: '',
  removed: '',
}

/** A stored line as it is read now. */
const asNow = <L extends { readonly trials: readonly object[] }>(line: L) => ({
  ...line,
  schemaVersion: LINE_SCHEMA,
  trials: line.trials.map((trial) => ('legF' in trial && trial.legF === 4.7e-9 ? FIRST_TRIAL : trial)),
})

/** Every stored record of a kind, with the version it says it has (1 where it says none). */
const RECORDS = {
  complaint: {
    now: COMPLAINT_SCHEMA,
    fields: COMPLAINT_FIELDS,
    of: [v1, v2, v3, v4, v5].flatMap(({ stores }): readonly { schemaVersion: number }[] => stores.complaints.records),
  },
  line: {
    now: LINE_SCHEMA,
    fields: LINE_FIELDS.kept,
    of: [v2, v4, v5].flatMap(({ stores }): readonly { schemaVersion: number }[] => stores.lines.records),
  },
  connector: {
    now: CONNECTOR_SCHEMA,
    fields: CONNECTOR_FIELDS,
    of: [...v4.stores.connectors.records, ...v5.stores.connectors.records],
  },
  'scratch line': {
    now: LINE_SCHEMA,
    fields: LINE_FIELDS.loose,
    of: [
      v2.stores.meta.records.scratch,
      ...v2.stores.meta.records.scratchesAside,
      v4.stores.meta.records.scratch,
      v5.stores.meta.records.scratch,
    ],
  },
  triage: {
    now: TRIAGE_SCHEMA,
    fields: TRIAGE_FIELDS,
    of: [v2.stores.meta.records.triage, ...v2.stores.meta.records.triagesAside, v3.stores.meta.records.triage],
  },
  photo: { now: PHOTO_SCHEMA, fields: PHOTO_FIELDS, of: v3.stores.photos.records },
  trace: { now: TRACE_SCHEMA, fields: TRACE_FIELDS, of: v5.stores.traces.records },
} as const

function troubles(): (StoreTrouble | undefined)[] {
  const seen: (StoreTrouble | undefined)[] = []
  watchStore((trouble) => seen.push(trouble?.trouble))
  return seen
}

describe('the database', () => {
  it('creates its stores', async () => {
    await writeOne('meta', 'theme', 'dark')
    closeStore()
    const db = await openRaw(DB_VERSION)
    expect([...db.objectStoreNames]).toEqual(['complaints', 'connectors', 'guide', 'lines', 'meta', 'photos', 'traces'])
    db.close()
  })

  it('has a fixture of every version it ever had', () => {
    const fixtures = readdirSync(`${import.meta.dirname}/fixtures`)
    for (let version = 1; version <= DB_VERSION; version++) expect(fixtures).toContain(`v${version}.json`)
  })

  it.each(Object.entries(RECORDS))(
    'has a fixture of every version a %s ever had, and the newest names its fields as they are now',
    (_name, { now, fields, of }) => {
      const versions: readonly (readonly [number, object])[] = of.map((one) => [one.schemaVersion, one])
      expect(new Set(versions.map(([version]) => version))).toEqual(
        new Set(Array.from({ length: now }, (_, i) => i + 1)),
      )
      const newest = versions.filter(([version]) => version === now).flatMap(([, record]) => Object.keys(record))
      expect(new Set(newest)).toEqual(new Set(fields))
    },
  )

  it('opens a version 1 storage, gives each line a record of its own, and loses nothing', async () => {
    await seed(v1)
    const [kept, ...others] = await listComplaints()
    expect(others).toEqual([])
    const [old] = v1.stores.complaints.records
    const [line] = old?.lines ?? []
    expect(kept).toEqual({
      ...old,
      schemaVersion: COMPLAINT_SCHEMA,
      events: eventsFrom(old?.answers ?? {}, old?.updatedAt ?? ''),
      kept: [{ at: 'later', value: { x: 3 } }],
      lines: [
        {
          ...(line && asNow(line)),
          complaintId: old?.id,
          order: 0,
          updatedAt: old?.updatedAt,
          kept: [{ at: 'facts.fluxWb', value: { text: '3 mWb', origin: { by: 'user' } } }],
        },
      ],
    })
    expect(await readAll('complaints')).toHaveLength(2)
    expect((await readAll('complaints')).filter((raw) => Object.hasOwn(Object(raw), 'lines'))).toEqual([])
    expect(await readTheme()).toBe('night')
    expect(await readScratch()).toMatchObject(v1.stores.meta.records.scratch)
    expect(await readTriage()).toMatchObject(v1.stores.meta.records.triage)
  })

  it('opens a version 1 storage with records that cannot be what they say', async () => {
    await seed({
      databaseVersion: 1,
      stores: {
        complaints: {
          keyPath: 'id',
          records: [
            { id: 'two words', title: 'a', lines: [{ id: 'x' }, { id: 'x', facts: {} }, 'no line', { id: 'y z' }] },
            { id: 'plain', title: 'b', lines: 'none', kept: 'odd' },
          ],
        },
        guide: { keyPath: null, records: {} },
        meta: { keyPath: null, records: {} },
      },
    })
    const found = [...(await listComplaints())].sort((a, b) => a.title.localeCompare(b.title))
    expect(found.map(({ title, lines }) => [title, lines.length])).toEqual([
      ['a', 3],
      ['b', 0],
    ])
    expect(found[0]?.kept).toEqual([
      { at: 'lines.2', value: 'no line' },
      { at: 'id', value: 'two words' },
    ])
    expect(found[1]?.kept).toEqual([
      { at: 'kept', value: 'odd' },
      { at: 'lines', value: 'none' },
    ])
    expect(new Set(found[0]?.lines.map(({ id }) => id)).size).toBe(3)
    expect((await readAll('complaints')).map((raw) => restoreRecord(raw).id).sort()).toEqual(
      found.map(({ id }) => id).sort(),
    )
  })

  it('opens a version 2 storage as it is, its answers as events of their last change', async () => {
    await seed(v2)
    const history = (one: { readonly events?: object; readonly answers: object; readonly updatedAt: string }) => ({
      events: one.events ?? eventsFrom({ ...one.answers }, one.updatedAt),
    })
    const kept = v2.stores.complaints.records.filter((one) => one.deletedAt === undefined)
    const lines = v2.stores.lines.records.filter((one) => one.removedAt === undefined)
    expect(await listComplaints()).toMatchObject(
      kept.map((one) => ({
        ...one,
        ...history(one),
        schemaVersion: COMPLAINT_SCHEMA,
        lines: lines.flatMap((line) => (line.complaintId === one.id ? [asNow(line)] : [])),
      })),
    )
    const { scratch, triage } = v2.stores.meta.records
    expect(await readScratch()).toMatchObject({ ...scratch, schemaVersion: LINE_SCHEMA })
    const line = { ...triage.line, schemaVersion: LINE_SCHEMA }
    expect(await readTriage()).toMatchObject({ ...triage, ...history(triage), line, schemaVersion: TRIAGE_SCHEMA })
  })

  it('opens a version 3 storage: tables and photos as they were, and answers under retired ids as events of their last change', async () => {
    await seed(v3)
    const [old, full, newest] = v3.stores.complaints.records
    const kept = await listComplaints()
    expect(kept.find(({ id }) => id === old?.id)).toMatchObject({
      answers: old?.answers,
      events: eventsFrom({ ...old?.answers } as Answers, old?.updatedAt ?? ''),
    })
    const stored = kept.find(({ id }) => id === old?.id)
    const meaning = translateEvents(stored?.events ?? []).map(
      ({ evidence, option, at }) => `${evidence} ${option} ${at}`,
    )
    expect(meaning.slice(3)).toEqual([`volume still ${old?.updatedAt}`, `grounds-mv follows ${old?.updatedAt}`])
    expect(replay(GUIDE, stored?.answers ?? {}, stored?.events)).toMatchObject({
      unusedAnswers: [],
      answers: { volume: 'still', 'grounds-mv': 'follows' },
    })
    expect(await getComplaint(full?.id ?? '')).toMatchObject({ tables: full?.tables, events: full?.events })
    expect(await getComplaint(newest?.id ?? '')).toMatchObject({ aircraft: newest?.aircraft, rivals: newest?.rivals })
    expect(await readTriage()).toMatchObject({ tables: v3.stores.meta.records.triage.tables })
    const [photo] = await listPhotos([full?.id ?? ''])
    expect(photo).toMatchObject({ evidence: 'strap-trial', widthPx: 1600 })
    expect(Buffer.from(photo?.bytes ?? new ArrayBuffer(0)).toString()).toBe('RIFF')
  })

  it('opens a version 3 storage with room for connectors, and one of version 4 with those it has', async () => {
    await seed(v3)
    expect(await readConnectors('cafef00dcafef00dcafef00dcafef00d')).toEqual([])
    freshStore()
    await seed(v4)
    const [design] = v4.stores.complaints.records
    const lines = v4.stores.lines.records.filter((line) => !('removedAt' in line)).map(asNow)
    expect(await listComplaints()).toEqual([{ ...design, schemaVersion: COMPLAINT_SCHEMA, lines }])
    expect(await readConnectors(design?.id ?? '')).toEqual(
      v4.stores.connectors.records.map((one) => ({ ...one, schemaVersion: CONNECTOR_SCHEMA })),
    )
  })

  it('opens a version 4 storage with room for traces, and one of version 5 with those it has', async () => {
    await seed(v4)
    expect(await listTraces('line-bus')).toEqual([])
    freshStore()
    await seed(v5)
    const [kept] = v5.stores.traces.records
    const [trace] = await listTraces('line-bus')
    expect(trace).toEqual({ ...kept, bytes: trace?.bytes })
    expect([...new Uint8Array(trace?.bytes ?? new ArrayBuffer(0))]).toEqual([31, 139])
  })

  it('writes with strict durability', async () => {
    const spy = vi.spyOn(IDBDatabase.prototype, 'transaction')
    await writeOne('meta', 'theme', 'day')
    expect(spy).toHaveBeenCalledWith(['meta'], 'readwrite', { durability: 'strict' })
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

  it('waits two seconds for a storage that stays silent, once, and says when it answers after all', async () => {
    const holder = await openRaw(1, (db) => {
      for (const name of ['guide', 'meta']) db.createObjectStore(name)
      db.createObjectStore('complaints', { keyPath: 'id' })
    })
    const seen = troubles()
    const deletion = indexedDB.deleteDatabase(DB_NAME)
    await expect(readOne('meta', 'theme')).rejects.toMatchObject({ trouble: 'silent' })
    const waits = vi.spyOn(globalThis, 'setTimeout')
    await expect(readOne('meta', 'theme')).rejects.toMatchObject({ trouble: 'silent' })
    expect(waits.mock.calls.map(([, ms]) => ms)).not.toContain(SILENT_AFTER_MS)
    waits.mockRestore()
    expect(seen).toEqual(['silent', 'silent'])
    holder.close()
    await vi.waitFor(() => expect(seen.at(-1)).toBeUndefined(), { timeout: 3000 })
    expect(deletion.readyState).toBe('done')
    expect(await readOne('meta', 'theme')).toBeUndefined()
  })

  it('says so when another window holds the storage in an older form', async () => {
    await seed(v1)
    const holder = await openRaw(1)
    const seen = troubles()
    await expect(readOne('meta', 'theme')).rejects.toMatchObject({ trouble: 'blocked' })
    expect(seen).toEqual(['blocked', 'blocked'])
    holder.close()
    await vi.waitFor(() => expect(seen.at(-1)).toBeUndefined(), { timeout: 3000 })
  })

  it('changes a value on top of what is stored at that moment', async () => {
    await writeOne('meta', 'count', 0)
    const step = () => changeOne('meta', 'count', (old) => Number(old) + 1)
    await Promise.all([step(), step(), step()])
    expect(await readOne('meta', 'count')).toBe(3)
  })
})
