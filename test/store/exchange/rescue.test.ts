import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { rescueFile } from '../../../src/state/rescue.ts'
import { listComplaints } from '../../../src/store/complaints.ts'
import { closeStore, DB_NAME, DB_VERSION } from '../../../src/store/db.ts'
import { eraseStore } from '../../../src/store/erase-store.ts'
import { readFile } from '../../../src/store/exchange/file.ts'
import { readWhatCanBeRead } from '../../../src/store/exchange/rescue.ts'
import { takeIn } from '../../../src/store/exchange/take.ts'
import { type StoreError, type StoreTrouble, watchStore } from '../../../src/store/trouble.ts'
import v4 from '../fixtures/v4.json' with { type: 'json' }
import { freshStore } from '../fresh-store.ts'

beforeEach(freshStore)
afterEach(closeStore)

const [DESIGN] = v4.stores.complaints.records

/** A database of some version with these stores of the fixture, left behind by whoever it was. */
function leave(version: number, names: readonly ('complaints' | 'lines' | 'connectors')[]): Promise<void> {
  return new Promise((done, failed) => {
    const request = indexedDB.open(DB_NAME, version)
    request.onupgradeneeded = () => {
      for (const name of names) {
        const { keyPath, records } = v4.stores[name]
        const store = request.result.createObjectStore(name, { keyPath })
        for (const record of records) store.put({ ...record, laterField: 7 })
      }
      request.result.createObjectStore('meta')
    }
    request.onsuccess = () => {
      request.result.close()
      done()
    }
    request.onerror = () => failed(request.error)
  })
}

function watched(): StoreError[] {
  const seen: StoreError[] = []
  watchStore((trouble) => trouble && seen.push(trouble))
  return seen
}

async function textOf(): Promise<string> {
  const file = await rescueFile()
  if (!file.ok) throw new Error(file.message)
  return file.text
}

describe('a database this version cannot open as its own', () => {
  const CASES: readonly (readonly [
    StoreTrouble,
    number,
    readonly ('complaints' | 'lines' | 'connectors')[],
    RegExp,
  ])[] = [
    ['newer', DB_VERSION + 1, ['complaints', 'lines', 'connectors'], /newer version.*changes nothing of it/],
    ['missing', DB_VERSION, ['complaints', 'lines'], /Part of the storage is missing/],
  ]
  it.each(CASES)(
    '%s: says so by its own true sentence, and changes nothing',
    async (trouble, version, names, words) => {
      await leave(version, names)
      const seen = watched()
      await expect(listComplaints()).rejects.toMatchObject({ trouble })
      expect(seen.at(-1)?.message).toMatch(words)
      closeStore()
      const { wholes } = await readWhatCanBeRead()
      expect(wholes.map(({ complaint }) => complaint.id)).toEqual([DESIGN?.id])
    },
  )

  it('gives what can be read as a file that comes in again, with what it did not understand', async () => {
    await leave(DB_VERSION + 3, ['complaints', 'lines', 'connectors'])
    const read = readFile(await textOf())
    if (!read.ok) throw new Error(read.message)
    const [whole] = read.complaints
    expect(whole?.complaint.title).toBe(DESIGN?.title)
    expect(whole?.complaint.lines.length).toBe(v4.stores.lines.records.filter((one) => !('removedAt' in one)).length)
    expect(whole?.connectors.length).toBe(v4.stores.connectors.records.filter((one) => !('removedAt' in one)).length)
    expect(whole?.complaint.kept).toContainEqual({ at: 'laterField', value: 7 })
    await eraseStore()
    closeStore()
    await takeIn(read.complaints, 'merge', '2026-11-26T08:00:00.000Z')
    expect((await listComplaints()).map(({ title }) => title)).toEqual([DESIGN?.title])
  })

  it('names the store that is not there, and gives lines without their complaint a place', async () => {
    await leave(DB_VERSION, ['lines', 'connectors'])
    const file = await rescueFile()
    expect(file).toMatchObject({ ok: true, words: expect.stringContaining('titles and notes') })
    const { wholes, absent } = await readWhatCanBeRead()
    expect(absent).toEqual(['complaints'])
    expect(wholes.map(({ complaint }) => complaint.title)).toEqual(['Recovered'])
    expect(wholes[0]?.complaint.lines.length).toBeGreaterThan(0)
  })

  it('makes no database where there is none, and says that nothing can be read', async () => {
    expect(await rescueFile()).toMatchObject({ ok: false })
    expect(await indexedDB.databases()).toEqual([])
  })
})
