import { beforeEach, describe, expect, it } from 'vitest'
import { newComplaint } from '../../src/store/complaint.ts'
import {
  changeComplaint,
  deleteComplaint,
  getComplaint,
  listComplaints,
  purgeDeleted,
  putComplaint,
  undeleteComplaint,
} from '../../src/store/complaints.ts'
import { readAll, writeOne } from '../../src/store/db.ts'
import { readScratch, readTriage, writeScratch, writeTriage } from '../../src/store/meta.ts'
import { freshStore } from './fresh-store.ts'

beforeEach(freshStore)

const at = (title: string, updatedAt: string) => ({ ...newComplaint({ title }), createdAt: updatedAt, updatedAt })

describe('the Log on disk', () => {
  it('lists the last changed complaint first', async () => {
    const old = at('old', '2026-02-03T04:05:06.000Z')
    const young = at('young', '2026-05-03T04:05:06.000Z')
    await putComplaint(young)
    await putComplaint(old)
    expect((await listComplaints()).map(({ title }) => title)).toEqual(['young', 'old'])
    await changeComplaint(old.id, { title: 'old, renamed' })
    expect((await listComplaints()).map(({ title }) => title)).toEqual(['old, renamed', 'young'])
  })

  it('changes only the part that is given', async () => {
    const complaint = newComplaint({ title: 'Squeal', note: 'n', answers: { q: 'a' } })
    await putComplaint(complaint)
    await Promise.all([
      changeComplaint(complaint.id, { note: 'longer note' }),
      changeComplaint(complaint.id, { answers: { q: 'b' } }),
    ])
    expect(await getComplaint(complaint.id)).toMatchObject({
      title: 'Squeal',
      note: 'longer note',
      answers: { q: 'b' },
    })
  })

  it('does not bring a complaint back that is gone', async () => {
    await changeComplaint('0123456789abcdef', { note: 'late note' })
    expect(await readAll('complaints')).toEqual([])
    expect(await getComplaint('0123456789abcdef')).toBeUndefined()
  })

  it('deletes with undo, and for good only a day later', async () => {
    const complaint = newComplaint({ title: 'Buzz' })
    await putComplaint(complaint)
    await deleteComplaint(complaint.id, '2026-06-01T12:00:00.000Z')
    expect(await listComplaints()).toEqual([])
    expect(await purgeDeleted(Date.parse('2026-06-02T11:59:00.000Z'))).toBe(0)
    await undeleteComplaint(complaint.id)
    expect(await listComplaints()).toEqual([complaint])
    await deleteComplaint(complaint.id, '2026-06-01T12:00:00.000Z')
    expect(await purgeDeleted(Date.parse('2026-06-02T12:01:00.000Z'))).toBe(1)
    expect(await readAll('complaints')).toEqual([])
  })

  it('lists a damaged record as far as it can be read', async () => {
    await writeOne('complaints', 'broken-1', { id: 'broken-1', title: 'Half a record', lines: 'gone' })
    expect(await listComplaints()).toMatchObject([{ id: 'broken-1', title: 'Half a record', lines: [] }])
  })
})

describe('what is under way', () => {
  it('comes back as it was left', async () => {
    const line = { id: 'l1', name: 'contact 3', gate: 'barred' as const, trials: [], facts: {} }
    const draft = { answers: { q1: 'yes' }, guideVersion: 4, line, complaintId: 'abc' }
    await writeTriage(draft)
    await writeScratch(line)
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
})
