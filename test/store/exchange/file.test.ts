import { beforeEach, describe, expect, it } from 'vitest'
import { COMPLAINT_SCHEMA } from '../../../src/store/complaint.ts'
import { demoComplaint } from '../../../src/store/demo.ts'
import { MOST_CHARACTERS, readFile, writeFile } from '../../../src/store/exchange/file.ts'
import { COMPLAINT_IN_FILE, FILE_SCHEMA } from '../../../src/store/exchange/schema.ts'
import { misfitOf } from '../../../src/store/exchange/schema-check.ts'
import { readWholes, takeIn } from '../../../src/store/exchange/take.ts'
import { restoreWhole, type Whole } from '../../../src/store/exchange/whole.ts'
import fc from '../../support/property.ts'
import v4 from '../fixtures/v4.json' with { type: 'json' }
import { freshStore } from '../fresh-store.ts'
import { fitting } from './by-schema.ts'

const [RECORD] = v4.stores.complaints.records
const STORED: Whole = restoreWhole(
  { ...RECORD, lines: v4.stores.lines.records, connectors: v4.stores.connectors.records },
  'stored',
)
const at = '2026-11-26T08:00:00.000Z'

const whole = fitting(COMPLAINT_IN_FILE, true).map((raw) => restoreWhole(raw, 'import'))

function read(text: string): readonly Whole[] {
  const result = readFile(text)
  if (!result.ok) throw new Error(result.message)
  return result.complaints
}

const messageOf = (text: string): string => {
  const result = readFile(text)
  return result.ok ? 'read' : result.message
}

beforeEach(freshStore)

describe('a file of complaints', () => {
  it('is written, read and written again bit for bit, whatever a complaint holds', () => {
    fc.assert(
      fc.property(fc.uniqueArray(whole, { maxLength: 3, selector: ({ complaint }) => complaint.id }), (wholes) => {
        const bytes = writeFile(wholes)
        expect(misfitOf(FILE_SCHEMA, JSON.parse(bytes))).toBeUndefined()
        expect(writeFile(read(bytes))).toBe(bytes)
      }),
      { numRuns: 80 },
    )
  })

  it('goes into an empty storage and comes out of it bit for bit', async () => {
    await fc.assert(
      fc.asyncProperty(whole, fc.constantFrom('merge' as const, 'replace' as const), async (one, how) => {
        freshStore()
        const bytes = writeFile([one])
        await takeIn(read(bytes), how, at)
        const { id } = one.complaint
        expect(writeFile([...(await readWholes([id])).values()])).toBe(bytes)
      }),
      { numRuns: 60 },
    )
  })

  it('holds everything but removed parts, and neither a safety gate nor an answer to its questions', () => {
    const demo = demoComplaint()
    const text = writeFile([STORED, { complaint: demo, connectors: [] }])
    expect(text).not.toContain('"gate')
    expect(text).not.toContain('complaintId')
    const [stored, example] = read(text)
    expect(stored?.connectors.map(({ name }) => name)).toEqual(['J1'])
    expect(stored?.connectors[0]).toEqual(STORED.connectors[0])
    expect(stored?.complaint.lines).toEqual([{ ...STORED.complaint.lines[0], gate: 'unknown' }])
    expect(stored?.complaint).toMatchObject({ ...RECORD, schemaVersion: COMPLAINT_SCHEMA })
    expect(example?.complaint.answers).toEqual(
      Object.fromEntries(Object.entries(demo.answers).filter(([id]) => !id.startsWith('gate-'))),
    )
    expect(example?.complaint.lines.map(({ gate }) => gate)).toEqual(['unknown'])
  })

  it('takes no answer to a safety question out of a file that was written by hand', () => {
    const raw = {
      id: 'by-hand',
      answers: { 'gate-danger': 'none', wrong: 'noise' },
      events: [
        { at, evidence: 'gate-lines', option: 'signal' },
        { at, evidence: 'wrong', option: 'noise' },
      ],
      lines: [{ id: 'l', gate: 'clear' }],
    }
    const [one] = read(JSON.stringify({ format: 'stillpin-complaints', version: 1, complaints: [raw] }))
    expect(one?.complaint.answers).toEqual({ wrong: 'noise' })
    expect(one?.complaint.events).toEqual([{ at, evidence: 'wrong', option: 'noise' }])
    expect(one?.complaint.lines[0]?.gate).toBe('unknown')
  })

  it('keeps aside what a newer version wrote, and gives it back', () => {
    const newer = JSON.parse(writeFile([STORED]))
    newer.complaints[0].schemaVersion = 99
    newer.complaints[0].colour = 'amber'
    newer.complaints[0].connectors[0].contacts[1].type = 'shield'
    const bytes = JSON.stringify(newer)
    expect(readFile(bytes)).toMatchObject({ ok: true, aside: 5 })
    expect(writeFile(read(bytes))).toContain('"shield"')
    expect(writeFile(read(bytes))).toContain('"amber"')
  })
})

const file = (change: (complaint: ReturnType<typeof JSON.parse>) => void): string => {
  const value = JSON.parse(writeFile([STORED]))
  change(value.complaints[0])
  return JSON.stringify(value, null, 1)
}

describe('a bad file', () => {
  it.each([
    ['', 'The file is empty. A file of complaints begins with “{”.'],
    ['id,name\n1,bus', 'Line 1, column 1: a value is expected here'],
    [
      '[]',
      'Line 1, column 1: This is no file of complaints: a record with "format": "stillpin-complaints" is expected, and a list stands there.',
    ],
    [
      '{"format": "other"}',
      'Line 1, column 1: This is no file of complaints: a record with "format": "stillpin-complaints" is expected, and it says "other".',
    ],
    [
      '{"format": "stillpin-complaints",\n"version": 2}',
      'Line 2, column 12, version: this app reads files of version 1, and 2 stands there. It may come from a newer app: reload this one while online, then try again.',
    ],
    ['{"format": "stillpin-complaints", "version": 1}', 'Line 1, column 1: “complaints” is missing here.'],
    [
      '{"format": "stillpin-complaints", "version": 1, "complaints": 3}',
      'Line 1, column 63, complaints: a list [ … ] is expected here, and 3 stands there.',
    ],
  ])('%j gets a sentence', (text, words) => {
    expect(messageOf(text)).toContain(words)
  })

  it.each<[string, (complaint: ReturnType<typeof JSON.parse>) => void, RegExp]>([
    [
      'shape',
      (one) => (one.connectors[0].shape = 'square'),
      /^Line \d+, column \d+, complaints\[0\]\.connectors\[0\]\.shape: one of rectangular, ring is expected here, and "square" stands there\.$/,
    ],
    [
      'trial',
      (one) => (one.lines[0].trials[0].steps = 4.7),
      /complaints\[0\]\.lines\[0\]\.trials\[0\]\.steps: a text in double quotes is expected here, and 4\.7 stands there\.$/,
    ],
    [
      'time',
      (one) => (one.createdAt = 'yesterday'),
      /createdAt: a time as 2026-11-26T08:30:00\.000Z is expected here, and "yesterday" stands there\.$/,
    ],
    [
      'text',
      (one) => (one.lines[0].facts.noiseHz.text = 9),
      /lines\[0\]\.facts\.noiseHz\.text: a text in double quotes is expected here, and 9 stands there\.$/,
    ],
    [
      'origin',
      (one) => (one.lines[0].facts.noiseHz.origin = { by: 'kind' }),
      /facts\.noiseHz\.origin: “source” is missing here\.$/,
    ],
    [
      'no origin',
      (one) => (one.lines[0].facts.noiseHz.origin = { by: 'rumour' }),
      /origin: a record is expected here whose “by” is one of user, kind, answer, trial, check, assumed; a record stands there\.$/,
    ],
    ['name', (one) => delete one.lines[0].id, /lines\[0\]: “id” is missing here\.$/],
    [
      'contact',
      (one) => one.connectors[0].contacts.push({ id: '1', type: 'spare' }),
      /contacts\[5\]\.id: a contact of this name stands there already; each needs its own\.$/,
    ],
    [
      'contacts',
      (one) => (one.connectors[0].contacts = Array.from({ length: 257 }, (_, i) => ({ id: `${i}`, type: 'spare' }))),
      /contacts: 256 entries at most are expected here, and 257 stand there\.$/,
    ],
    [
      'line',
      (one) => one.lines.push(one.lines[0]),
      /lines\[1\]\.id: a line of this name stands there already; each needs its own\.$/,
    ],
  ])('with a wrong %s gets a sentence that names line and field', (_name, change, words) => {
    expect(messageOf(file(change))).toMatch(words)
  })

  it('names the line the field stands on', () => {
    const text = file((one) => (one.note = 7))
    const line = text.split('\n').findIndex((row) => row.includes('"note": 7')) + 1
    expect(messageOf(text)).toBe(
      `Line ${line}, column 12, complaints[0].note: a text in double quotes is expected here, and 7 stands there.`,
    )
  })

  it('with one complaint twice gets a sentence', () => {
    expect(messageOf(writeFile([STORED, STORED]))).toMatch(
      /complaints\[1\]\.id: this complaint stands twice in the file\.$/,
    )
  })

  it('that is hostile gets one too', () => {
    const head = '{"format":"stillpin-complaints","version":1,"complaints":'
    expect(messageOf('x'.repeat(MOST_CHARACTERS + 1))).toContain('larger than 64 MB')
    expect(messageOf(`${head}${'['.repeat(1_000_000)}`)).toContain('nests deeper than 64 levels')
    expect(messageOf(`${head}[${'{},'.repeat(1_000_000)}{}]}`)).toContain('more than 10000 entries')
    expect(messageOf(`${head}[{"id":"a","answers":{"__proto__":"x"}}]}`)).toContain('“__proto__”')
    const strange = Array.from({ length: 9000 }, (_, i) => `"k${i}":0`).join()
    const rows = Array.from({ length: 9 }, (_, i) => `{"id":"c${i}",${strange}}`).join()
    expect(messageOf(`${head}[${rows}]}`)).toContain('pieces are not understood here')
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })

  it('of any kind gets a sentence or is read, and never throws', () => {
    const bytes = writeFile([STORED])
    fc.assert(
      fc.property(fc.nat(bytes.length), fc.nat(40), fc.string({ maxLength: 4 }), (from, cut, put) => {
        const damaged = bytes.slice(0, from) + put + bytes.slice(from + cut)
        const result = readFile(damaged)
        if (!result.ok) expect(result.message).toMatch(/^Line \d+, column \d+.*\.$/s)
        else expect(writeFile(read(writeFile(result.complaints)))).toBe(writeFile(result.complaints))
      }),
      { numRuns: 500 },
    )
  })
})
