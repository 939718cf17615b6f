/** Complaints taken in over those that are here: what the preview says, what is written, and the way back. */
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { addComplaint, changeLine, getComplaint } from '../../../src/store/complaints.ts'
import { keptConnector, newConnector } from '../../../src/store/connector.ts'
import { performConnectorStep, readConnectors } from '../../../src/store/connector-steps.ts'
import { inOneGo } from '../../../src/store/db.ts'
import { differencesOf } from '../../../src/store/exchange/compare.ts'
import { readFile, writeFile } from '../../../src/store/exchange/file.ts'
import { readTaken, readWholes, takeBack, takeIn } from '../../../src/store/exchange/take.ts'
import type { Whole } from '../../../src/store/exchange/whole.ts'
import { newLine } from '../../../src/store/line.ts'
import { newComplaint } from '../../../src/store/new-complaint.ts'
import { freshStore } from '../fresh-store.ts'

const AT = '2999-01-01T00:00:00.000Z'
const user = { by: 'user' } as const
const LINE = {
  ...newLine('bus A'),
  id: 'line-a',
  gate: 'clear' as const,
  facts: { noiseHz: { text: '9 MHz', origin: user }, lineKind: { text: 'can', origin: user } },
}

async function stored(): Promise<string> {
  const complaint = newComplaint({ title: 'Buzz', note: 'since May', lines: [LINE], answers: { wrong: 'noise' } })
  await addComplaint(complaint)
  const connector = {
    ...newConnector('J1'),
    id: 'j1',
    contacts: [
      { id: '1', type: 'line' as const, lineId: 'line-a', texts: { wire: 'W1' } },
      { id: '2', type: 'spare' as const, texts: {} },
    ],
  }
  await performConnectorStep({ do: 'addConnector', connector: keptConnector(connector, complaint.id, 0) })
  return complaint.id
}

async function here(id: string): Promise<Whole> {
  const whole = (await readWholes([id])).get(id)
  if (whole === undefined) throw new Error('It is not here.')
  return whole
}

type Raw = ReturnType<typeof JSON.parse>

/** The file somebody else has changed. */
async function changedFile(id: string, change: (raw: Raw) => void): Promise<Whole> {
  const value: Raw = JSON.parse(writeFile([await here(id)]))
  change(value.complaints[0])
  const read = readFile(JSON.stringify(value))
  if (!read.ok) throw new Error(read.message)
  return read.complaints[0] as Whole
}

const later = (raw: Raw): void => {
  raw.updatedAt = AT
  for (const one of [...raw.lines, ...raw.connectors]) one.updatedAt = AT
}

const changed = (id: string, isLater = true) =>
  changedFile(id, (raw) => {
    raw.title = 'Buzz, right seat'
    raw.aircraft = 'ship 4'
    raw.answers = { wrong: 'data', when: 'flight' }
    raw.tables = { breakers: [{ name: 'pitot heat' }] }
    raw.lines[0].facts.noiseHz.text = '12 MHz'
    raw.lines[0].facts.markedF = { text: '1n', origin: user }
    delete raw.lines[0].facts.lineKind
    raw.lines.push({ id: 'line-b', name: 'discrete' })
    raw.connectors[0].contacts[0].texts = { wire: 'W9', function: 'bus high' }
    raw.connectors[0].contacts[1] = { id: '3', type: 'ground', texts: {} }
    raw.connectors.push({ id: 'j2', name: 'J2' })
    if (isLater) later(raw)
  })

beforeEach(freshStore)

describe('what a file would change', () => {
  it('is told text by text, in words', async () => {
    const id = await stored()
    expect(differencesOf(await here(id), await changed(id))).toEqual([
      { place: 'title', here: 'Buzz', there: 'Buzz, right seat' },
      { place: 'answers, wrong', here: 'noise', there: 'data' },
      { place: 'line bus A, frequency or frequencies of the noise', here: '9 MHz', there: '12 MHz' },
      { place: 'line bus A, the kind of line (ARINC 429 high speed, 28 V DC power, …)', here: 'can' },
      { place: 'connector J1, contact 1, wire', here: 'W1', there: 'W9' },
      { place: 'connector J1, contact 2', here: '' },
      { place: 'connector J1, contact 2, type', here: 'spare' },
      { place: 'aircraft', there: 'ship 4' },
      { place: 'answers, when', there: 'flight' },
      { place: 'breakers 1', there: '' },
      { place: 'breakers 1, name', there: 'pitot heat' },
      { place: 'line bus A, marked capacitance of one capacitor of the filter', there: '1n' },
      { place: 'line discrete', there: '' },
      { place: 'line discrete, name', there: 'discrete' },
      { place: 'connector J1, contact 1, function', there: 'bus high' },
      { place: 'connector J1, contact 3', there: '' },
      { place: 'connector J1, contact 3, type', there: 'ground' },
      { place: 'connector J2', there: '' },
      { place: 'connector J2, name', there: 'J2' },
      { place: 'connector J2, shape', there: 'ring' },
    ])
    expect(differencesOf(await here(id), await here(id))).toEqual([])
  })

  it('names what a connector shares by itself, not by the drawer it lies in', async () => {
    const id = await stored()
    const bonded = await changedFile(id, (raw) => {
      raw.connectors[0].shared = { bondOhm: '2m' }
    })
    expect(differencesOf(await here(id), bonded)).toEqual([{ place: 'connector J1, bondOhm', there: '2m' }])
  })
})

describe('a file laid over what is here', () => {
  it('adds what is not here, and keeps both texts where both say something', async () => {
    const id = await stored()
    await takeIn([await changed(id)], 'merge', AT)
    const { complaint, connectors } = await here(id)
    expect(complaint).toMatchObject({
      title: 'Buzz, right seat',
      note: 'since May',
      aircraft: 'ship 4',
      answers: { wrong: 'noise', when: 'flight' },
      tables: { breakers: [{ name: 'pitot heat' }] },
      rivals: [{ field: 'title', text: 'Buzz' }],
    })
    expect(complaint.lines).toMatchObject([
      {
        name: 'bus A',
        gate: 'clear',
        facts: { noiseHz: { text: '12 MHz' }, lineKind: { text: 'can' }, markedF: { text: '1n' } },
        rivals: [{ fact: 'noiseHz', text: '9 MHz' }],
      },
      { id: 'line-b', gate: 'unknown' },
    ])
    expect(connectors.map(({ name }) => name)).toEqual(['J1', 'J2'])
    expect(connectors[0]?.contacts).toEqual([
      { id: '1', type: 'line', lineId: 'line-a', texts: { wire: 'W9', function: 'bus high' } },
      { id: '3', type: 'ground', texts: {} },
      { id: '2', type: 'spare', texts: {} },
    ])
    expect(connectors[0]?.rivals).toMatchObject([{ contact: '1', field: 'wire', text: 'W1' }])
  })

  it('leaves the label of a connector where it was written later, the other beside it', async () => {
    const id = await stored()
    const older = await changedFile(id, (raw) => {
      raw.connectors[0].name = 'P7'
      raw.connectors[0].updatedAt = '2001-01-01T00:00:00.000Z'
    })
    await takeIn([older], 'merge', AT)
    const [connector] = (await here(id)).connectors
    expect(connector).toMatchObject({ name: 'J1', rivals: [{ field: 'name', text: 'P7' }] })
  })

  it('leaves the text of here where that was written later, the other beside it', async () => {
    const id = await stored()
    const older = await changedFile(id, (raw) => {
      raw.title = 'Buzz, right seat'
      raw.updatedAt = '2026-01-01T00:00:00.000Z'
      raw.lines[0].updatedAt = '2026-01-01T00:00:00.000Z'
      raw.lines[0].facts.noiseHz.text = '12 MHz'
    })
    await takeIn([older], 'merge', AT)
    const { complaint } = await here(id)
    expect([complaint.title, complaint.rivals?.map(({ text }) => text)]).toEqual(['Buzz', ['Buzz, right seat']])
    expect(complaint.lines[0]?.facts.noiseHz?.text).toBe('9 MHz')
    expect(complaint.lines[0]?.rivals?.map(({ text }) => text)).toEqual(['12 MHz'])
  })

  it.each([
    ['later', AT, 'bus B', 'bus A'],
    ['earlier', '2001-01-01T00:00:00.000Z', 'bus A', 'bus B'],
  ])('keeps both names of a line, that of a file written %s too', async (_is, at, name, beside) => {
    const id = await stored()
    const file = await changedFile(id, (raw) => {
      raw.lines[0].name = 'bus B'
      raw.lines[0].updatedAt = at
    })
    for (const _time of ['once', 'again']) {
      await takeIn([file], 'merge', AT)
      const [line] = (await here(id)).complaint.lines
      expect([line?.name, line?.rivals?.map(({ fact, text }) => [fact, text])]).toEqual([name, [['name', beside]]])
    }
  })

  it('changes nothing the second time', async () => {
    const id = await stored()
    const file = await changed(id)
    await takeIn([file], 'merge', AT)
    const once = writeFile([await here(id)])
    await takeIn([file], 'merge', AT)
    expect(writeFile([await here(id)])).toBe(once)
  })
})

describe('a file put in place of what is here', () => {
  it('leaves nothing that it does not hold; a barred line stays barred, a clear one is asked about anew', async () => {
    const id = await stored()
    await changeLine({ do: 'line', id, lineId: 'line-a', patch: { gate: 'barred' }, at: AT })
    const file = await changed(id)
    await takeIn([file], 'replace', AT)
    const now = await here(id)
    expect(writeFile([now])).toBe(writeFile([file]))
    expect(now.complaint.lines.map(({ gate }) => gate)).toEqual(['barred', 'unknown'])
    expect((await getComplaint(id))?.rivals).toBeUndefined()
  })
})

describe('what came in', () => {
  it('can be taken back as it was, removed parts too, what was new goes', async () => {
    const id = await stored()
    await performConnectorStep({ do: 'removeConnector', id, connectorId: 'j1', at: '2026-11-26T08:00:00.000Z' })
    const all = () =>
      inOneGo(['complaints', 'lines', 'connectors'], async (desk) =>
        (await Promise.all((['complaints', 'lines', 'connectors'] as const).map(desk.all))).flat(),
      )
    const before = await all()
    const other: Whole = { complaint: newComplaint({ title: 'new here' }), connectors: [] }
    await takeIn([await changedFile(id, (raw) => (raw.title = 'other')), other], 'replace', AT)
    expect(await readConnectors(id)).toEqual([])
    expect((await readTaken())?.before.map((one) => one.id)).toEqual([id, other.complaint.id])
    expect(await takeBack()).toEqual({ back: [id, other.complaint.id], left: [] })
    expect(await all()).toEqual(before)
    expect(await readTaken()).toBeUndefined()
  })

  it('is taken back with one look at the photos and measured files, however many complaints it is', async () => {
    const all = ['A', 'B', 'C'].map((title): Whole => {
      const line = { ...newLine('bus A'), id: `line-${title}` }
      return { complaint: newComplaint({ title, lines: [line] }), connectors: [] }
    })
    await takeIn(all, 'merge', AT)
    const look = vi.spyOn(IDBObjectStore.prototype, 'getAllKeys')
    expect((await takeBack()).back).toHaveLength(3)
    const stores = look.mock.contexts.map((store) => (store as IDBObjectStore).name)
    vi.restoreAllMocks()
    expect(stores.sort()).toEqual(['photos', 'traces'])
  })

  it('stays where it was changed since', async () => {
    const id = await stored()
    await takeIn([await changed(id, false)], 'merge', AT)
    await changeLine({ do: 'line', id, lineId: 'line-a', patch: { name: 'renamed' }, at: '3000-01-01T00:00:00.000Z' })
    expect(await takeBack()).toEqual({ back: [], left: [id] })
    expect((await here(id)).complaint.lines[0]?.name).toBe('renamed')
  })

  it('is all there or not at all', async () => {
    const id = await stored()
    const before = writeFile([await here(id)])
    const files = [await changed(id), { complaint: newComplaint({ title: 'new' }), connectors: [] }]
    const put = IDBObjectStore.prototype.put
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if (this.name === 'meta') throw new DOMException('full', 'QuotaExceededError')
      return put.apply(this, args)
    })
    await expect(takeIn(files, 'replace', AT)).rejects.toMatchObject({ trouble: 'full' })
    vi.restoreAllMocks()
    expect(writeFile([await here(id)])).toBe(before)
    expect(await getComplaint(files[1]?.complaint.id ?? '')).toBeUndefined()
  })
})
