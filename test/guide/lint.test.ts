import { describe, expect, it } from 'vitest'
import { GUIDE } from '../../src/guide/guide.ts'
import { lint } from '../../src/guide/lint.ts'
import type { Guide, Outcome } from '../../src/guide/types.ts'

const codes = (guide: Guide): readonly string[] => lint(guide).map(({ code }) => code)
const withOutcome = (change: Partial<Outcome>): Guide => ({
  ...GUIDE,
  outcomes: GUIDE.outcomes.map((each) => (each.id === 'bond-first' ? { ...each, ...change } : each)),
})

describe('the linter of the guide', () => {
  it('finds nothing in the shipped guide', () => {
    expect(lint(GUIDE)).toEqual([])
  })

  it.each([
    ['reason-missing', { reason: ' ' }],
    ['headline-missing', { headline: '' }],
    ['measurement-missing', { nextMeasurement: '' }],
    ['steps-missing', { steps: [] }],
    ['rule-unknown', { rules: ['no-such-rule'] }],
    ['caution-unknown', { cautions: ['no-such-text'] }],
    ['key-unknown', { checks: [{ check: 'window', prefill: { nonsense: '1' }, why: '' }] }],
    ['check-unknown', { checks: [{ check: 'no-such-check' as 'tone', prefill: {}, why: '' }] }],
  ] as const)('finds %s', (code, change) => {
    expect(codes(withOutcome(change))).toContain(code)
  })

  it('finds a suspect that leads to no outcome, a stop and a note that do not exist', () => {
    const [first, ...rest] = GUIDE.suspects
    if (first === undefined) throw new Error('no suspects')
    expect(codes({ ...GUIDE, suspects: [{ ...first, outcome: 'nowhere' }, ...rest] })).toContain('outcome-unknown')
    const evidence = GUIDE.evidence.map((each) => ({
      ...each,
      note: 'no-such-note',
      options: each.options.map((option) => ({ ...option, stop: 'no-such-stop' })),
    }))
    expect(codes({ ...GUIDE, evidence })).toEqual(expect.arrayContaining(['note-unknown', 'stop-unknown']))
  })
})
