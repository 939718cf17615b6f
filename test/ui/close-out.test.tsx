// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { CLOSE_OUT, RESTORE_ITEMS } from '../../src/guide/close-out.ts'
import type { StoredTrace } from '../../src/guide/close-out-trace.ts'
import { type KeptLine, keptLine, newLine } from '../../src/store/line.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { CloseOutPart } from '../../src/ui/paper/close-out-part.tsx'
import { layTrialCard } from '../../src/ui/paper/trial-card.tsx'
import { CloseOut } from '../../src/ui/screens/close-out.tsx'

const { readStoredTraces } = vi.hoisted(() => ({ readStoredTraces: vi.fn(async () => undefined) }))
vi.mock('../../src/state/stored-traces.ts', () => ({ readStoredTraces, storedTraces: () => [] }))

afterEach(() => {
  document.body.replaceChildren()
})

const words = (): string => (document.body.textContent ?? '').replaceAll(/\s+/g, ' ')

describe('on paper', () => {
  const shown = (row: Record<string, string>, lines: readonly KeptLine[] = [], traces: readonly StoredTrace[] = []) => {
    const host = document.createElement('div')
    document.body.append(host)
    const complaint = { ...newComplaint({ tables: { [CLOSE_OUT]: [row] } }), lines }
    act(() => render(<CloseOutPart complaint={complaint} traces={traces} />, host))
    return words()
  }

  it('says how it was closed, by what proof, and what was put back', () => {
    const restored = Object.fromEntries(RESTORE_ITEMS.map(({ id }) => [`restore-${id}`, 'done']))
    const said = shown({
      ...restored,
      cause: 'shield open at P3',
      cure: 'backshell replaced',
      checkedBy: 'B. Inspector',
      partRemoved: 'old backshell',
      meanInterval: '6 h',
      exposure: '18 h',
      closed: 'cured',
    })
    expect(said).toContain('Close-out: closed as cured')
    expect(said).toContain('in 5 % of cases')
    expect(said).toContain('Part taken out: old backshell')
    expect(said).toContain('Plugs mated and locked: done')
  })

  it('names the stored traces the proof is, and says what is missing where they are gone', () => {
    const line = keptLine(newLine('J3-14'), 'c', 0)
    const after = {
      owner: line.id,
      id: 'a',
      role: 'after',
      name: 'run 2.csv',
      takenAt: '2026-11-26T08:00:00.000Z',
      finding: { holds: true, limit: 'CE102', spareDb: 12, spareAtHz: 2e6, marginDb: 6 },
    } as const
    const row = { before: '62 dBµV', after: '38 dBµV', traceAfter: `${line.id}/a`, traceAlike: 'same' }
    expect(shown(row, [line], [after])).toContain('Trace after: run 2.csv, stored')
    document.body.replaceChildren()
    const said = shown(row, [line])
    expect(said).not.toContain('run 2.csv')
    expect(said).not.toContain('under CE102')
    expect(said).toContain('No trace is stored as “after”')
  })

  it('says it is open, and what is, while anything is', () => {
    const said = shown({ cause: 'shield', closed: 'cured' })
    expect(said).toContain('Close-out: open')
    expect(said).toContain('Breakers in, collars off: open')
  })

  it('is not there where nobody began it', () => {
    expect(shown({})).toBe('')
  })
})

describe('the stored traces of a close-out', () => {
  it('are read anew where a fact is changed, and not at a key in a name of a line', async () => {
    const host = document.createElement('div')
    const line = keptLine(newLine('J3-14'), 'c', 0)
    const draw = (lines: readonly KeptLine[]) =>
      act(async () => render(<CloseOut complaint={{ ...newComplaint({}), lines }} />, host))
    readStoredTraces.mockClear()
    await draw([line])
    await draw([{ ...line, name: 'J3-1' }])
    expect(readStoredTraces).toHaveBeenCalledTimes(1)
    await draw([{ ...line, facts: { ...line.facts } }])
    expect(readStoredTraces).toHaveBeenCalledTimes(2)
    await draw([line, keptLine(newLine('J3-15'), 'c', 1)])
    expect(readStoredTraces).toHaveBeenCalledTimes(3)
    await draw([line])
    expect(readStoredTraces).toHaveBeenCalledTimes(4)
  })
})

describe('a trial card', () => {
  const line = { ...newLine('J3-14'), gate: 'clear' } as const

  it('has a row for each step, boxes to tick, free rows, and a place for leave and for removal', () => {
    const takeAway = layTrialCard(line, ['bare', 'empty', '1n', 'empty', 'bare'], () => undefined)
    const said = words()
    expect(said).toContain('Trial card: J3-14')
    expect(document.querySelectorAll('.pencil tbody tr')).toHaveLength(5 + 3)
    expect(said).toContain('☐ gone ☐ less ☐ same ☐ more')
    expect(said).toContain('Leave given by')
    expect(said).toContain('Removed by')
    expect(said).toContain('Never a trial part in these')
    takeAway()
    expect(document.querySelector('.paper')).toBeNull()
  })

  it('is a refusal on a barred line', () => {
    layTrialCard({ ...line, gate: 'barred' }, [], () => undefined)
    expect(words()).toContain('No trial on this line.')
    expect(document.querySelector('.pencil')).toBeNull()
  })
})
