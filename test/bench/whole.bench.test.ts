/**
 * Speed of what only the whole connector tells, on connectors of 32 to 256 unlike contacts, half of them with inductors:
 * in units of work timed beside it, and how it grows.
 */
import { expect, test } from 'vitest'
import { wholeOf } from '../../src/calc/connector/whole/whole.ts'
import { randomPlate } from '../support/random-plate.ts'
import { random } from '../support/seeded.ts'
import { DESK_UNIT_MS, least, tookMs, UNIT_WARM_UP, unitOfWork } from './unit.ts'

const SIZES = [32, 64, 128, 256] as const
const PLATES = 6
const RUNS = 2
const UNITS = 5

/** Milliseconds of each step of one connector, made anew so that nothing of it was worked out before. */
function stepsMs(contacts: number, plate: number): readonly number[] {
  const { connector, decided } = randomPlate(random(1000 * plate + contacts), contacts)
  const running = wholeOf(connector, decided)
  const steps: number[] = []
  for (;;) {
    const from = performance.now()
    const step = running.next()
    steps.push(performance.now() - from)
    if (!step.done) continue
    expect(step.value.findings.length).toBeGreaterThan(0)
    return steps
  }
}

/** The same steps come each time; of each the least disturbed counts. */
function workedMs(contacts: number, plate: number): { readonly ms: number; readonly slice: number } {
  const runs = Array.from({ length: RUNS }, () => stepsMs(contacts, plate))
  const steps = (runs[0] ?? []).map((_, at) => least(runs.map((run) => run[at] ?? Number.NaN)))
  const ms = steps.reduce((sum, one) => sum + one, 0)
  return { ms, slice: ms / steps.length }
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] as number

test('the whole connector grows no faster than its contacts, and is left often', { timeout: 300_000 }, () => {
  for (let i = 0; i < UNIT_WARM_UP; i++) tookMs(unitOfWork)
  stepsMs(32, 99)
  const costs: number[] = []
  const rows = SIZES.map((contacts) => {
    const plates = Array.from({ length: PLATES }, (_, plate) => {
      for (let i = 0; i < UNITS; i++) costs.push(tookMs(unitOfWork))
      return workedMs(contacts, plate)
    })
    return { contacts, ms: middle(plates.map(({ ms }) => ms)), sliceMs: middle(plates.map(({ slice }) => slice)) }
  }).map(({ contacts, ms, sliceMs }) => ({ contacts, units: ms / least(costs), slice: sliceMs / least(costs) }))
  for (const { contacts, units, slice } of rows)
    console.log(`${contacts} contacts: ${units.toFixed(0)} units of work; ${slice.toPrecision(2)} a slice`)
  const [first, , third, last] = rows as [(typeof rows)[0], (typeof rows)[0], (typeof rows)[0], (typeof rows)[0]]
  expect(last.units / first.units).toBeLessThan(2 * (256 / 32))
  expect(third.units).toBeLessThan(300 / DESK_UNIT_MS)
  expect(third.slice).toBeLessThan(3)
})
