import { beforeEach, describe, expect, it } from 'vitest'
import type { ComplaintPatch } from '../../src/store/complaint.ts'
import {
  addComplaint,
  addLine,
  changeComplaint,
  changeLine,
  getComplaint,
  getLine,
  listComplaints,
} from '../../src/store/complaints.ts'
import { inOneGo, readAll, writeOne } from '../../src/store/db.ts'
import { keptLine, newLine } from '../../src/store/line.ts'
import {
  emptyTriage,
  readScratch,
  readScratchesAside,
  readTriage,
  readTriagesAside,
  writeScratch,
  writeTriage,
} from '../../src/store/meta.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { tidyLog } from '../../src/store/tidy.ts'
import { freshStore } from './fresh-store.ts'
import { tidyAt } from './tidy-at.ts'

beforeEach(freshStore)

const at = (title: string, updatedAt: string) => ({ ...newComplaint({ title }), createdAt: updatedAt, updatedAt })
const NOW = '2026-06-01T12:00:00.000Z'
const patched = (id: string, patch: ComplaintPatch) =>
  changeComplaint({ do: 'change', id, patch, at: new Date().toISOString() })
const typed = (text: string) => ({ text, origin: { by: 'user' } as const })

describe('the Log on disk', () => {
  it('lists the last changed complaint first', async () => {
    const old = at('old', '2026-02-03T04:05:06.000Z')
    const young = at('young', '2026-05-03T04:05:06.000Z')
    await addComplaint(young)
    await addComplaint(old)
    expect((await listComplaints()).map(({ title }) => title)).toEqual(['young', 'old'])
    await patched(old.id, { title: 'old, renamed' })
    expect((await listComplaints()).map(({ title }) => title)).toEqual(['old, renamed', 'young'])
  })

  it('changes only the part that is given', async () => {
    const complaint = newComplaint({ title: 'Squeal', note: 'n', answers: { q: 'a' } })
    await addComplaint(complaint)
    await Promise.all([patched(complaint.id, { note: 'longer note' }), patched(complaint.id, { answers: { q: 'b' } })])
    expect(await getComplaint(complaint.id)).toMatchObject({
      title: 'Squeal',
      note: 'longer note',
      answers: { q: 'b' },
    })
  })

  it('says when what is to be changed is not there', async () => {
    expect(await patched('0123456789abcdef', { note: 'late note' })).toBe(false)
    const edit = { do: 'fact', id: 'a', lineId: 'b', fact: 'markedF', base: '', at: NOW } as const
    expect(await changeLine(edit)).toBe(false)
    expect([await readAll('complaints'), await readAll('lines')]).toEqual([[], []])
  })

  it('deletes with undo, and for good only a day later, lines and all', async () => {
    const complaint = newComplaint({ title: 'Buzz', lines: [newLine('contact 2')] })
    const other = newComplaint({ title: 'Hum', lines: [newLine('contact 3')] })
    await addComplaint(complaint)
    await addComplaint(other)
    await changeComplaint({ do: 'delete', id: complaint.id, at: NOW })
    expect(await listComplaints()).toEqual([other])
    expect(await tidyAt(Date.parse('2026-06-02T11:59:00.000Z'))).toBe(0)
    await changeComplaint({ do: 'undelete', id: complaint.id, at: NOW })
    expect(await listComplaints()).toHaveLength(2)
    await changeComplaint({ do: 'delete', id: complaint.id, at: NOW })
    expect(await tidyAt(Date.parse('2026-06-02T12:01:00.000Z'))).toBe(1)
    expect(await listComplaints()).toEqual([other])
    expect(await readAll('lines')).toEqual(other.lines)
  })

  it('takes a line out with undo, and for good only a day later', async () => {
    const complaint = newComplaint({ lines: [newLine('contact 2'), newLine('contact 3')] })
    const [line, other] = complaint.lines
    if (line === undefined || other === undefined) throw new Error('The complaint has no lines.')
    await addComplaint(complaint)
    const place = { id: complaint.id, lineId: line.id, at: NOW }
    await changeLine({ do: 'removeLine', ...place })
    expect((await getComplaint(complaint.id))?.lines).toEqual([other])
    await changeLine({ do: 'undoRemoveLine', ...place })
    expect((await getComplaint(complaint.id))?.lines.map(({ name }) => name)).toEqual(['contact 2', 'contact 3'])
    await changeLine({ do: 'removeLine', ...place })
    expect(await tidyAt(Date.parse('2026-06-02T12:01:00.000Z'))).toBe(1)
    expect(await readAll('lines')).toEqual([other])
  })

  it('writes one line and touches no other record', async () => {
    const complaint = newComplaint({ lines: [newLine('contact 2'), newLine('contact 3')] })
    await addComplaint(complaint)
    await addLine(keptLine({ ...newLine('contact 4'), id: 'fourth' }, complaint.id, 2))
    const edit = { do: 'fact', id: complaint.id, lineId: 'fourth', fact: 'markedF', base: '' } as const
    await changeLine({ ...edit, next: typed('4n7'), at: '2999-01-01T00:00:00.000Z' })
    expect(await readAll('complaints')).toMatchObject([{ updatedAt: complaint.updatedAt }])
    expect((await getLine(complaint.id, 'fourth'))?.facts).toEqual({ markedF: typed('4n7') })
    expect(await getComplaint(complaint.id)).toMatchObject({
      updatedAt: '2999-01-01T00:00:00.000Z',
      lines: [{ name: 'contact 2' }, { name: 'contact 3' }, { name: 'contact 4' }],
    })
  })

  it('lists a damaged record as far as it can be read', async () => {
    await inOneGo(['complaints'], (desk) =>
      desk.put('complaints', { id: 'broken-1', title: 'Half a record', answers: 'gone' }),
    )
    expect(await listComplaints()).toMatchObject([{ id: 'broken-1', title: 'Half a record', answers: {}, lines: [] }])
  })

  it('gives records under ids that cannot be used other ones, on disk too, once', async () => {
    await inOneGo(['complaints', 'lines'], async (desk) => {
      await desk.put('complaints', { id: 'not an id!', title: 'Spaces' })
      await desk.put('lines', { complaintId: 'not an id!', id: 'l1', name: 'contact 9' })
      await desk.put('lines', { complaintId: 'not an id!', id: 'l 2', name: 'contact 8' })
    })
    await tidyLog()
    const [first, ...none] = await listComplaints()
    expect(none).toEqual([])
    expect(first).toMatchObject({ title: 'Spaces' })
    expect(first?.lines.map(({ name }) => name).sort()).toEqual(['contact 8', 'contact 9'])
    await tidyLog()
    expect(await listComplaints()).toEqual([first])
    const id = first?.id ?? ''
    expect(await patched(id, { note: 'written where it stands' })).toBe(true)
    expect(await readAll('complaints')).toMatchObject([{ id, note: 'written where it stands' }])
  })

  it('shows a line whose complaint is gone', async () => {
    await addLine(keptLine({ ...newLine('contact 5'), facts: { markedF: typed('1n') } }, 'lost', 0))
    await tidyLog()
    expect(await listComplaints()).toMatchObject([{ id: 'lost', title: 'Recovered', lines: [{ name: 'contact 5' }] }])
  })
})

describe('what is under way', () => {
  const line = { ...newLine('contact 3'), gate: 'barred' as const, facts: { markedF: typed('3n3') } }
  const scratch = (one: typeof line, time = NOW) => writeScratch({ line: { ...one, updatedAt: time }, at: time })

  it('comes back as it was left', async () => {
    const draft = { ...emptyTriage(), answers: { q1: 'yes' }, guideVersion: 4, line, complaintId: 'abc' }
    await writeTriage(draft)
    await writeScratch({ line, at: NOW })
    expect(await readTriage()).toEqual(draft)
    expect(await readScratch()).toEqual(line)
  })

  it('starts empty when nothing or nonsense is stored', async () => {
    expect(await readTriage()).toMatchObject({ answers: {}, line: { gate: 'unknown', facts: {} } })
    await writeOne('meta', 'triage', 'nonsense')
    await writeOne('meta', 'scratch', 12)
    expect(await readTriage()).toMatchObject({ answers: {} })
    expect(await readScratch()).toMatchObject({ gate: 'unknown', facts: {} })
  })

  it('loses no fact of a newer version', async () => {
    const fluxWb = { text: '3 mWb', origin: { by: 'user' } }
    const loose = { ...newLine(), facts: { markedF: typed('1n'), fluxWb }, colour: 'red' }
    await writeOne('meta', 'scratch', loose)
    await writeOne('meta', 'triage', { answers: { q: 'a' }, line: loose, mood: 'calm' })
    await writeScratch({ line: await readScratch(), edit: { fact: 'markedF', base: '1n' }, at: NOW })
    await writeTriage(await readTriage())
    const kept = [
      { at: 'colour', value: 'red' },
      { at: 'facts.fluxWb', value: fluxWb },
    ]
    expect(await readScratch()).toMatchObject({ facts: {}, kept })
    expect(await readTriage()).toMatchObject({ line: { kept }, kept: [{ at: 'mood', value: 'calm' }] })
  })

  it('writes a fact onto the line that stands there, whatever else another window wrote', async () => {
    await writeScratch({ line, at: NOW })
    const edit = { fact: 'noiseHz', base: '', next: typed('9 MHz') } as const
    await writeScratch({ line: { ...line, facts: { noiseHz: typed('9 MHz') } }, edit, at: NOW })
    expect((await readScratch()).facts).toEqual({ markedF: typed('3n3'), noiseHz: typed('9 MHz') })
    expect(await readScratchesAside()).toEqual([])
  })

  it('sets a scratch line aside that makes room, until it comes back', async () => {
    const other = { ...newLine(), gate: 'barred' as const, facts: { markedF: typed('8n2') } }
    await scratch(line)
    await scratch(other)
    expect([await readScratch(), await readScratchesAside()]).toMatchObject([{ id: other.id }, [{ id: line.id }]])
    await scratch(line)
    expect([await readScratch(), await readScratchesAside()]).toMatchObject([{ id: line.id }, [{ id: other.id }]])
    const late = { ...newLine(), facts: { markedF: typed('2n2') } }
    await writeScratch({ line: late, at: '2026-01-01T00:00:00.000Z' }, true)
    expect([await readScratch(), await readScratchesAside()]).toMatchObject([{ id: line.id }, [{ id: late.id }, {}]])
  })

  it('sets a triage aside that another window wrote meanwhile and that is kept nowhere else', async () => {
    const mine = { ...emptyTriage(), updatedAt: '2026-06-01T10:00:00.000Z', answers: { q: 'mine' } }
    const next = { ...mine, updatedAt: '2026-06-01T10:00:01.000Z', answers: { q: 'mine', r: 'on' } }
    await writeTriage(mine)
    await writeTriage(next, mine.updatedAt)
    expect(await readTriagesAside()).toEqual([])
    const older = { ...mine, updatedAt: '2026-06-01T10:00:02.000Z', answers: { q: 'other' } }
    await writeTriage(older, mine.updatedAt)
    expect([await readTriage(), await readTriagesAside()]).toMatchObject([
      { answers: { q: 'other' } },
      [{ answers: { q: 'mine', r: 'on' } }],
    ])
    const fresh = { ...emptyTriage(), updatedAt: '2026-06-01T10:00:03.000Z', answers: { q: 'afresh' } }
    await writeTriage(fresh, older.updatedAt)
    await writeTriage({ ...older, updatedAt: '2026-06-01T10:00:04.000Z' }, fresh.updatedAt)
    expect((await readTriage()).answers).toEqual({ q: 'other' })
    expect((await readTriagesAside()).map(({ answers }) => answers)).toEqual([{ q: 'afresh' }, { q: 'mine', r: 'on' }])
  })

  it('left behind by a window that ended makes room for a newer triage, and not for an older one', async () => {
    const there = { ...emptyTriage(), updatedAt: '2026-06-01T10:00:05.000Z', answers: { q: 'there' } }
    await writeTriage(there)
    const before = { ...emptyTriage(), updatedAt: '2026-06-01T10:00:04.000Z', answers: { q: 'before' } }
    await writeTriage(before, undefined, true)
    expect((await readTriage()).answers).toEqual({ q: 'there' })
    expect((await readTriagesAside()).map(({ answers }) => answers)).toEqual([{ q: 'before' }])
    const after = { ...emptyTriage(), updatedAt: '2026-06-01T10:00:06.000Z', answers: { q: 'after' } }
    await writeTriage(after, undefined, true)
    expect((await readTriage()).answers).toEqual({ q: 'after' })
    expect((await readTriagesAside()).map(({ answers }) => answers)).toEqual([{ q: 'there' }, { q: 'before' }])
  })
})
