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
import { type StoredTrace, traceKey } from '../../src/guide/close-out-trace.ts'
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
const closing = (
  row: Record<string, string>,
  lines: readonly Line[] = [],
  traces: readonly StoredTrace[] | undefined = [],
) => closingOf({ [CLOSE_OUT]: [row] }, lines, traces)
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

const stored = (role: StoredTrace['role'], id: string, owner = 'l'): StoredTrace => ({
  owner,
  id,
  role,
  name: `${id}.csv`,
  takenAt: '2026-11-26T08:00:00.000Z',
})
const HOLDS = { holds: true, limit: 'CE102', spareDb: 12, spareAtHz: 2e6, marginDb: 6 } as const
const BEFORE = stored('before', 'b')
const AFTER = { ...stored('after', 'a'), finding: HOLDS }
const READ = { before: '62 dBµV', after: '38 dBµV' }

describe('a measured trace', () => {
  const done = { ...RESTORED, ...WRITTEN, ...READ, traceAlike: 'same', closed: 'cured' }
  const chosen = { ...done, traceAfter: traceKey(AFTER) }
  const both = { ...chosen, traceBefore: traceKey(BEFORE) }
  const at = (row: Record<string, string>, ...traces: StoredTrace[]) => closing(row, [line()], traces)

  test('counts where it is stored as after and chosen, with the one before it where its line has one', () => {
    expect(at(chosen, AFTER)).toMatchObject({ status: 'cured', proof: { is: 'trace', isCompared: false } })
    expect(at(both, BEFORE, AFTER)).toMatchObject({ status: 'cured', proof: { is: 'trace', isCompared: true } })
    expect(at(chosen, BEFORE, AFTER)).toMatchObject({ status: 'open', proof: { is: 'none' } })
    expect(proofSentence(at(chosen, BEFORE, AFTER))).toContain('Choose which stored trace was taken before the cure')
    const two = [line(), { ...line(), id: 'm' }]
    expect(closing(chosen, two, [AFTER, stored('before', 'b', 'm')]).status).toBe('cured')
    expect(closing({ ...chosen, traceBefore: 'm/b' }, two, [AFTER, stored('before', 'b', 'm')]).status).toBe('open')
  })

  test('that is only named is no proof, and what is missing is said', () => {
    const named = { ...done, trace: 'file 7' }
    expect(at(named)).toMatchObject({ status: 'open', proof: { is: 'none' } })
    expect(proofSentence(at(named))).toMatch(/^No trace is stored as “after” with a line of this complaint/)
    expect(proofSentence(at(named, BEFORE))).toMatch(/^No trace is stored as “after”/)
    expect(proofSentence(at(named, AFTER))).toMatch(/^Choose which stored trace was taken after the cure/)
  })

  test('that is not stored any more, is of another complaint, of another role, or not read yet is none', () => {
    expect(at(chosen, stored('after', 'new')).status).toBe('open')
    expect(proofSentence(at(chosen, stored('after', 'new')))).toContain('not stored any more')
    expect(at(both, AFTER).status).toBe('open')
    expect(proofSentence(at(both, AFTER))).toContain('chosen as “before” is not stored')
    expect(closing(chosen, [], [AFTER]).status).toBe('open')
    expect(at({ ...done, traceAfter: traceKey(BEFORE) }, BEFORE).status).toBe('open')
    expect(at({ ...done, traceAfter: 'l/f' }, stored('filter', 'f'), AFTER).status).toBe('open')
    expect(closingOf({ [CLOSE_OUT]: [chosen] }, [line()], undefined).status).toBe('open')
  })

  test('counts only where it was taken alike and keeps its limit; else what is missing is said', () => {
    const lacks = (row: Record<string, string>, after: StoredTrace) => {
      const found = at({ ...both, ...row }, BEFORE, after)
      expect(found).toMatchObject({ status: 'open', proof: { is: 'none' } })
      return proofSentence(found)
    }
    expect(lacks({ traceAlike: '' }, AFTER)).toMatch(/^Say whether it was taken in the bandwidth/)
    expect(lacks({ traceAlike: 'other' }, AFTER)).toContain('measure again alike')
    expect(lacks({}, stored('after', 'a'))).toContain('is being held against its limit')
    expect(lacks({}, { ...AFTER, finding: { holds: false, missing: 'It misses CE102 by 3 dB.' } })).toMatch(
      /^It misses CE102 by 3 dB\. No proof yet/,
    )
    // closed without proof it stays that, with the same reason
    const unproved = at({ ...both, closed: 'not-proved' }, BEFORE, stored('after', 'a'))
    expect(unproved.status).toBe('not-proved')
  })

  test('that was chosen and misses its limit outweighs a repetition that agreed and a long quiet time', () => {
    const over = { holds: false, misses: true, missing: 'It misses CE102 by 3 dB.' } as const
    const quiet = { meanInterval: '6 h', exposure: '40 h' }
    for (const proved of [{ repeats: 'agreed' }, quiet, { repeats: 'agreed', ...quiet }]) {
      expect(at({ ...done, ...proved }, AFTER).status).toBe('cured')
      // with nothing else about the traces filled in
      const bare = { ...done, ...proved, before: '', after: '', traceAlike: '', traceAfter: traceKey(AFTER) }
      const missed = at(bare, BEFORE, { ...AFTER, finding: over })
      expect(missed).toMatchObject({ status: 'open', proof: { is: 'none' } })
      expect(proofSentence(missed)).toMatch(/^It misses CE102 by 3 dB\. That outweighs/)
      // not held against its limit, or in another bandwidth: it says nothing either way
      expect(at(bare, BEFORE, { ...AFTER, finding: { holds: false, missing: 'Choose a limit.' } }).status).toBe('cured')
      expect(at({ ...bare, traceAlike: 'other' }, BEFORE, { ...AFTER, finding: over }).status).toBe('cured')
    }
  })

  test('says by how much it keeps its limit, and what came off where it was worst', () => {
    const worst = { hz: 200e3, overDb: 20.04, lossDb: 34.26 }
    const found = at(both, BEFORE, { ...AFTER, finding: { ...HOLDS, worst } })
    expect(proofSentence(found).replaceAll('\u00a0', ' ')).toBe(
      'Measured after the cure: under CE102 over its whole span, by 12 dB and more (at 2 MHz). Where it was worst before, 20.1 dB over at 200 kHz, 34.2 dB came off. Closed as cured.',
    )
  })

  test('counts only beside what was read before and after', () => {
    for (const id of ['before', 'after']) {
      expect(at({ ...both, [id]: ' ' }, BEFORE, AFTER).status).toBe('open')
      expect(proofSentence(at({ ...both, [id]: '' }, BEFORE, AFTER))).toContain('Write what was read before and after')
    }
  })
})

describe('as cured', () => {
  const done = { ...RESTORED, ...WRITTEN, closed: 'cured' }

  test('only with a repetition that agreed, a measured trace, or three mean intervals without it', () => {
    expect(closing(done).status).toBe('open')
    expect(closing({ ...done, repeats: 'once' }).status).toBe('open')
    expect(closing({ ...done, repeats: 'agreed' }).status).toBe('cured')
    expect(
      closing({ ...done, ...READ, traceAlike: 'same', traceAfter: traceKey(AFTER) }, [line()], [AFTER]).status,
    ).toBe('cured')
    expect(closing({ ...done, meanInterval: '6 h', exposure: '17.9 h' }).status).toBe('open')
    expect(closing({ ...done, meanInterval: '6 h', exposure: '18 h' }).status).toBe('cured')
  })

  test('the time since then counts in the unit of the mean interval', () => {
    const status = (meanInterval: string, exposure: string) => closing({ ...done, meanInterval, exposure }).status
    // 40 min are a fifteenth of 10 h, 40 h are 240 times 10 min
    expect(status('10 h', '40 min')).toBe('open')
    expect(status('10 min', '40 h')).toBe('cured')
    expect(status('10 h', '30 flight hours in the same conditions')).toBe('cured')
    expect(status('4 flights', '12 flights')).toBe('cured')
    expect(proofSentence(closing({ meanInterval: '10 h', exposure: '40 min' }))).toContain('in 94 % of cases')
    for (const [mean, since] of [
      ['2 h', '10 flights'],
      ['2 flights', '10 flight hours'],
      ['2k', '10000'],
      ['2 h', '10'],
    ] as const) {
      expect(status(mean, since)).toBe('open')
      expect(proofSentence(closing({ meanInterval: mean, exposure: since }))).toContain('write both in one unit')
    }
  })

  test('days on the calendar are no hours of use: two days in the hangar are not 48 h without an event', () => {
    const at = (meanInterval: string, exposure: string) => closing({ ...done, meanInterval, exposure })
    expect(at('10 h', '2 days').status).toBe('open')
    expect(proofSentence(at('10 h', '2 days'))).toContain('write both in one unit')
    expect([at('2 days', '6 days').status, at('2 days', '1 week').status]).toEqual(['cured', 'cured'])
    expect(at('2 days', '5 days').status).toBe('open')
  })

  test('a rate is no interval: 0.1 an hour is one in 10 h, of which 1 h without it proves nothing', () => {
    for (const mean of ['0.1 per hour', '0.1 events per hour', '0.1 an hour', '0.1 each hour', '0.1 a day']) {
      const at = closing({ ...done, meanInterval: mean, exposure: mean.endsWith('day') ? '1 day' : '1 h' })
      expect([mean, at.status]).toEqual([mean, 'open'])
      expect(proofSentence(at)).toContain('from one event to the next')
    }
  })

  test('a word before a time makes it one of use, or nothing that can be read: 0.1 pro h is no tenth of an hour', () => {
    for (const mean of ['0.1 pro h', '0.1 par h', '0.1 events h', '3 half hours', '2 flight test hours']) {
      expect([mean, closing({ ...done, meanInterval: mean, exposure: '9 h' }).status]).toEqual([mean, 'open'])
      expect([mean, closing({ ...done, meanInterval: '1 min', exposure: mean }).status]).toEqual([mean, 'open'])
    }
    for (const since of ['18 flying hours', '18 block h', '18 engine running hours', '18 operating hours'])
      expect([since, closing({ ...done, meanInterval: '6 h', exposure: since }).status]).toEqual([since, 'cured'])
    expect(closing({ ...done, meanInterval: '6 engine running hours', exposure: '20 engine starts' }).status).toBe(
      'open',
    )
  })

  test('a time that stands ahead of per, in a or on a is a time', () => {
    for (const mean of ['6 h per event', '6 h in a climb', '6 h on a flight', '6 flight hours per event']) {
      expect([mean, closing({ ...done, meanInterval: mean, exposure: '18 h' }).status]).toEqual([mean, 'cured'])
      expect(closing({ ...done, meanInterval: mean, exposure: '17 h' }).status).toBe('open')
    }
  })

  test('a time in a time is how much of it, and no time between two: half an hour per day', () => {
    for (const mean of ['0.5 h per day', '0.5 h a day', '20 min every flight hour'])
      expect([mean, closing({ ...done, meanInterval: mean, exposure: '9 h' }).status]).toEqual([mean, 'open'])
    const since = closing({ ...done, meanInterval: '1 h', exposure: '4 h a day' })
    expect(since.status).toBe('open')
    expect(proofSentence(since)).toContain('Write the whole time since then')
  })

  test('the time since then is no rate either: 3 flights per day are not three flights', () => {
    const at = closing({ ...done, meanInterval: '1 flight', exposure: '3 flights per day' })
    expect(at.status).toBe('open')
    expect(proofSentence(at)).toContain('Write the whole time since then, not how much in a day.')
    expect(closing({ ...done, meanInterval: '1 flight', exposure: '3 flights' }).status).toBe('cured')
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
      expect(proofOf({ meanInterval: text, exposure: text }, []).is).toBe('none')
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
    'l/a',
    'l/b',
  )
  const keys = [
    'repeats',
    'trace',
    'traceBefore',
    'traceAfter',
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
      const found = closing(row, [line()], [BEFORE, AFTER])
      if (found.status === 'open') return
      expect(found.restore).toEqual([])
      expect(found.missing).toEqual([])
      if (found.status === 'cured') expect(proofOf(row, [BEFORE, AFTER]).is).not.toBe('none')
    }),
  )
})
