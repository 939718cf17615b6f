/** Tables filled in: every key of every window stays. */
import { beforeEach, describe, expect, it } from 'vitest'
import { addComplaint, changeComplaint, getComplaint } from '../../src/store/complaints.ts'
import { writeCell } from '../../src/store/edits.ts'
import { emptyTriage, isUnkept } from '../../src/store/meta.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { restoreSteps } from '../../src/store/restore-steps.ts'
import { mergeSteps, performStep, type Step } from '../../src/store/steps.ts'
import { freshStore } from './fresh-store.ts'

beforeEach(freshStore)

const AT = '2026-11-20T08:00:00.000Z'
const cell = (row: number, column: string, text: string, base = '') => ({ table: 'events', row, column, text, base })
const step = (id: string, one: ReturnType<typeof cell>): Step => ({ do: 'cell', id, at: AT, ...one })

describe('a cell of a table', () => {
  it('is written onto what stands there, lines before it made as they are missing', () => {
    const first = writeCell(undefined, cell(1, 'place', 'ridge'))
    expect(first).toEqual({ events: [{}, { place: 'ridge' }] })
    expect(writeCell(first, cell(1, 'height', '6000 ft'))).toEqual({
      events: [{}, { place: 'ridge', height: '6000 ft' }],
    })
    expect(writeCell(first, cell(1, 'place', '', 'ridge'))).toEqual({ events: [{}, { place: '' }] })
  })

  it('that another window filled meanwhile keeps both texts, the other one in a line of its own', () => {
    const theirs = writeCell(undefined, cell(0, 'place', 'valley'))
    expect(writeCell(theirs, cell(0, 'place', 'ridge'))).toEqual({ events: [{ place: 'ridge' }, { place: 'valley' }] })
    expect(writeCell(theirs, cell(0, 'place', 'ridge'), true)).toEqual({
      events: [{ place: 'valley' }, { place: 'ridge' }],
    })
    expect(writeCell(theirs, cell(0, 'place', 'valley gate', 'valley'))).toEqual({ events: [{ place: 'valley gate' }] })
  })

  it('reaches the disk, two windows at once, and says when its complaint is not there', async () => {
    const complaint = newComplaint({ title: 'Flag' })
    await addComplaint(complaint)
    const write = (one: ReturnType<typeof cell>) => changeComplaint({ do: 'cell', id: complaint.id, at: AT, ...one })
    expect(await Promise.all([write(cell(0, 'place', 'ridge')), write(cell(0, 'seen', 'flag'))])).toEqual([true, true])
    expect((await getComplaint(complaint.id))?.tables).toEqual({ events: [{ place: 'ridge', seen: 'flag' }] })
    expect(await performStep(step('0123456789abcdef', cell(0, 'place', 'lost')))).toBe(false)
  })

  it('left behind by a window that ended is carried out later, in a complaint of its own if need be', async () => {
    const [back] = restoreSteps(JSON.parse(JSON.stringify([step('feedfeedfeedfeed', cell(0, 'place', 'ridge'))])))
    if (back === undefined) throw new Error('not read back')
    expect(await performStep(back, true)).toBe(true)
    expect(await getComplaint('feedfeedfeedfeed')).toMatchObject({ tables: { events: [{ place: 'ridge' }] } })
    for (const row of [-1, 0.5, 1e9, 'x'])
      expect(restoreSteps([{ ...step('feedfeedfeedfeed', cell(0, 'place', 'a')), row }])).toEqual([])
  })

  it('typed key by key is one step, on the text that was read first', () => {
    expect(mergeSteps(step('a', cell(0, 'place', 'r', 'v')), step('a', cell(0, 'place', 'ri', 'r')))).toEqual(
      step('a', cell(0, 'place', 'ri', 'v')),
    )
  })

  it('of a connector is one step as well, and none with another kind of step', () => {
    const typed = (next: string, base: string): Step => ({
      do: 'connectorText',
      id: 'a',
      connectorId: 'j1',
      at: '2026-01-01T00:00:00.000Z',
      place: { field: 'name' },
      next,
      base,
    })
    expect(mergeSteps(typed('J', ''), typed('J1', 'J'))).toEqual(typed('J1', ''))
    expect(mergeSteps(typed('J', ''), step('a', cell(0, 'place', 'r')))).toBeUndefined()
  })

  it('makes a triage worth keeping', () => {
    expect(isUnkept(emptyTriage())).toBe(false)
    expect(isUnkept({ ...emptyTriage(), tables: { events: [{ place: 'ridge' }] } })).toBe(true)
  })
})
