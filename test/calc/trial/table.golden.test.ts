/**
 * The usual reading of a progressive trial, row by row: what the noise and the signal did at each value, the four numbers
 * N, K, G and B that follow, what is shown, open and excluded, and what it means. Values of the rule itself (practice).
 */
import { describe, expect, test } from 'vitest'
import { trialInputs } from '../../../src/calc/checks/trial/inputs.ts'
import { readColumn } from '../../../src/calc/line/columns.ts'
import { readTrial, type TrialReading } from '../../../src/calc/trial/four-numbers.ts'
import { outcomesOf, refutedBy } from '../../../src/calc/trial/outcomes.ts'
import { type Heard, stepsOf, type TrialStep } from '../../../src/calc/trial/steps.ts'
import { nextStep, offeredValues, zonesOf } from '../../../src/calc/trial/zones.ts'

const entries = (key: string, text: string) => {
  const input = trialInputs.find((one) => one.key === key)
  if (input?.type.is !== 'column') throw new Error(key)
  const read = readColumn(input.type, text)
  if (read.is !== 'entries') throw new Error(read.message)
  return read.entries
}

type Texts = { steps?: string; noise: string; signal?: string; places?: string; repeats?: string }

const STEPS = 'bare; empty; 100p; 1n; 10n; empty; bare'

const steps = ({ steps: parts = STEPS, noise, signal = '', places = '', repeats = '' }: Texts): readonly TrialStep[] =>
  stepsOf({
    steps: entries('steps', parts),
    noise: entries('noise', noise),
    signal: entries('signal', signal),
    places: entries('places', places),
    repeats: entries('repeats', repeats),
  })

const SCALE = { offDb: 1, neededDb: undefined } as const
const read = (texts: Texts, neededDb?: number): TrialReading => readTrial(steps(texts), { offDb: 1, neededDb })
const INF = Number.POSITIVE_INFINITY
const GOOD = ';; good; good; good; ;'
const numbers = ({ numbers: { notClearedF, clearedF, goodF, degradedF } }: TrialReading) => [
  notClearedF,
  clearedF,
  goodF,
  degradedF,
]

type Row = {
  row: string
  texts: Texts
  neededDb?: number
  four: readonly [number, number, number, number]
  outcomes: readonly string[]
  /** shown window per leg, adapters as marked */
  proven?: readonly [number, number]
  isShut?: true
  voids?: readonly string[]
  nextF?: number
}

const ROWS: readonly Row[] = [
  {
    row: 'cleared at Ck, not at Ck-1: the need lies in (Ck-1, Ck]',
    texts: { noise: ';same;same;gone;gone;same;same', signal: GOOD },
    four: [100e-12, 1e-9, 10e-9, INF],
    outcomes: ['cleared-between'],
    proven: [1e-9, 10e-9],
    nextF: 330e-12,
  },
  {
    row: 'cleared already at C1: the need is at most C1',
    texts: { noise: ';same;gone;gone;gone;same;same', signal: GOOD },
    four: [0, 100e-12, 10e-9, INF],
    outcomes: ['cleared-first'],
    proven: [100e-12, 10e-9],
  },
  {
    row: 'improved, not cleared: the need is above Ck',
    texts: { noise: ';same;same;less;less;same;same', signal: GOOD },
    four: [10e-9, INF, 10e-9, INF],
    outcomes: ['improved'],
    nextF: 100e-9,
  },
  {
    row: 'improved, then level: the capacitor has become an inductor, or a second path',
    texts: { noise: '60;60;58;45;45;60;60', signal: GOOD },
    four: [10e-9, INF, 10e-9, INF],
    outcomes: ['levelled', 'improved'],
  },
  {
    row: 'no change at C1 to C3: more is needed, or not this line, mode or place',
    texts: { noise: ';same;same;same;same;same;same', signal: GOOD },
    four: [10e-9, INF, 10e-9, INF],
    outcomes: ['no-change'],
  },
  {
    row: 'no change to chassis, change between the wires: differential',
    texts: {
      steps: 'bare;empty;1n;10n;1n;10n;empty;bare',
      places: ';;chassis;chassis;between;between;;',
      noise: ';same;same;same;same;gone;same;same',
      signal: ';;good;good;good;good;;',
    },
    four: [1e-9, 10e-9, 10e-9, INF],
    outcomes: ['between-wires', 'cleared-between'],
    // between the wires counts twice on each leg
    proven: [20e-9, 20e-9],
    nextF: 3.3e-9,
  },
  {
    row: 'worse to chassis: the chassis is the noisy node, or a resonance, or unequal legs',
    texts: { noise: ';same;more;more;same;same;same', signal: GOOD },
    four: [10e-9, INF, 10e-9, INF],
    outcomes: ['worse'],
  },
  {
    row: 'signal degraded at Ck: the most is below Ck, the last good one is its lower end',
    texts: { noise: ';same;gone;gone;gone;same;same', signal: ';;good;good;degraded;;' },
    four: [0, 100e-12, 1e-9, 10e-9],
    outcomes: ['cleared-first', 'degraded'],
    proven: [100e-12, 1e-9],
  },
  {
    row: 'cleared at Ck and degraded at Ck: no capacitor alone if the need is at or above the most',
    texts: { noise: ';same;same;same;gone;same;same', signal: ';;good;good;degraded;;' },
    four: [1e-9, 10e-9, 1e-9, 10e-9],
    outcomes: ['cleared-between', 'degraded', 'window-empty'],
    nextF: 3.3e-9,
  },
  {
    row: 'what did not clear is at or above what degraded: a capacitor alone cannot do it',
    texts: { noise: ';same;same;same;less;same;same', signal: ';;good;degraded;degraded;;' },
    four: [10e-9, INF, 100e-12, 1e-9],
    outcomes: ['improved', 'degraded', 'window-empty'],
    isShut: true,
  },
  {
    row: 'different answer on repeat: no bound',
    texts: { noise: ';same;same;gone;gone;same;same', signal: GOOD, repeats: ';;agreed;differed;agreed;;' },
    four: [100e-12, 1e-9, 10e-9, INF],
    outcomes: ['repeat-differs'],
    voids: ['repeat-differs'],
  },
  {
    row: 'works with and without the capacitor: a contact or shield, not the noise',
    texts: { noise: ';gone;gone;gone;gone;gone;same', signal: GOOD },
    four: [0, 100e-12, 10e-9, INF],
    outcomes: ['contact'],
    voids: ['contact'],
  },
  {
    row: 'bare runs that differ void all four numbers',
    texts: { noise: ';same;same;gone;gone;same;gone', signal: GOOD },
    four: [100e-12, 1e-9, 10e-9, INF],
    outcomes: ['bare-differs'],
    voids: ['bare-differs'],
  },
]

describe('the table', () => {
  test.each(ROWS)('$row', ({ texts, four, outcomes, proven, isShut = false, voids = [], nextF }) => {
    const reading = read(texts)
    expect(numbers(reading)).toEqual(four)
    expect(outcomesOf(reading, SCALE.offDb)).toEqual(outcomes)
    expect(reading.voids).toEqual(voids)
    const zones = zonesOf(reading, 0)
    expect(zones.proven && [zones.proven.leastF, zones.proven.mostF]).toEqual(proven)
    expect(zones.isShut).toBe(isShut)
    expect(nextStep(reading, outcomesOf(reading, SCALE.offDb))?.farads).toBe(nextF)
  })

  test('a void trial shows and excludes nothing', () => {
    for (const { texts, voids = [] } of ROWS) {
      if (voids.length === 0) continue
      expect(zonesOf(read(texts), 0)).toEqual({
        proven: undefined,
        excludedBelowF: 0,
        excludedFromF: INF,
        isShut: false,
      })
    }
  })

  test('open between N and K and between G and B: nothing is shown where the next smaller good value did not clear', () => {
    const reading = read({ noise: ';same;same;same;gone;same;same', signal: ';;good;good;degraded;;' })
    expect(zonesOf(reading, 0)).toMatchObject({ proven: undefined, excludedBelowF: 1e-9, excludedFromF: 10e-9 })
  })
})

describe('what a proof needs', () => {
  const without = (noise: string, signal: string, parts?: string) =>
    read({ noise, signal, ...(parts === undefined ? {} : { steps: parts }) })

  test.each([
    ['the bare line again', without(';same;same;gone;gone;same;', GOOD), 'bare-last'],
    ['bare at all', without('same;gone;same', ';good;', 'empty;1n;empty'), 'bare-first'],
    ['the empty adapter', without(';;same;gone;gone;;same', GOOD), 'empty'],
    ['a look at the signal', without(';same;same;gone;gone;same;same', ''), 'signal'],
  ] as const)('%s', (_, reading, lack) => {
    expect(reading.lacks).toContain(lack)
    expect(zonesOf(reading, 0).proven).toBeUndefined()
  })

  test('adapters that may be off narrow what is shown and widen what is excluded', () => {
    const zones = zonesOf(read({ noise: ';same;same;gone;gone;same;same', signal: ';;good;good;degraded;;' }), 0.1)
    // cleared by 1 nF, harmless up to 1 nF: no part but that adapter
    expect(zones.proven).toBeUndefined()
    expect(zones.excludedBelowF).toBeCloseTo(110e-12, 20)
    expect(zones.excludedFromF).toBeCloseTo(9e-9, 18)
  })
})

describe('readings', () => {
  test('gone is what fell by the need over the error of both readings, and a fall inside it counts on neither side', () => {
    const reading = read({ noise: '60;60;50;39;36;60;60', signal: GOOD }, 20)
    expect(reading.steps.map(({ heard }) => heard)).toEqual(['same', 'same', 'less', 'near', 'gone', 'same', 'same'])
    expect(numbers(reading)).toEqual([100e-12, 10e-9, 10e-9, INF])
  })

  test('two readings of the bare line that differ by more than both errors void the trial', () => {
    expect(read({ noise: '60;60;50;39;36;60;62', signal: GOOD }, 20).voids).toEqual([])
    expect(read({ noise: '60;60;50;39;36;60;62.1', signal: GOOD }, 20).voids).toEqual(['bare-differs'])
  })

  test('readings in two units are no readings', () => {
    expect(read({ noise: '60 dBµV;60 dBµV;50 dBµA;39 dBµV;36 dBµV;60 dBµV;60 dBµV', signal: GOOD }).voids).toEqual([
      'units',
    ])
    // what was only heard has no unit, and is no second one
    expect(read({ noise: '60 dBµV;60 dBµV;less;39 dBµV;gone;60 dBµV;60 dBµV', signal: GOOD }).voids).toEqual([])
  })
})

describe('what it refutes', () => {
  const supposed = {
    hz: 10e6,
    leadH: 10e-9,
    offDb: 1,
    parallel: { least: 25, most: 25 },
    mode: 'common',
    measured: undefined,
  } as const
  const same: Heard = 'same'
  const reading = read({ noise: `;${same};same;same;same;same;same`, signal: GOOD })

  test('path: w·C3·R of 15.7 should have given 23.9 dB, and nothing changed', () => {
    // 2π · 10 MHz · 10 nF · 25 Ω = 15.7; the 10 nF part with 10 nH resonates at 15.9 MHz: too near, so a shorter lead
    expect(refutedBy(reading, outcomesOf(reading, 1), { ...supposed, leadH: 1e-9 })).toEqual(['path'])
    expect(refutedBy(reading, outcomesOf(reading, 1), supposed)).toEqual([])
  })

  test('not the path where the source is low: C3·R small is inconclusive', () => {
    expect(
      refutedBy(reading, outcomesOf(reading, 1), { ...supposed, leadH: 1e-9, parallel: { least: 0.5, most: 25 } }),
    ).toEqual([])
  })

  test('impedance: only where nothing is in common over the whole error', () => {
    const found = read({ noise: ';same;same;gone;gone;same;same', signal: GOOD })
    const of = (least: number, most: number) =>
      refutedBy(found, outcomesOf(found, 1), { ...supposed, measured: { least, most } })
    expect(of(30, 60)).toEqual(['impedance'])
    expect(of(20, 60)).toEqual([])
    expect(of(5, 24)).toEqual(['impedance'])
  })
})

describe('values offered on a window', () => {
  test('under the least, inside, near the most', () => {
    const [under = 0, inside = 0, top = 0, ...more] = offeredValues(2.1e-9, 11.6e-9)
    expect(more).toEqual([])
    expect(under).toBeLessThan(2.1e-9)
    expect(inside).toBeGreaterThan(2.1e-9)
    expect(inside).toBeLessThan(11.6e-9)
    expect(top).toBeLessThanOrEqual(11.6e-9)
    expect(top).toBeGreaterThanOrEqual(11.6e-9 / 2)
    expect([under, inside, top]).toEqual([0.68e-9, 4.7e-9, 10e-9])
  })

  test('nothing above the most, with or without a least', () => {
    for (const mostF of [4.4e-12, 13.3e-12, 1e-9, 67.8e-9])
      for (const leastF of [undefined, mostF / 2, mostF / 50])
        expect(Math.max(...offeredValues(leastF, mostF))).toBeLessThanOrEqual(mostF)
  })
})
