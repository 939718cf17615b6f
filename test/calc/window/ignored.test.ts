/**
 * A row of capacitors alone says the same whatever an inductor would be, so that no doubt about one is tried on it; a row
 * with an inductor, or beside a choke, does not.
 */
import { expect, test } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { doubtedWindow, ignoredByWindow } from '../../../src/calc/checks/window/doubted.ts'
import { type WindowFigures, windowFigures } from '../../../src/calc/checks/window/figures.ts'
import type { WindowGiven } from '../../../src/calc/checks/window/inputs.ts'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { LINE_KINDS } from '../../../src/reference/line-kinds.ts'
import { random } from '../../support/seeded.ts'

type Texts = Readonly<Record<string, string>>

const given = (texts: Texts): WindowGiven =>
  Object.fromEntries(readFields(windowCheck, texts).map(({ key, value }) => [key, value])) as unknown as WindowGiven

function found(one: WindowGiven): WindowFigures {
  const figures = atOnce(windowFigures(one))
  if ('ok' in figures) throw new Error('refused')
  return figures
}

const INDUCTORS: readonly Texts[] = [
  { inductanceH: '1n' },
  { inductanceH: '10m' },
  { inductorParallelF: '200p' },
  { inductanceH: '470u', inductorParallelF: '0' },
]

test('no inductor turns a row of capacitors alone', () => {
  const next = random(40)
  const some = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)] as T
  const kinds = LINE_KINDS.filter(({ barredWhy }) => barredWhy === undefined)
  let told = 0
  for (let i = 0; i < 120; i++) {
    const texts: Texts = {
      lineKind: some(kinds).id,
      bitRateHz: '110k',
      frequencyHz: some(['118M', '118M;137M', '2M', '31M']),
      neededDb: (3 + 25 * next()).toPrecision(4),
      sourceOhm: some(['1;10;50;150', '50', '3']),
      loadOhm: some(['70', '1k']),
      topology: some(['C', 'C', '']),
      mostConversionDb: some(['', '-40']),
    }
    const one = found(given(texts))
    if (one.is !== 'window' || !ignoredByWindow(one, 'inductanceH')) continue
    told++
    const before = doubtedWindow(given(texts), one)
    for (const other of INDUCTORS) {
      const after = doubtedWindow(given({ ...texts, ...other }), one)
      expect([texts, 'verdict' in after && after.verdict]).toEqual([texts, 'verdict' in before && before.verdict])
    }
  }
  expect(told).toBeGreaterThan(40)
})

test('where an inductor or a choke stands it is no part of what is ignored, nor is anything else', () => {
  const texts = { frequencyHz: '118M', neededDb: '12', sourceOhm: '50', loadOhm: '70', lineKind: 'can' }
  expect(ignoredByWindow(found(given({ ...texts, topology: 'LC' })), 'inductanceH')).toBe(false)
  expect(ignoredByWindow(found(given({ ...texts, topology: 'C', chokeH: '51u' })), 'inductanceH')).toBe(false)
  const bare = found(given({ ...texts, topology: 'C' }))
  expect(ignoredByWindow(bare, 'inductanceH')).toBe(true)
  for (const key of ['existingF', 'suppressorF', 'biasFrac', 'eslH', 'toleranceFrac'])
    expect(ignoredByWindow(bare, key)).toBe(false)
})
