/**
 * Speed as ratios within one run, so that a slow machine is no failure: each job against a unit of work timed right
 * before it. Ceilings are three times what was measured when they were set (0.0227 and 8.5).
 */
import { expect, test } from 'vitest'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import { logGrid, sweepLossInto } from '../../src/calc/network/chain.ts'
import { type FilterCircuit, NO_SERIES } from '../../src/calc/network/circuit.ts'
import { tookMs, UNIT_WARM_UP, unitOfWork } from './unit.ts'

const RUNS = 15

const circuit: FilterCircuit = {
  topology: 'PI',
  shunt1: { capacitanceF: 3.7e-9, esrOhm: 0.023, eslH: 0.31e-9 },
  shunt2: { capacitanceF: 5.9e-9, esrOhm: 0.031, eslH: 0.19e-9 },
  series1: { inductanceH: 1.7e-6, dcrOhm: 0.043, parallelOhm: 2900, parallelF: 2.3e-12 },
  series2: NO_SERIES,
  bondOhm: 2.1e-3,
  bondH: 1.3e-9,
}
const source = { ohm: 37, seriesH: 0.9e-6 }
const load = { ohm: 810, parallelF: 61e-12, parallelH: 47e-6 }
const hz = logGrid(1e4, 1e9, 1001)
const out = new Float64Array(hz.length)

function sweep(): number {
  sweepLossInto(circuit, source, load, hz, out)
  return out[500] ?? 0
}

/** A whole answer as a screen asks for it: four sources, two frequencies, six topologies, strip and table. */
function answer(): number {
  const result = evaluateNow(
    windowCheck,
    readFields(windowCheck, {
      lineKind: 'arinc-429-high',
      frequencyHz: '2.1M;13.7M',
      neededDb: '17;23',
      sourceOhm: '1;10;50;150',
      loadOhm: '470',
      eslH: '0.4n',
      bondH: '0.6n',
      bondOhm: '2.5m',
    }),
  )
  return result.ok ? result.pictures.length : 0
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0

/** Median over runs of job / unit of work beside it; `times` repeats a job too short for the clock. */
function ratio(job: () => number, times: number): number {
  const many = () => {
    let sum = 0
    for (let i = 0; i < times; i++) sum += job()
    return sum
  }
  for (let i = 0; i < 3; i++) tookMs(many)
  return median(Array.from({ length: RUNS }, () => tookMs(many) / times / tookMs(unitOfWork)))
}

for (let i = 0; i < UNIT_WARM_UP; i++) tookMs(unitOfWork)
const sweepRatio = ratio(sweep, 20)
const answerRatio = ratio(answer, 1)
console.log(
  `bench, in units of work: sweep of 1,001 points ${sweepRatio.toPrecision(3)}, ` +
    `window check with 4 sources and 2 frequencies ${answerRatio.toPrecision(3)}`,
)

test('a sweep of 1,001 points costs less than 0.07 units of work', () => {
  expect(sweepRatio).toBeLessThan(0.07)
})

test('a whole window check costs less than 26 units of work', () => {
  expect(answerRatio).toBeLessThan(26)
})
