// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { loadComplaints, writeNote } from '../../src/state/complaints.ts'
import { withWords } from '../../src/state/log-search.ts'
import { createFromCheck } from '../../src/state/new-complaint.ts'
import { newLine } from '../../src/store/line.ts'
import { SearchHits } from '../../src/ui/screens/search-hits.tsx'
import { allBy, by, show } from './support.ts'

vi.mock('../../src/state/log-search.ts', { spy: true })

describe('what a search found', () => {
  beforeAll(loadComplaints)

  it('shows complaints of the Log that hold every word, as they are written', async () => {
    show(<SearchHits text="left jack buzzes" />)
    expect(allBy('ul', 'Found in the Log')).toEqual([])
    const complaint = createFromCheck({ title: 'Copilot audio', check: 'need', line: newLine('J3-14') })
    await act(async () => writeNote(complaint.id, 'buzzes at the left jack'))
    const link = by('ul', 'Found in the Log').querySelector('a')
    expect(link?.getAttribute('href')).toBe(`#/log/${complaint.id}`)
    expect(link?.textContent).toContain('Copilot audio')
  })

  it('does not look through the Log for letters that are in nearly every complaint', async () => {
    const { id } = createFromCheck({ title: 'Copilot audio', check: 'need', line: newLine('J3-14') })
    show(<SearchHits text="co" />)
    expect(withWords).toHaveBeenLastCalledWith([], 'co')
    expect(allBy('ul', 'Found in the Log')).toEqual([])
    show(<SearchHits text="cop" />)
    expect(withWords).toHaveBeenLastCalledWith(expect.arrayContaining([expect.objectContaining({ id })]), 'cop')
    expect(allBy('ul', 'Found in the Log')).toHaveLength(1)
  })

  it('says of what kind each hit is, and where nothing is found what to do', () => {
    const place = show(<SearchHits text="dummy load" />)
    const [first] = place.querySelectorAll('ul[aria-label=Found] a')
    expect(first?.getAttribute('href')).toBe('#/notes/dummy-load?find=dummy%20load')
    expect(first?.querySelector('.tag')?.textContent).toBe('Note')
    show(<SearchHits text="qqqq zzzz" />)
    expect(by('p', /Nothing has these words/)).toBeDefined()
  })
})
