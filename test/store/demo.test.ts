import { describe, expect, it } from 'vitest'
import { checkLine } from '../../src/calc/line/resolver.ts'
import { checkById } from '../../src/calc/registry.ts'
import { replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { restoreComplaint } from '../../src/store/restore-complaint.ts'

describe('the example complaint', () => {
  it('passes the gate unchanged', () => {
    const demo = demoComplaint()
    expect(restoreComplaint(demo, 'stored')).toEqual(demo)
  })

  it('walks through the guide to a filter, with every answer used', () => {
    const demo = demoComplaint()
    const { current, gate, unusedAnswers } = replay(GUIDE, demo.answers)
    expect(current).toMatchObject({ is: 'outcome', class: 'filter', id: 'filter-own-tx' })
    expect([gate, unusedAnswers]).toEqual(['clear', []])
    expect(demo.guideVersion).toBe(GUIDE.version)
  })

  it('has an open window on its line, with a standard value in it', () => {
    const [line] = demoComplaint().lines
    const check = checkById('window')
    if (line === undefined || check === undefined)
      throw new Error('The example has no line, or there is no window check.')
    const result = checkLine(check, line)
    expect(result).toMatchObject({ ok: true, verdict: 'ok', outputs: { proposedF: { cell: { is: 'si' } } } })
  })

  it('has ids of its own in every copy', () => {
    const [a, b] = [demoComplaint(), demoComplaint()]
    expect(a.id).not.toBe(b.id)
    expect(a.lines[0]?.id).not.toBe(b.lines[0]?.id)
  })
})
