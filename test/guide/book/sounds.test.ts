/**
 * The sounds of the book: one for every signature, and each with the pitch or the rhythm its rule in the reference gives.
 * Expected figures are worked out here from the rules (f = P·N/120 and six humps; sparks = rpm/60 · cylinders/2).
 */
import { describe, expect, test } from 'vitest'
import { EXAMPLE } from '../../../src/guide/book/sounds/example.ts'
import { DRAWN_DB, pictureOf, strongestHz } from '../../../src/guide/book/sounds/picture.ts'
import { SOUNDS, soundById } from '../../../src/guide/book/sounds/sound-list.ts'
import { pages } from '../../../src/guide/book/sounds/sounds.ts'
import { render, type Sound } from '../../../src/guide/book/sounds/synthesis.ts'
import { NOISE_SIGNATURES } from '../../../src/reference/noise-signatures.ts'

const RATE_HZ = 24_000
const sound = (id: string): Sound => {
  const found = soundById(id)
  if (found === undefined) throw new RangeError(id)
  return found
}

/** Loud moments: steps of 1 ms above half of the loudest, counted where they begin. */
function knocks(one: Sound, fromSec: number, toSec: number, apartSec: number): number {
  const samples = render(one, RATE_HZ)
  let count = 0
  let last = Number.NEGATIVE_INFINITY
  for (let i = Math.round(fromSec * RATE_HZ); i < toSec * RATE_HZ; i++) {
    if (Math.abs(samples[i] ?? 0) < 0.2) continue
    if (i / RATE_HZ - last > apartSec) count++
    last = i / RATE_HZ
  }
  return count
}

test('every signature has one sound and one card, and no sound is without a signature', () => {
  expect(SOUNDS.map(({ id }) => id).sort()).toEqual(NOISE_SIGNATURES.map(({ id }) => id).sort())
  expect(pages().map(({ id }) => id)).toEqual(NOISE_SIGNATURES.map(({ id }) => `sound-${id}`))
})

describe.each(SOUNDS)('$id', (one) => {
  test('is a sound: the same each time, loud enough, never above full scale', () => {
    const samples = render(one, RATE_HZ)
    expect(samples.length).toBe(Math.round(one.seconds * RATE_HZ))
    expect(samples.every((value) => Math.abs(value) <= 0.501)).toBe(true)
    expect(Math.max(...samples.map(Math.abs))).toBeCloseTo(0.5, 3)
    expect(render(one, RATE_HZ)).toEqual(samples)
  })

  test('has a picture with a loudest column and a rhythm', () => {
    const { belowDb, rhythm } = pictureOf(one)
    expect(Math.min(...belowDb)).toBe(0)
    expect(belowDb.every((db) => db >= 0 && db <= DRAWN_DB)).toBe(true)
    expect(Math.max(...rhythm)).toBeGreaterThan(0)
  })

  test('its card plays it, and tells it from two others by a test each', () => {
    const page = pages().find(({ id }) => id === `sound-${one.id}`)
    expect(page?.blocks.some((block) => block.is === 'sound' && block.sound === one.id)).toBe(true)
    const others = (page?.related ?? []).flatMap((link) =>
      'page' in link && link.page.startsWith('sound-') ? [link.page] : [],
    )
    expect(new Set(others).size).toBeGreaterThanOrEqual(2)
    expect(others).not.toContain(page?.id)
  })
})

test.each([
  ['leakage-400', 400, 0],
  ['rectifier-400', 6 * 400, 0],
  ['ground-power', 2 * 50, 0],
  ['clock', 1000, 0],
] as const)('%s is heard at %d Hz', (id, hz, fromSec) => {
  expect(strongestHz(sound(id), fromSec)).toBeCloseTo(hz, 0)
})

test('the whine of the alternator climbs from idle to cruise as P·N/120, six humps', () => {
  const [idle, cruise] = EXAMPLE.rpm
  const at = (rpm: number) => ((2 * EXAMPLE.polePairs * rpm * EXAMPLE.driveRatio) / 120) * 6
  const start = strongestHz(sound('alternator-whine'), 0) ?? Number.NaN
  expect(start).toBeGreaterThan(at(idle))
  expect(start).toBeLessThan(at(idle) + (at(cruise) - at(idle)) / 4)
  const peak = strongestHz(sound('alternator-whine'), 2.6) ?? Number.NaN
  expect(peak).toBeGreaterThan(at(cruise) * 0.85)
  expect(peak).toBeLessThanOrEqual(at(cruise) * 1.001)
})

test('the engine pops rpm/60 · cylinders/2 times a second: 40 at idle, 80 at cruise', () => {
  const early = knocks(sound('ignition'), 0, 0.5, 0.004) / 0.5
  const late = knocks(sound('ignition'), 2.75, 3.25, 0.004) / 0.5
  expect(early).toBeGreaterThan(40)
  expect(early).toBeLessThan(50)
  expect(late).toBeGreaterThan(72)
  expect(late).toBeLessThanOrEqual(80)
})

test('a strobe ticks once a flash, a radar buzzes once a turn', () => {
  expect(knocks(sound('strobe'), 0.5, 2.3, 0.5)).toBe(1)
  expect(knocks(sound('ground-transmitter'), 0, 4, 0.5)).toBe(2)
})

test('static grows from single ticks to a roar', () => {
  const { rhythm } = pictureOf(sound('precipitation-static'))
  const loudSteps = (part: readonly number[]) => part.filter((level) => level > 0.1).length / part.length
  expect(loudSteps(rhythm.slice(0, rhythm.length / 4))).toBeLessThan(0.25)
  expect(loudSteps(rhythm.slice(-rhythm.length / 4))).toBe(1)
})

test('a raised floor holds no tone: no column stands out of its neighbours by 12 dB', () => {
  const { belowDb } = pictureOf(sound('led-lighting'))
  const inBand = belowDb.slice(28, 50)
  for (let i = 1; i + 1 < inBand.length; i++)
    expect(Math.min(inBand[i - 1] ?? 0, inBand[i + 1] ?? 0) - (inBand[i] ?? 0)).toBeLessThan(12)
})
