/**
 * The least capacitance is the one above the last hole: every larger one meets the need as well. Looked for on a grid ten
 * times finer than the search itself uses, with leads, bonds and reactive ends that resonate.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { worstInBox } from '../../../src/calc/bounds/box.ts'
import { leastMarkedF } from '../../../src/calc/bounds/least-marked.ts'
import { marginAt, type Surroundings } from '../../../src/calc/bounds/surroundings.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { logRange } from './log-range.ts'

/** A part that is what is marked on it; only the inductor has a tolerance. */
const EXACT = { least: 1, most: 1 }
const SEED = 27_182
const RUNS = 150
const POINTS_PER_DECADE = 320
const SMALLEST_LOG10 = -15

const maybe = (some: fc.Arbitrary<number>) => fc.oneof(fc.constant(0), some)

const surroundings: fc.Arbitrary<Surroundings> = fc
  .record({
    topology: fc.constantFrom<Topology>('C', 'LC', 'CL', 'PI', 'T'),
    hz: fc.array(logRange(1e4, 1e9), { minLength: 1, maxLength: 2 }),
    db: fc.oneof(fc.integer({ min: 1, max: 80 }), fc.constantFrom(0.1, 1, 3)),
    source: fc.record({ ohm: logRange(1e-3, 1e4), seriesH: maybe(logRange(1e-8, 1e-4)) }),
    load: fc.record({
      ohm: logRange(1, 1e6),
      parallelF: maybe(logRange(1e-12, 1e-7)),
      parallelH: fc.oneof(fc.constant(Number.POSITIVE_INFINITY), logRange(1e-7, 1e-3)),
    }),
    esrOhm: maybe(logRange(1e-4, 0.1)),
    eslH: maybe(logRange(1e-11, 1e-8)),
    bondOhm: maybe(logRange(1e-4, 0.1)),
    bondH: maybe(logRange(1e-11, 2e-8)),
    inductanceH: logRange(2e-8, 1e-4),
    crossF: maybe(logRange(1e-12, 1e-8)).map((farads) => ({ least: farads, most: farads })),
  })
  .map(({ hz, db, source, inductanceH, ...rest }) => ({
    ...rest,
    needs: hz.map((f) => ({ hz: f, db })),
    sources: [source],
    inductancesH: [inductanceH, 1.5 * inductanceH],
  }))

it(`no capacitor above the least falls below the need again, seed ${SEED}`, { timeout: 60_000 }, () => {
  let [found, holed] = [0, 0]
  for (const around of fc.sample(surroundings, { seed: SEED, numRuns: RUNS })) {
    const least = leastMarkedF(around, EXACT)
    if (least.is !== 'found') continue
    found++
    if (least.holes.length > 0) holed++
    const from = Math.log10(least.marked)
    expect(from).toBeGreaterThan(SMALLEST_LOG10)
    const short: number[] = []
    for (let at = from; at <= 0; at += 1 / POINTS_PER_DECADE) {
      const { db } = marginAt(around, 10 ** at)
      if (db < -1e-6) short.push(10 ** at)
    }
    expect(short, JSON.stringify(around)).toEqual([])
    // And just below it the need is not met: the least is no larger than it has to be.
    expect(worstInBox(around, EXACT, least.marked * (1 - 1e-6)).db).toBeLessThan(0)
  }
  expect(found).toBeGreaterThan(RUNS / 3)
  expect(holed).toBeGreaterThan(3)
})
