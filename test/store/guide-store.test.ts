import { IDBOpenDBRequest } from 'fake-indexeddb'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { guideShape } from '../../src/guide/shape.ts'
import type { Guide } from '../../src/guide/types.ts'
import { addComplaint, listComplaints } from '../../src/store/complaints.ts'
import { readOne, writeOne } from '../../src/store/db.ts'
import { guideDigest, loadStoredGuide as load } from '../../src/store/guide-store.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { freshStore } from './fresh-store.ts'

beforeEach(freshStore)
afterEach(() => vi.unstubAllGlobals())

const loadStoredGuide = (guide: Guide) =>
  load({ guide, digest: guideDigest(guide) }, { shape: guideShape, pause: async () => undefined })
const misshapen = { ...{ version: 3, edition: 'x', start: 'q' }, evidence: [{ kind: 'ask', id: 'q' }] }
const guide = (version: number, edition = `edition ${version}`): Guide => ({
  version,
  edition,
  start: 'q',
  suspects: [],
  evidence: [],
  outcomes: [],
})

describe('the guide on disk', () => {
  it('is seeded from the bundle and read from the store', async () => {
    const bundled = guide(3)
    expect(await loadStoredGuide(bundled)).toEqual({ guide: bundled, from: 'store' })
    expect(await readOne('guide', 'current')).toEqual({ guide: bundled, digest: guideDigest(bundled) })
    const again = await loadStoredGuide(bundled)
    expect(again.from).toBe('store')
    expect(again.guide).not.toBe(bundled)
  })

  it('is replaced by a newer bundle without touching complaints', async () => {
    const complaint = newComplaint({ title: 'Tick in the audio', guideVersion: 3, answers: { q: 'a' } })
    await addComplaint(complaint)
    await loadStoredGuide(guide(3))
    expect(await loadStoredGuide(guide(4))).toEqual({ guide: guide(4), from: 'store' })
    expect(await listComplaints()).toEqual([complaint])
  })

  it('is replaced when the bundle differs at the same version', async () => {
    await loadStoredGuide(guide(3, 'as it was'))
    expect((await loadStoredGuide(guide(3, 'as it is'))).guide.edition).toBe('as it is')
  })

  it('is left alone when it is newer than this app, which then uses its own with a notice', async () => {
    await loadStoredGuide(guide(5))
    const loaded = await loadStoredGuide(guide(4))
    expect(loaded).toMatchObject({ guide: guide(4), from: 'bundle', notice: expect.stringContaining('newer') })
    expect(await readOne('guide', 'current')).toMatchObject({ guide: guide(5) })
  })

  it.each([
    ['text'],
    [17],
    [{ guide: guide(3), digest: 'wrong' }],
    [{ guide: { version: 3 } }],
    [{ guide: misshapen, digest: guideDigest(misshapen) }],
  ])('falls back on the bundle with a notice when it is damaged, and mends it: %j', async (raw) => {
    await writeOne('guide', 'current', raw)
    expect(await loadStoredGuide(guide(3))).toMatchObject({
      from: 'bundle',
      notice: expect.stringContaining('damaged'),
    })
    expect(await loadStoredGuide(guide(3))).toEqual({ guide: guide(3), from: 'store' })
  })

  it('comes from the bundle when the storage does not answer', async () => {
    vi.stubGlobal('indexedDB', { open: () => new IDBOpenDBRequest() })
    const loaded = await loadStoredGuide(guide(3))
    expect(loaded).toMatchObject({
      guide: guide(3),
      from: 'bundle',
      notice: expect.stringContaining('cannot be reached'),
    })
  })

  it('comes from the bundle with a notice when there is no storage', async () => {
    vi.stubGlobal('indexedDB', undefined)
    expect(await loadStoredGuide(guide(3))).toMatchObject({
      guide: guide(3),
      from: 'bundle',
      notice: expect.any(String),
    })
  })
})
