// @vitest-environment happy-dom
/** When the app asks for a file of the whole Log. */
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { newLine } from '../../src/store/line.ts'
import { freshStore } from '../store/fresh-store.ts'
import { importLog } from './log-modules.ts'

const DAY_MS = 86_400_000
const NOON = Date.parse('2026-06-01T12:00:00.000Z')

beforeEach(() => {
  localStorage.clear()
  freshStore()
})

async function start() {
  vi.resetModules()
  const [log, queue, backup] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/backup.ts'),
  ])
  await log.loadComplaints()
  const dueAt = (ms: number) => {
    backup.lookAtBackup(ms)
    return backup.backupDue.value
  }
  return { ...log, ...queue, ...backup, dueAt }
}

/** An app in which so many changes were made; the first look was at noon. */
async function changed(count: number) {
  const app = await start()
  expect(app.dueAt(NOON)).toBeUndefined()
  const { id } = app.createFromCheck({ title: 'Buzz', check: 'need', line: newLine() })
  for (let at = 1; at < count; at++) {
    app.addCheck(id, { check: 'need', address: `#/check/need?x=${at}` })
    await app.settled()
  }
  await app.settled()
  return { app, id }
}

describe('the reminder to save the Log as a file', () => {
  it('comes after so many changes, also after a reload, and goes once it is saved', async () => {
    const { app } = await changed(49)
    expect(app.dueAt(NOON)).toBeUndefined()
    app.createFromCheck({ title: 'Hum', check: 'need', line: newLine() })
    await app.settled()
    const after = await start()
    expect(after.dueAt(NOON)).toBe('50 changes, and the Log was never saved as a file.')
    after.noteSaved(NOON)
    expect(after.backupDue.value).toBeUndefined()
    expect(after.dueAt(NOON + 400 * DAY_MS)).toBeUndefined()
  })

  it('counts a text as one change, however many keys it took', async () => {
    const { app, id } = await changed(1)
    for (let at = 1; at <= 80; at++) {
      app.writeNote(id, 'x'.repeat(at))
      await app.settled()
    }
    expect(app.dueAt(NOON)).toBeUndefined()
    expect(app.dueAt(NOON + 14 * DAY_MS)).toBe('2 changes, and the Log was never saved as a file.')
  })

  it('comes after so many days with a change in them, says since when, and can be put off', async () => {
    const { app, id } = await changed(3)
    app.noteSaved(NOON)
    expect(app.dueAt(NOON + 30 * DAY_MS)).toBeUndefined()
    app.writeNote(id, 'wet')
    await app.settled()
    expect(app.dueAt(NOON + 13 * DAY_MS)).toBeUndefined()
    expect(app.dueAt(NOON + 14 * DAY_MS)).toBe('One change since the Log was last saved as a file, 14 days ago.')
    app.putOff(NOON + 14 * DAY_MS)
    expect(app.backupDue.value).toBeUndefined()
    app.rename(id, 'Hum')
    await app.settled()
    expect(app.dueAt(NOON + 27 * DAY_MS)).toBeUndefined()
    expect((await start()).dueAt(NOON + 28 * DAY_MS)).toBe(
      '2 changes since the Log was last saved as a file, 28 days ago.',
    )
  })

  it('takes no clock that was ahead for the time of the last file, and no damaged mark', async () => {
    const { app, id } = await changed(1)
    app.noteSaved(NOON + 900 * DAY_MS)
    app.writeNote(id, 'wet')
    await app.settled()
    expect(app.dueAt(NOON)).toBeUndefined()
    expect(app.dueAt(NOON + 14 * DAY_MS)).toBe('One change since the Log was last saved as a file, 14 days ago.')
    localStorage.setItem('stillpin-backup', '{"from":"noon"')
    expect(app.dueAt(NOON)).toBeUndefined()
  })
})
