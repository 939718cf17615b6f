/** A resonance narrower than any grid, found by its roots. Truth: the chain matrix itself, on either side of the root. */
import { expect, test } from 'vitest'
import { leastMarkedF } from '../../../src/calc/bounds/least-marked.ts'
import { marginAt } from '../../../src/calc/bounds/surroundings.ts'
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
