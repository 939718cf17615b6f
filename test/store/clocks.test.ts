import { beforeEach, describe, expect, it } from 'vitest'
import { addComplaint, changeComplaint, getComplaint, listComplaints } from '../../src/store/complaints.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { tidyLog } from '../../src/store/tidy.ts'
import { freshStore } from './fresh-store.ts'

beforeEach(freshStore)

const NOON = Date.parse('2026-06-01T12:00:00.000Z')
const HOUR_MS = 3_600_000
const DAY_MS = 24 * HOUR_MS
const iso = (ms: number): string => new Date(ms).toISOString()

async function deletedAt(ms: number): Promise<string> {
  const complaint = newComplaint({ title: 'Buzz' })
  await addComplaint(complaint)
  await changeComplaint({ do: 'delete', id: complaint.id, at: iso(ms) })
  return complaint.id
}

describe('a clock that is wrong', () => {
  it('ahead for one start or several within the hour: makes no deletion final, nor once it is right again', async () => {
    for (const day of [2, 1]) await tidyLog(NOON - day * DAY_MS)
    const id = await deletedAt(NOON)
    const year = NOON + 365 * DAY_MS
    for (const at of [year, year + 1000, year + HOUR_MS / 2]) expect(await tidyLog(at)).toBe(0)
    for (const at of [NOON + HOUR_MS, NOON + 3 * HOUR_MS, NOON + 5 * HOUR_MS]) expect(await tidyLog(at)).toBe(0)
    await changeComplaint({ do: 'undelete', id, at: iso(NOON + 6 * HOUR_MS) })
    expect((await listComplaints()).map(({ title }) => title)).toEqual(['Buzz'])
  })

  it('at the very first start of a device: makes no deletion final', async () => {
    const id = await deletedAt(NOON)
    expect(await tidyLog(NOON + 365 * DAY_MS)).toBe(0)
    expect(await getComplaint(id)).toBeDefined()
  })

  it('set back: keeps what was deleted while it was right, and what was deleted while it was wrong', async () => {
    for (const day of [2, 1]) await tidyLog(NOON - day * DAY_MS)
    const [before, after] = [await deletedAt(NOON), await deletedAt(NOON - 300 * DAY_MS)]
    expect(await tidyLog(NOON - 300 * DAY_MS + HOUR_MS)).toBe(0)
    expect(await getComplaint(before)).toBeDefined()
    expect(await getComplaint(after)).toBeDefined()
  })

  it('is believed once later starts agree: then what was deleted goes', async () => {
    const id = await deletedAt(NOON)
    const starts = [2, 3, 4].map((day) => NOON + day * DAY_MS)
    const removed: number[] = []
    for (const at of starts) removed.push(await tidyLog(at))
    expect(removed).toEqual([0, 0, 1])
    expect(await getComplaint(id)).toBeUndefined()
  })

  it.each([
    ['set back', -400],
    ['set ahead', 400],
  ])(
    '%s: what is typed wins over what it was typed on, and what was typed elsewhere stays beside it',
    async (_is, days) => {
      const at = iso(NOON + days * DAY_MS)
      const complaint = {
        ...newComplaint({ title: 'Buzz', note: 'first' }),
        createdAt: iso(NOON),
        updatedAt: iso(NOON),
      }
      const { id } = complaint
      await addComplaint(complaint)
      await changeComplaint({ do: 'change', id, at, patch: { note: 'second' }, base: { note: 'first' } })
      expect(await getComplaint(id)).toMatchObject({ note: 'second' })
      await changeComplaint({ do: 'change', id, at, patch: { note: 'third' }, base: { note: 'first' } })
      const kept = await getComplaint(id)
      expect([kept?.note, ...(kept?.rivals ?? []).map(({ text }) => text)].toSorted()).toEqual(['second', 'third'])
      // left behind by a window that ended: its own text on top of what it was typed on, whatever the clock said
      await changeComplaint({ do: 'change', id, at, patch: { title: 'Hum' }, base: { title: 'Buzz' } }, true)
      expect(await getComplaint(id)).toMatchObject({ title: 'Hum' })
    },
  )
})
