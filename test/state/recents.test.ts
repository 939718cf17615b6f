import '../store/fresh-store.ts'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { readOne, writeOne } from '../../src/store/db.ts'
import { MOST_RECENT, readRecents, writeRecent } from '../../src/store/recents.ts'
import { freshStore } from '../store/fresh-store.ts'

const recent = (lineId: string, address: string, minute = 0) => ({
  lineId,
  check: 'loading',
  address,
  at: `2026-11-25T13:${String(minute).padStart(2, '0')}:00.000Z`,
})

describe('the checks done last', () => {
  beforeEach(() => {
    freshStore()
    vi.resetModules()
  })

  it('are ten, the newest first, each check of a Line once', async () => {
    for (let count = 0; count < MOST_RECENT + 3; count += 1)
      await writeRecent(recent(`line-${count}`, `#/check/loading?capacitanceF=${count}n`, count))
    await writeRecent(recent('line-7', '#/check/loading?capacitanceF=77n', 30))
    const all = await readRecents()
    expect(all).toHaveLength(MOST_RECENT)
    expect(all[0]).toMatchObject({ lineId: 'line-7', address: '#/check/loading?capacitanceF=77n' })
    expect(all.filter(({ lineId }) => lineId === 'line-7')).toHaveLength(1)
    expect(all.at(-1)?.lineId).toBe('line-3')
  })

  it('pass the gate: what is no record of one is set aside, and kept', async () => {
    const good = recent('line-1', '#/check/loading?capacitanceF=1n')
    await writeOne('meta', 'recents', { checks: [7, good, { ...good, at: 'yesterday' }], later: true })
    expect(await readRecents()).toEqual([good])
    await writeRecent(recent('line-2', '#/check/loading', 5))
    const stored = JSON.stringify(await readOne('meta', 'recents'))
    for (const part of ['"later"', 'yesterday', 'line-2']) expect(stored).toContain(part)
    for (const damaged of ['text', [1, 2], null]) {
      await writeOne('meta', 'recents', damaged)
      expect(await readRecents()).toEqual([])
    }
  })

  it('are told by what was entered, the line first, without usual values and never by a result', async () => {
    const { saidOf } = await import('../../src/state/recent-words.ts')
    const address = '#/check/loading?capacitanceF=10n&toleranceFrac=20 %25&lineKind=can&bitRateHz=500k'
    expect(saidOf(recent('x', address))?.words).toMatch(/^CAN .*, 10n, /)
    expect(saidOf(recent('x', '#/check/loading'))?.words).toBe('')
    expect(saidOf({ ...recent('x', address), check: 'torque' })).toBeUndefined()
  })

  it('stand on the list at once, and are read once', async () => {
    await writeRecent(recent('line-1', '#/check/loading?capacitanceF=1n'))
    const { loadRecents, noteRecent, recents } = await import('../../src/state/recents.ts')
    const { settled } = await import('../../src/state/save-queue.ts')
    expect(recents.value).toBeUndefined()
    await loadRecents()
    noteRecent(recent('line-2', '#/check/loading?capacitanceF=2n', 1))
    expect(recents.value?.map(({ lineId }) => lineId)).toEqual(['line-2', 'line-1'])
    await settled()
    expect((await readRecents()).map(({ lineId }) => lineId)).toEqual(['line-2', 'line-1'])
  })
})
