/** Noting a trial entry by entry, and the values that are offered on a line. */
import { describe, expect, test } from 'vitest'
import { offeredOn } from '../../../src/calc/line/trial-offer.ts'
import { type ColumnTexts, orderOf, rowsOf, withEntry, withValue } from '../../../src/calc/trial/edit.ts'
import type { Line } from '../../../src/calc/types.ts'
import fc from '../../support/property.ts'

const EMPTY: ColumnTexts = { steps: '', places: '', noise: '', signal: '', repeats: '', times: '' }

describe('an entry', () => {
  test('stands in its row, whatever was there', () => {
    expect(withEntry('', 2, 'gone')).toBe('; ; gone')
    expect(withEntry('; same; gone', 1, 'less')).toBe('; less; gone')
    expect(withEntry('; same; gone', 2, '')).toBe('; same')
    expect(withEntry('a', 0, '')).toBe('')
  })

  test('never makes a row of its own', () => {
    fc.assert(
      fc.property(fc.nat({ max: 9 }), fc.string({ maxLength: 9 }), (row, entry) => {
        const texts = { ...EMPTY, steps: orderOf(['1n', '10n']), noise: withEntry('', row, entry) }
        expect(rowsOf(texts)).toHaveLength(6)
        if (row < 6) expect(rowsOf(texts)[row]?.noise).toBe(entry.trim().replaceAll(';', ','))
      }),
    )
  })
})

describe('a value more', () => {
  test('comes before the empty adapter at the end, and what was noted stays beside its step', () => {
    const texts = {
      ...EMPTY,
      steps: orderOf(['1n', '10n']),
      noise: '; same; less; less',
      times: '; 14:01; 14:02; 14:03',
    }
    const next = withValue(texts, '47n')
    expect(next.steps).toBe('bare; empty; 1n; 10n; 47n; empty; bare')
    expect(rowsOf(next).map(({ steps, noise }) => `${steps} ${noise}`)).toEqual([
      'bare ',
      'empty same',
      '1n less',
      '10n less',
      '47n ',
      'empty ',
      'bare ',
    ])
  })

  test('after the end was noted it begins at the end, and is closed by empty and bare', () => {
    const texts = { ...EMPTY, steps: orderOf(['1n']), noise: '; same; gone; same; same' }
    const next = withValue(texts, '330p')
    expect(next.steps).toBe('bare; empty; 1n; empty; bare; 330p; empty; bare')
    expect(rowsOf(next).map(({ noise }) => noise)).toEqual(['', 'same', 'gone', 'same', 'same', '', '', ''])
  })

  test('begins a trial where there is none', () => {
    expect(withValue(EMPTY, '1n').steps).toBe('bare; empty; 1n; empty; bare')
  })
})

const typed = (text: string) => ({ text, origin: { by: 'user' } }) as const
const line = (texts: Record<string, string>): Line => ({
  id: 'l',
  name: '',
  gate: 'clear',
  trials: [],
  facts: Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, typed(text)])),
})

describe('values offered on a line', () => {
  const known = {
    lineKind: 'discrete-28v',
    signalOhm: '10k',
    noiseHz: '10M',
    neededDb: '20',
    noiseSourceOhm: '50',
    noiseLoadOhm: '50',
  }

  test('three of its window, whatever topology it shows, and the same ones once a trial is noted', () => {
    const offered = offeredOn(line(known))
    expect(offered).toHaveLength(3)
    expect(offeredOn(line({ ...known, topology: 'LC' }))).toEqual(offered)
    expect(offeredOn(line({ ...known, trialSteps: 'bare; 1n; bare', trialNoise: ';same;same' }))).toEqual(offered)
  })

  test('none on a line that gets no part, none where neither end is known', () => {
    expect(offeredOn(line({ lineKind: 'pyrotechnic' }))).toEqual([])
    expect(offeredOn(line({}))).toEqual([])
  })
})

test('a row holds what each column says of its step', () => {
  const texts = {
    steps: 'bare; 1n',
    places: '; plug',
    noise: '; less',
    signal: '; as before',
    repeats: '2; 3',
    times: '9:00; 9:05',
  }
  expect(rowsOf(texts)).toMatchObject([
    { steps: 'bare', places: '', repeats: '2', times: '9:00' },
    { steps: '1n', places: 'plug', noise: 'less', signal: 'as before', repeats: '3', times: '9:05' },
  ])
})
