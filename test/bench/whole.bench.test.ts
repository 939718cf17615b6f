/**
 * Speed of what only the whole connector tells, on connectors of 32 to 256 unlike contacts, half of them with inductors:
 * as a ratio to a loop of a million complex multiply–adds timed beside it, and how it grows. Time of the processor: what
 * other programs did meanwhile does not count.
 */
import { expect, test } from 'vitest'
import { wholeOf } from '../../src/calc/connector/whole/whole.ts'
import { randomPlate } from '../support/random-plate.ts'
import { random } from '../support/seeded.ts'

const SIZES = [32, 64, 128, 256] as const
const RUNS = 6
const STEPS = 1_000_000

/** z ← z·q + c, |q| < 1, a million times. The result is returned so that nothing can be left out. */
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

function timed(job: () => number): number {
  const from = process.cpuUsage()
  if (!(job() > 0)) throw new Error('nothing was calculated')
  const { user, system } = process.cpuUsage(from)
  return (user + system) / 1e3
}

/** Findings of one connector, and the steps it was left between. */
function worked(contacts: number, round: number): { readonly ms: number; readonly slices: number } {
  const plate = randomPlate(random(1000 * round + contacts), contacts)
  let slices = 0
  const ms = timed(() => {
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
  for (let i = 0; i < 5; i++) timed(calibration)
  const million = Math.min(...Array.from({ length: 9 }, () => timed(calibration)))
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
  // a million steps take 2 ms on a desk: 300 ms are 150 of them
  expect(third.ms / million).toBeLessThan(150)
  expect(third.slice / million).toBeLessThan(3)
})
