/**
 * Speed of the surge check as ratios within one run: whole answers, and the longest slice between two pauses, against a
 * loop of a million complex multiply–adds timed beside it. Ceilings are three times what was measured when they
 * were set (4.3, 4.5, 66 and 1.1). A slice may last 8 ms: 1.1 is about 2.5 ms on the machine of that day.
 */
import { expect, test } from 'vitest'
import { surgeCheck } from '../../src/calc/checks/surge.ts'
import { evaluate } from '../../src/calc/evaluate.ts'
import { readFields } from '../../src/calc/fields.ts'
import { circuitOfDeck, DECKS, runSurge, shapeOfDeck } from '../support/surge-deck.ts'

const RUNS = 9
const STEPS = 1_000_000

function calibration(): number {
  let re = 0.3
  let im = 0.1
  for (let i = 0; i < STEPS; i++) {
    const next = re * 0.61 - im * 0.37 + 0.11
    im = re * 0.37 + im * 0.61 + 0.07
    re = next
  }
  return re + im
}

/** A ringing pulse into a Pi with a class suppressor, and the table of classes: the longest answer there is. */
const HEAVY = {
  waveform: 'wf3',
  level: '3',
  standoffV: '28',
  ratedPulseW: '600',
  withstandV: '60',
  busMaxV: '28',
  topology: 'PI',
  capacitanceF: '3.3n',
  inductanceH: '4.7u',
  capacitorWithstandV: '200',
}
const USUAL = {
  level: '4',
  breakdownV: '34.4',
  dynamicOhm: '0.332',
  ratedPulseW: '1500',
  withstandV: '60',
  busMaxV: '32.2',
}

const timed = (job: () => number): number => {
  const from = performance.now()
  if (!Number.isFinite(job())) throw new Error('nothing was calculated')
  return performance.now() - from
}

/** Whole time and longest slice, in ms. */
function answerMs(texts: Readonly<Record<string, string>>): { whole: number; slice: number } {
  const running = evaluate(surgeCheck, readFields(surgeCheck, texts))
  let [whole, slice] = [0, 0]
  for (;;) {
    const from = performance.now()
    const step = running.next()
    const took = performance.now() - from
    whole += took
    slice = Math.max(slice, took)
    if (step.done) return { whole, slice }
  }
}

function solveAll(): number {
  return DECKS.reduce((sum, deck) => sum + runSurge(circuitOfDeck(deck), shapeOfDeck(deck)).count, 0)
}

/** The least disturbed of several runs, over the least disturbed calibration. */
const least = (values: readonly number[]): number => Math.min(...values)

for (let i = 0; i < 3; i++) {
  timed(calibration)
  answerMs(USUAL)
  timed(solveAll)
}
const one = least(Array.from({ length: RUNS }, () => timed(calibration)))
const heavy = Array.from({ length: 3 }, () => answerMs(HEAVY))
const usual = Array.from({ length: RUNS }, () => answerMs(USUAL))
const decks = least(Array.from({ length: RUNS }, () => timed(solveAll)))
const heavyWhole = least(heavy.map((run) => run.whole))
const usualWhole = least(usual.map((run) => run.whole))
const slice = least([...heavy, ...usual].map((run) => run.slice))
const heavySlice = least(heavy.map((run) => run.slice))
console.log(
  `bench, ${STEPS} complex multiply–adds = 1 (${one.toPrecision(3)} ms): 13 circuits ${(decks / one).toPrecision(3)}, ` +
    `usual answer ${(usualWhole / one).toPrecision(3)}, ringing answer ${(heavyWhole / one).toPrecision(3)}, ` +
    `longest slice ${(slice / one).toPrecision(3)} and ${(heavySlice / one).toPrecision(3)} (${heavySlice.toPrecision(3)} ms)`,
)

test('13 circuits cost less than their ceiling', () => {
  expect(decks / one).toBeLessThan(14)
})

test('a usual answer and a ringing one cost less than their ceilings', () => {
  expect(usualWhole / one).toBeLessThan(15)
  expect(heavyWhole / one).toBeLessThan(210)
})

test('no slice is longer than its ceiling', () => {
  expect(heavySlice / one).toBeLessThan(3.3)
})
