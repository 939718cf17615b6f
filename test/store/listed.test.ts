import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assemble, recordOf } from '../../src/store/complaint.ts'
import { newestFirst } from '../../src/store/complaints.ts'
import { newLine, restoreKeptLine } from '../../src/store/line.ts'
import { identityOf, listed } from '../../src/store/listed.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { restoreRecord } from '../../src/store/restore.ts'

const stored = ['v1', 'v2', 'v3', 'v4', 'v5'].flatMap((name) => {
  const { stores } = JSON.parse(readFileSync(new URL(`fixtures/${name}.json`, import.meta.url), 'utf8'))
  return (stores.complaints.records as Record<string, unknown>[]).map((raw) => ({
    raw,
    lines: ((stores.lines?.records ?? []) as Record<string, unknown>[]).filter(
      ({ complaintId }) => complaintId === raw['id'],
    ),
  }))
})

const whole = (raw: unknown, lines: readonly unknown[]) =>
  assemble(
    restoreRecord(raw),
    lines.map((line) => restoreKeptLine(line)),
  )

describe('a complaint of the list', () => {
  it('is the one the gate makes, field by field, of every version there was', () => {
    expect(stored.length).toBeGreaterThan(4)
    for (const { raw, lines } of stored) {
      const read = whole(raw, lines)
      const shown = listed(raw, lines)
      if (read.deletedAt !== undefined) expect(shown).toBeUndefined()
      else expect({ ...shown }).toEqual(read)
    }
  })

  it('is it for whatever stands in a field', () => {
    const { lines, ...complaint } = newComplaint({
      title: 'Buzz',
      note: 'x',
      answers: { wrong: 'noise' },
      lines: [newLine()],
    })
    const fresh: Record<string, unknown> = { ...complaint, aircraft: 'one of ours', events: [] }
    const odd = fc.oneof(fc.constant(undefined), fc.jsonValue({ maxDepth: 2 }), fc.constant('2026-01-01T00:00:00.000Z'))
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(fresh).filter((key) => key !== 'id'), 'later'), odd, (key, value) => {
        const raw = { ...fresh, [key]: value }
        const read = whole(raw, lines)
        const shown = listed(raw, lines)
        const atNow = (one: object | undefined) => ({ ...one, createdAt: 0, updatedAt: 0 })
        if (read.deletedAt !== undefined) expect(shown).toBeUndefined()
        // A time that cannot be read is the present, which goes on.
        else expect(atNow(shown)).toEqual(atNow(read))
      }),
      { numRuns: 2000, seed: 20_261_126 },
    )
  })

  it('takes the time of its newest line, taken out or not', () => {
    const complaint = { ...newComplaint({ lines: [newLine(), newLine()] }), updatedAt: '2026-01-01T00:00:00.000Z' }
    const [first, second] = complaint.lines
    const lines = [
      { ...first, updatedAt: '2026-02-01T00:00:00.000Z' },
      { ...second, updatedAt: '2026-03-01T00:00:00.000Z', removedAt: '2026-03-01T00:00:00.000Z' },
    ]
    const shown = listed(recordOf(complaint), lines)
    expect(shown?.updatedAt).toBe('2026-03-01T00:00:00.000Z')
    expect(shown?.lines).toHaveLength(1)
  })

  it('is through the gate only where something of it is asked for', () => {
    let isRead = false
    const raw = { ...recordOf(newComplaint({ title: 'Buzz', note: 'all day' })) }
    Object.defineProperty(raw, 'checks', {
      enumerable: true,
      get: () => {
        isRead = true
        return []
      },
    })
    const shown = listed(raw, [])
    if (shown === undefined) throw new Error('It is not listed.')
    expect([shown.title, shown.note, shown.isDemo, shown.answers]).toEqual(['Buzz', 'all day', false, {}])
    expect([shown, shown].sort(newestFirst)).toHaveLength(2)
    expect(isRead).toBe(false)
    expect(shown.checks).toEqual([])
    expect(isRead).toBe(true)
  })
})

describe('whose a record is', () => {
  it('is read without the gate where nothing is odd, and not at all otherwise', () => {
    const good = { id: 'a', complaintId: 'b', kept: [], removedAt: '2026-01-01T00:00:00.000Z' }
    expect(identityOf(good)).toEqual({ id: 'a', complaintId: 'b', goneAt: good.removedAt })
    for (const odd of [
      { id: 'a b' },
      { id: 3 },
      { complaintId: '' },
      { removedAt: 'once' },
      { kept: [{}] },
      { kept: 1 },
    ])
      expect(identityOf({ ...good, ...odd }), JSON.stringify(odd)).toBeUndefined()
  })
})
