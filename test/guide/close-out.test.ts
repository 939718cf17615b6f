/** Closing out: never as cured without a proof, never at all before everything is back. */
import { describe, expect, test } from 'vitest'
import type { Line, Trial } from '../../src/calc/types.ts'
import {
  CLOSE_OUT,
  chanceIfUncured,
  closingOf,
  proofOf,
  proofSentence,
  RESTORE_ITEMS,
} from '../../src/guide/close-out.ts'
import fc from '../support/property.ts'

const line = (facts: Line['facts'] = {}, trials: readonly Trial[] = []): Line => ({
  id: 'l',
  name: 'J3-14',
  gate: 'clear',
  trials,
  facts,
})
const typed = (text: string) => ({ text, origin: { by: 'user' } }) as const
const RESTORED = Object.fromEntries(RESTORE_ITEMS.map(({ id }) => [`restore-${id}`, 'done']))
const WRITTEN = { cause: 'shield open at P3', cure: 'backshell replaced', checkedBy: 'B. Inspector' }
const closing = (row: Record<string, string>, lines: readonly Line[] = []) => closingOf({ [CLOSE_OUT]: [row] }, lines)
const TRIAL: Trial = {
  id: 't',
  at: '2026-11-26T08:00:00.000Z',
  steps: 'bare; 1n; bare',
  places: '',
  noise: '',
  signal: '',
  repeats: '',
  times: '',
  removed: '',
}

describe('as cured', () => {
  const done = { ...RESTORED, ...WRITTEN, closed: 'cured' }

  test('only with a repetition that agreed, a measured trace, or three mean intervals without it', () => {
    expect(closing(done).status).toBe('open')
    expect(closing({ ...done, repeats: 'once' }).status).toBe('open')
    expect(closing({ ...done, repeats: 'agreed' }).status).toBe('cured')
    expect(closing({ ...done, trace: 'file 7' }).status).toBe('open')
    expect(closing({ ...done, trace: 'file 7', before: '62 dBµV', after: '38 dBµV' }).status).toBe('cured')
    expect(closing({ ...done, meanInterval: '6 h', exposure: '17.9 h' }).status).toBe('open')
    expect(closing({ ...done, meanInterval: '6 h', exposure: '18 h' }).status).toBe('cured')
  })

  test('a repetition that differed outweighs every other proof', () => {
    expect(closing({ ...done, repeats: 'differed', meanInterval: '1', exposure: '100' }).status).toBe('open')
  })

  test('what cannot be repeated says its chance: e⁻³ is 5 %', () => {
    expect(chanceIfUncured(18, 6)).toBeCloseTo(0.0498, 4)
    expect(proofSentence(closing({ meanInterval: '6 h', exposure: '18 h' }))).toContain('in 5 % of cases')
    expect(proofSentence(closing({ meanInterval: '6 h', exposure: '6 h' }))).toContain('in 37 % of cases')
  })

  test('otherwise it may be closed as not proved', () => {
    expect(closing({ ...RESTORED, ...WRITTEN, closed: 'not-proved' }).status).toBe('not-proved')
  })

  test('rubbish for hours proves nothing', () => {
    for (const text of ['', 'soon', '0', '-3', '1e999', ';'])
      expect(proofOf({ meanInterval: text, exposure: text }).is).toBe('none')
  })
})

describe('closing waits', () => {
  test.each(RESTORE_ITEMS)('for: $label', ({ id, label }) => {
    const found = closing({ ...RESTORED, ...WRITTEN, repeats: 'agreed', closed: 'cured', [`restore-${id}`]: '' })
    expect(found.status).toBe('open')
    expect(found.restore).toEqual([label])
  })

  test('for cause, cure and who checks', () => {
    expect(closing({ ...RESTORED, repeats: 'agreed', closed: 'cured' }).missing).toEqual([
      'Cause',
      'Cure',
      'Checked by',
    ])
  })

  test('for every trial adapter, under way or put away, until it is removed and recorded', () => {
    const done = { ...RESTORED, ...WRITTEN, repeats: 'agreed', closed: 'cured' }
    const underWay = line({ trialSteps: typed('bare; empty; 1n') })
    expect(closing(done, [underWay])).toMatchObject({
      status: 'open',
      restore: ['Trial on J3-14: removed and recorded'],
    })
    expect(closing(done, [line({ ...underWay.facts, trialRemoved: typed('A. M., 14:35') })]).status).toBe('cured')
    expect(closing(done, [line({}, [TRIAL])]).status).toBe('open')
    expect(closing(done, [line({}, [{ ...TRIAL, removed: 'A. M.' }])]).status).toBe('cured')
    expect(closing(done, [line({ trialSteps: typed('bare; bare') })]).status).toBe('cured')
  })

  test('an adapter that was used is counted in, never "none touched"; nothing is closed untested', () => {
    const done = { ...RESTORED, ...WRITTEN, repeats: 'agreed', closed: 'cured' }
    const out = [line({}, [{ ...TRIAL, removed: 'A. M.' }])]
    expect(closing({ ...done, 'restore-adapters': 'none' }, out).status).toBe('open')
    expect(closing({ ...done, 'restore-adapters': 'none' }).status).toBe('cured')
    expect(closing({ ...done, 'restore-function': 'none' }).status).toBe('open')
  })
})

test('of whatever is typed, closed as cured always has its proof and an empty list', () => {
  const word = fc.constantFrom(
    '',
    'done',
    'none',
    'agreed',
    'differed',
    'once',
    'cured',
    'not-proved',
    '6 h',
    '30 h',
    'x',
  )
  const keys = [
    'repeats',
    'trace',
    'before',
    'after',
    'meanInterval',
    'exposure',
    'closed',
    'cause',
    'cure',
    'checkedBy',
    ...Object.keys(RESTORED),
  ]
  fc.assert(
    fc.property(fc.record(Object.fromEntries(keys.map((key) => [key, word]))), (row) => {
      const found = closing(row)
      if (found.status === 'open') return
      expect(found.restore).toEqual([])
      expect(found.missing).toEqual([])
      if (found.status === 'cured') expect(proofOf(row).is).not.toBe('none')
    }),
  )
})
