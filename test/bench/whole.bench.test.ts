/**
 * Speed of what only the whole connector tells, on connectors of 32 to 256 unlike contacts, half of them with inductors:
 * in units of work timed beside it, and how it grows.
 */
import { expect, test } from 'vitest'
import { wholeOf } from '../../src/calc/connector/whole/whole.ts'
import { randomPlate } from '../support/random-plate.ts'
import { random } from '../support/seeded.ts'
import { DESK_UNIT_MS, least, tookMs, unitOfWork } from './unit.ts'

const SIZES = [32, 64, 128, 256] as const
const RUNS = 6
const WARM_UP = 60
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
  for (let i = 0; i < WARM_UP; i++) tookMs(unitOfWork)
  worked(32, 99)
  const units: number[] = []
  const rows = SIZES.map((contacts) => {
    const runs = Array.from({ length: RUNS }, (_, round) => {
      for (let i = 0; i < UNITS; i++) units.push(tookMs(unitOfWork))
      return worked(contacts, round)
    })
    const ms = middle(runs.map((one) => one.ms))
    return { contacts, ms, slice: middle(runs.map((one) => one.ms / one.slices)) }
  })
  const unit = least(units)
  for (const { contacts, ms, slice } of rows)
    console.log(
      `${contacts} contacts: ${ms.toFixed(1)} ms, ${(ms / unit).toFixed(0)} units of work; ${slice.toFixed(2)} ms a slice`,
    )
  const [first, , third, last] = rows as [(typeof rows)[0], (typeof rows)[0], (typeof rows)[0], (typeof rows)[0]]
  expect(last.ms / first.ms).toBeLessThan(2 * (256 / 32))
  expect(third.ms / unit).toBeLessThan(300 / DESK_UNIT_MS)
  expect(third.slice / unit).toBeLessThan(3)
})
