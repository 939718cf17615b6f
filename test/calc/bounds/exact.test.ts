/** A resonance narrower than any grid, found by its roots. Truth: the chain matrix itself, on either side of the root. */
import { expect, test } from 'vitest'
import { leastMarkedF } from '../../../src/calc/bounds/least-marked.ts'
import { marginAt } from '../../../src/calc/bounds/surroundings.ts'
import { boxesOf, densest } from './dense.ts'
import { scanLeast } from './scan.ts'

test('finds the resonance of a lossless Pi that the scan steps over', () => {
  // 2.10 µH ahead of two capacitors of 2.97 nF and 611 nH at 331 MHz: the dip is a ten-thousandth wide.
  const around = {
    topology: 'PI' as const,
    needs: [{ hz: 331.131e6, db: 3 }],
    sources: [{ ohm: 0, seriesH: 2.10378e-6 }],
    load: { ohm: 23_878.1, parallelF: 81.2831e-9, parallelH: 7.36207e-6 },
    esrOhm: 0,
    eslH: 80.7235e-12,
    bondOhm: 0,
    bondH: 0,
    dcrOhm: 3.2961e-3,
    inductancesH: [610.942e-9],
  }
  const exact = leastMarkedF(around, { least: 1, most: 1 })
  const scanned = scanLeast(around)
  if (exact.is !== 'found' || scanned.is !== 'found') throw new Error(`${exact.is}, ${scanned.is}`)
  expect(exact.marked / scanned.farads).toBeGreaterThan(1000)
  expect(marginAt(around, exact.marked * (1 - 1e-9)).db).toBeLessThan(0)
  expect(exact.holes.length).toBeGreaterThan(0)
})

test('proves a Pi whose box gives way inside, going down from the point that was found there', () => {
  const need = { hz: 36_500, db: 3.79 }
  const source = { ohm: 113, seriesH: 2.13e-6 }
  const around = {
    topology: 'PI' as const,
    needs: [need],
    sources: [source],
    load: { ohm: 20.1, parallelF: 58.1e-9, parallelH: Number.POSITIVE_INFINITY },
    esrOhm: 3.3e-3,
    eslH: 4.98e-9,
    bondOhm: 53.5e-3,
    bondH: 35.1e-12,
    dcrOhm: 0,
    inductancesH: [3.36e-6, 6.72e-6],
  }
  const shares = { least: 0.5, most: 1.5 }
  const found = leastMarkedF(around, shares)
  if (found.is !== 'found') throw new Error(found.is)
  expect(found.isProved).toBe(true)
  const excessDb = (marked: number) =>
    Math.min(
      ...boxesOf(around, shares, marked).map((box) =>
        densest({ around, need, source }, box, { draws: 100, starts: 2, seed: 1 }),
      ),
    ) - need.db
  // by the nodal solver: a little less is short somewhere, that much and more nowhere
  expect(excessDb(found.marked * 0.99)).toBeLessThan(0)
  for (const more of [1.0001, 1.1, 3]) expect(excessDb(found.marked * more)).toBeGreaterThan(-0.005)
})
