/**
 * Speed of what only the whole connector tells, on connectors of 32 to 256 unlike contacts, half of them with inductors:
 * as a ratio to a loop of a million complex multiply–adds timed beside it, and how it grows. Time of the processor: what
 * other programs did meanwhile does not count.
 */
import { expect, test } from 'vitest'
import { wholeOf } from '../../src/calc/connector/whole/whole.ts'
import { randomPlate } from '../support/random-plate.ts'
import { random } from '../support/seeded.ts'
import { calibration, cpuMs, DESK_UNIT_MS } from './unit.ts'

const SIZES = [32, 64, 128, 256] as const
const RUNS = 6

/** Findings of one connector, and the steps it was left between. */
function worked(contacts: number, round: number): { readonly ms: number; readonly slices: number } {
  const plate = randomPlate(random(1000 * round + contacts), contacts)
  let slices = 0
  const ms = cpuMs(() => {
    const running = wholeOf(plate.connector, plate.decided)
    for (;;) {
      const step = running.next()
      if (step.done) return expect(step.value.findings.length).toBeGreaterThan(0)
      slices++
    }
  })
  return { ms, slices }
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] as number

test('the whole connector grows no faster than its contacts, and is left often', { timeout: 300_000 }, () => {
  for (let i = 0; i < 5; i++) cpuMs(calibration)
  const million = Math.min(...Array.from({ length: 9 }, () => cpuMs(calibration)))
  worked(32, 99)
  const rows = SIZES.map((contacts) => {
    const runs = Array.from({ length: RUNS }, (_, round) => worked(contacts, round))
    const ms = middle(runs.map((one) => one.ms))
    return { contacts, ms, slice: middle(runs.map((one) => one.ms / one.slices)) }
  })
  for (const { contacts, ms, slice } of rows)
    console.log(
      `${contacts} contacts: ${ms.toFixed(1)} ms, ${(ms / million).toFixed(0)} times a million steps; ${slice.toFixed(2)} ms a slice`,
    )
  const [first, , third, last] = rows as [(typeof rows)[0], (typeof rows)[0], (typeof rows)[0], (typeof rows)[0]]
  expect(last.ms / first.ms).toBeLessThan(2 * (256 / 32))
  expect(third.ms / million).toBeLessThan(300 / DESK_UNIT_MS)
  expect(third.slice / million).toBeLessThan(3)
})
