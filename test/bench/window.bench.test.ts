/**
 * Speed of one window, six topologies with three needs from four sources, in units of work done in the same
 * rounds: the six rows alone, and the whole check with doubts, words and pictures. An ordinary
 * window, one that is shut and one that rings: these two propose what would open them or calm them, each proposal a row
 * of its own worked out anew.
 */
import { expect, test } from 'vitest'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import { allRows, windowFigures } from '../../src/calc/checks/window/figures.ts'
import type { WindowGiven } from '../../src/calc/checks/window/inputs.ts'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import { leastInUnits } from './unit.ts'

const RUNS = 241
const WARM_UP = 120

const SHARED = { sourceOhm: '1;10;50;150', eslH: '0.4n', bondH: '0.6n', bondOhm: '2.5m' }
const OPEN = {
  ...SHARED,
  lineKind: 'arinc-429-high',
  frequencyHz: '12M;31M;88M',
  neededDb: '6;11;17',
  loadOhm: '470',
}
const SHUT = { ...OPEN, neededDb: '31;38;44' }
const RINGING = { ...OPEN, frequencyHz: '0.9M;2.1M;13.7M', loadOhm: '9k', inductanceH: '4.7u' }

const answer = (texts: Readonly<Record<string, string>>) => (): number => {
  const result = evaluateNow(windowCheck, readFields(windowCheck, texts))
  if (!result.ok) throw new Error('refused')
  return result.pictures.length
}

/** The bounds and verdicts of all six topologies, without a word. */
const rows = (texts: Readonly<Record<string, string>>) => {
  const fields = readFields(windowCheck, texts)
  const given = Object.fromEntries(fields.map((field) => [field.key, 'value' in field ? field.value : undefined]))
  return (): number => {
    const steps = windowFigures(given as unknown as WindowGiven)
    for (;;) {
      const step = steps.next()
      if (!step.done) continue
      if (!('is' in step.value) || step.value.is !== 'window') throw new Error('refused')
      return allRows(step.value).length
    }
  }
}

const QUESTIONS = { open: OPEN, shut: SHUT, ringing: RINGING }
const costs = leastInUnits(
  Object.fromEntries(
    Object.entries(QUESTIONS).flatMap(([name, texts]) => [
      [`${name} rows`, rows(texts)],
      [`${name} answer`, answer(texts)],
    ]),
  ),
  { rounds: RUNS, warmUp: WARM_UP },
)
const costOf = (name: keyof typeof QUESTIONS) => ({
  rows: costs[`${name} rows`] ?? Number.NaN,
  answer: costs[`${name} answer`] ?? Number.NaN,
})
const found = { open: costOf('open'), shut: costOf('shut'), ringing: costOf('ringing') }
const said = Object.entries(found).map(
  ([name, ratio]) => `${name} ${ratio.rows.toPrecision(3)} (with words ${ratio.answer.toPrecision(3)})`,
)
console.log(`bench, in units of work: window of 6 topologies, 3 needs × 4 sources: ${said.join(', ')}`)

test('a window of six topologies with three needs from four sources costs 1.5 units of work at most', () => {
  expect(found.open.rows).toBeLessThan(1.5)
  expect(found.shut.rows).toBeLessThan(1.5)
  expect(found.ringing.rows).toBeLessThan(1.5)
  expect(found.open.answer).toBeLessThan(1.5)
})

test('with all that would open a shut one, or calm one that rings, it costs three times what it was when this was set (1.8)', () => {
  expect(found.shut.answer).toBeLessThan(5.4)
  expect(found.ringing.answer).toBeLessThan(5.4)
})
