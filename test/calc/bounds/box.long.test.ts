/**
 * The worst of a box against a dense search with another solver, and least marked values against parts drawn from the
 * boxes of every larger mark. Another seed: SEED=… npx vitest run --project long test/calc/bounds
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { worstInBox } from '../../../src/calc/bounds/box.ts'
import { leastMarkedF } from '../../../src/calc/bounds/least-marked.ts'
import type { Surroundings } from '../../../src/calc/bounds/surroundings.ts'
import { surroundingsOf, type Wanted, withModes } from '../../support/random-surroundings.ts'
import { logRange } from '../fuzz/log-range.ts'
import { boxesOf, densest, drawing, nodalDb, partsAt } from './dense.ts'

const SEED = Number(process.env['SEED'] ?? 97_531)
const RUNS = Number(process.env['RUNS'] ?? 1000)
const WITHIN_DB = 0.01
/** A resonance without loss: how deep exactly decides nothing, and the proof stops there. */
const DEEP_DB = -40

const shares = fc.constantFrom({ least: 0.57, most: 1.38 }, { least: 0.8, most: 1.2 }, { least: 0.95, most: 1.05 })
const wanted: Wanted = {
  topologies: ['C', 'LC', 'CL', 'PI', 'T'],
  needs: 1,
  sources: 1,
  coilRatio: 1.5,
  withNodes: true,
}
const casesOf = (around: fc.Arbitrary<Surroundings>, numRuns: number) =>
  fc.sample(fc.record({ around, shares, markedF: logRange(1e-12, 1e-6) }), { seed: SEED, numRuns })
const cases = casesOf(surroundingsOf(wanted), RUNS)
/** a fifth of them: with six parts each costs that much more */
const MODES = RUNS / 5
const choked = casesOf(withModes(wanted), MODES)

describe(`over ${RUNS} circuits, seed ${SEED}`, () => {
  it.each([
    ['', cases],
    [' with a choke and a line-to-line capacitor', choked],
  ])('the worst of a box%s is within 0.01 dB of a dense search, and is a point of the box', (_, all) => {
    const deeper: number[] = []
    for (const [i, { around, shares, markedF }] of all.entries()) {
      const [need, source] = [around.needs[0], around.sources[0]]
      if (!need || !source) throw new Error('nothing asked')
      const asked = { around, need, source }
      const worst = worstInBox(around, shares, markedF)
      const where = JSON.stringify({ around, shares, markedF })
      expect(Math.abs(nodalDb(asked, worst.parts) - worst.lossDb), where).toBeLessThan(1e-5)
      const dense = Math.min(
        ...boxesOf(around, shares, markedF).map((box) => densest(asked, box, { draws: 300, starts: 4, seed: i })),
      )
      expect(worst.lossDb, where).toBeLessThan(Math.max(DEEP_DB, dense) + WITHIN_DB)
      deeper.push(Math.max(DEEP_DB, dense) - Math.max(DEEP_DB, worst.lossDb))
    }
    // The dense search finds nearly every one of them itself.
    expect(deeper.filter((db) => db < WITHIN_DB).length).toBeGreaterThan(0.95 * all.length)
  })

  it('no part drawn from the box of a larger mark misses the need; just below the least one does', () => {
    const counted = { found: 0, never: 0, 'none-needed': 0, proved: 0, holed: 0 }
    for (const [i, { around, shares }] of cases.entries()) {
      const [need, source] = [around.needs[0], around.sources[0]]
      if (!need || !source) throw new Error('nothing asked')
      const asked = { around, need, source }
      const least = leastMarkedF(around, shares)
      const where = JSON.stringify({ around, shares, least })
      counted[least.is]++
      if (least.is === 'never') {
        expect(nodalDb(asked, least.at.parts), where).toBeLessThan(need.db)
        continue
      }
      if (least.isProved) counted.proved++
      const fromF = least.is === 'found' ? least.marked : 1e-15
      const next = drawing(i)
      for (let draw = 0; draw < 120; draw++) {
        const markedF = fromF * 10 ** (4 * next() ** 3)
        for (const box of boxesOf(around, shares, markedF)) {
          const parts = partsAt(box, Array.from({ length: 6 }, next))
          expect(nodalDb(asked, parts), where).toBeGreaterThan(need.db - WITHIN_DB)
        }
      }
      if (least.is !== 'found') continue
      if (least.holes.length > 0) counted.holed++
      const below = worstInBox(around, shares, least.marked * (1 - 1e-6))
      expect(nodalDb(asked, below.parts), where).toBeLessThan(need.db)
      for (const [from, to] of least.holes) {
        const inside = worstInBox(around, shares, Math.sqrt(from * to))
        expect(nodalDb(asked, inside.parts), where).toBeLessThan(need.db)
        expect(to).toBeLessThanOrEqual(least.marked * (1 + 1e-12))
      }
    }
    expect(counted.found).toBeGreaterThan(RUNS / 3)
    expect(counted.holed).toBeGreaterThan(RUNS / 100)
    expect(counted.proved).toBeGreaterThan(0.95 * (counted.found + counted['none-needed']))
  })
})
