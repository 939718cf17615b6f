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
const RUNS = 6
const UNITS = 5

/** Findings of one connector, and the steps it was left between. */
function worked(contacts: number, round: number): { readonly ms: number; readonly slices: number } {
  const plate = randomPlate(random(1000 * round + contacts), contacts)
  let slices = 0
  const ms = tookMs(() => {
    const running = wholeOf(plate.connector, plate.decided)
    for (;;) {
      const step = running.next()
      if (step.done) return step.value.findings.length
      slices++
    }
  })
  return { ms, slices }
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] as number

test('the whole connector grows no faster than its contacts, and is left often', { timeout: 300_000 }, () => {
  for (let i = 0; i < UNIT_WARM_UP; i++) tookMs(unitOfWork)
  worked(32, 99)
  const rows = SIZES.map((contacts) => {
    // each against the units done right before it: both meet the machine in the same state
    const runs = Array.from({ length: RUNS }, (_, round) => {
      const unit = least(Array.from({ length: UNITS }, () => tookMs(unitOfWork)))
      const { ms, slices } = worked(contacts, round)
      return { units: ms / unit, slice: ms / unit / slices }
    })
    return { contacts, units: middle(runs.map((one) => one.units)), slice: middle(runs.map((one) => one.slice)) }
  })
  for (const { contacts, units, slice } of rows)
    console.log(`${contacts} contacts: ${units.toFixed(0)} units of work; ${slice.toPrecision(2)} a slice`)
  const [first, , third, last] = rows as [(typeof rows)[0], (typeof rows)[0], (typeof rows)[0], (typeof rows)[0]]
  expect(last.units / first.units).toBeLessThan(2 * (256 / 32))
  expect(third.units).toBeLessThan(300 / DESK_UNIT_MS)
  expect(third.slice).toBeLessThan(3)
})
