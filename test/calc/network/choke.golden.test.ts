/** The common-mode choke against a nodal solution of its two coupled windings, and against what must hold of any. */
import { describe, expect, it } from 'vitest'
import {
  type Choke,
  chokeConversionRatio,
  chokePerLegH,
  isPossible,
  worstChokeConversion,
} from '../../../src/calc/network/choke.ts'
import golden from '../../golden/choke.json' with { type: 'json' }
import { CHOKE_FIGURES } from '../../support/choke-figures.ts'
import { testRows } from '../../support/golden-rows.ts'

const choke: Choke = { windingH: 51e-6, leakageH: 150e-9, windingOhm: 0.3, acrossF: 0, mismatchFrac: 0.02 }
const ends = { sourceOhm: 100, loadOhm: 100 }

describe('common-mode choke', () => {
  testRows(golden.rows, CHOKE_FIGURES)

  it('shows each leg both windings in common mode, half the leakage in differential mode, itself around one wire', () => {
    // M = L − leakage/2 = 50.925 µH: L + M, L − M, L.
    expect(chokePerLegH(choke, 'common')).toBeCloseTo(101.925e-6, 12)
    expect(chokePerLegH(choke, 'differential')).toBeCloseTo(75e-9, 15)
    expect(chokePerLegH(choke, 'one-wire')).toBe(51e-6)
  })

  it('never converts more than half the mismatch where the windings have no capacitance', () => {
    const worst = worstChokeConversion(choke, ends)
    expect(worst).toBeLessThan(0.01)
    for (let decade = 2; decade < 10; decade += 1 / 64)
      expect(chokeConversionRatio(choke, ends, 10 ** decade)).toBeLessThanOrEqual(worst * (1 + 1e-12))
    expect(chokeConversionRatio({ ...choke, mismatchFrac: 0 }, ends, 1e6)).toBe(0)
    expect(chokeConversionRatio(choke, ends, 0)).toBe(0)
  })

  it('knows which windings cannot be: coupled by more than all, or against each other', () => {
    expect(isPossible(choke)).toBe(true)
    // Windings that differ by 20 % have k = 1 at a mutual inductance of √(1.1·0.9)·L: 0.5 % below L.
    expect(isPossible({ ...choke, mismatchFrac: 0.2 })).toBe(false)
    expect(isPossible({ ...choke, mismatchFrac: 0.2, leakageH: 0.0102 * 51e-6 })).toBe(true)
    expect(isPossible({ ...choke, leakageH: 103e-6 })).toBe(false)
  })
})
