/** Measured files on disk: of their line, apart from every text, and gone with what they belong to. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { addComplaint, changeComplaint } from '../../src/store/complaints.ts'
import { inOneGo, readAll } from '../../src/store/db.ts'
import { keptLine, newLine } from '../../src/store/line.ts'
import { writeScratch } from '../../src/store/meta.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import {
  type KeptTrace,
  listTraces,
  newTrace,
  putTrace,
  removeTrace,
  restoreTrace,
  type TraceRole,
} from '../../src/store/traces.ts'
import { freshStore } from './fresh-store.ts'
import { tidyAt } from './tidy-at.ts'

beforeEach(freshStore)
afterEach(() => vi.restoreAllMocks())

const DAY_MS = 24 * 3_600_000
const traceOf = (owner: string, role: TraceRole, name = 'a'): KeptTrace =>
  newTrace(owner, { kind: 'spectrum', role, name, unit: 'dBµV', rows: 3, bytes: new Uint8Array([1, 2, 3]).buffer })

describe('traces on disk', () => {
  it('are those of the line asked for, one of each role', async () => {
    await putTrace(traceOf('line', 'before', 'first'))
    await putTrace(traceOf('line', 'after'))
    await putTrace(traceOf('line', 'before', 'second'))
    await putTrace(traceOf('line2', 'before'))
    const found = await listTraces('line')
    expect(found.map(({ role, name }) => [role, name]).sort()).toEqual([
      ['after', 'a'],
      ['before', 'second'],
    ])
    expect([...new Uint8Array(found[0]?.bytes ?? new ArrayBuffer(0))]).toEqual([1, 2, 3])
  })

  it('are taken out one by one', async () => {
    const trace = traceOf('line', 'before')
    await putTrace(trace)
    await removeTrace(trace)
    expect(await listTraces('line')).toEqual([])
  })

  it('that hold no content are nobody’s', async () => {
    expect(restoreTrace({ owner: 'a', id: 'b' })).toBeUndefined()
    expect(restoreTrace('text')).toBeUndefined()
    await inOneGo(['traces'], (desk) => desk.put('traces', { owner: 'line', id: 'x', bytes: 'none' }))
    expect(await listTraces('line')).toEqual([])
  })

  it('go a day after their line went, and stay with a line under way', async () => {
    const kept = newComplaint({ title: 'Hum' })
    const line = keptLine(newLine('kept'), kept.id, 0)
    await addComplaint({ ...kept, lines: [line] })
    const loose = newLine('loose')
    await writeScratch({ line: loose, at: new Date().toISOString() })
    for (const owner of [line.id, loose.id, 'nobody']) await putTrace(traceOf(owner, 'before'))
    await tidyAt(Date.now() + 2 * DAY_MS)
    const owners = (await readAll('traces')).map((raw) => restoreTrace(raw)?.owner)
    expect(owners.sort()).toEqual([line.id, loose.id].sort())
    await changeComplaint({ do: 'delete', id: kept.id, at: new Date().toISOString() })
    await tidyAt(Date.now() + 3 * DAY_MS)
    await tidyAt(Date.now() + 4 * DAY_MS)
    expect((await readAll('traces')).map((raw) => restoreTrace(raw)?.owner)).toEqual([loose.id])
  })
})
