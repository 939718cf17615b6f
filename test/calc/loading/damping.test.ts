/** Least damping of a coil with a capacitance over the whole box of their tolerances, against a dense search. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dampingRatio, type LcBox, leastDamped } from '../../../src/calc/loading/inductor.ts'

const least = (box: LcBox): number => dampingRatio(leastDamped(box) ?? { ...box, henries: 0, farads: 0 }) ?? Number.NaN

/** 41 by 41 points, evenly on a log scale. */
function searched({ henries, farads, sourceOhm, loadOhm }: LcBox): number {
  const steps = Array.from({ length: 41 }, (_, i) => i / 40)
  const at = (span: { least: number; most: number }, t: number) => span.least * (span.most / span.least) ** t
  return Math.min(
    ...steps.flatMap((t) =>
      steps.map((u) => {
        const h = at(henries, t)
        const f = at(farads, u)
        // ζ = (L/R + C·Rp)/(2·√(L·C·Rl/R)), R = Rs + Rl: written out here once more
        const loop = sourceOhm + loadOhm
        return (h / loop + (f * sourceOhm * loadOhm) / loop) / (2 * Math.sqrt((h * f * loadOhm) / loop))
      }),
    ),
  )
}

describe('least damping', () => {
  it('of 230 Ω within ±20 % between 50 and 200 Ω is 0.539, at the corner nearest to 100 Ω, not 0.709 at the other', () => {
    const box = { sourceOhm: 50, loadOhm: 200 }
    const henries = { least: 0.8 * 230e-9, most: 1.2 * 230e-9 }
    const farads = { least: 0.8 * (1e-9 / 230), most: 1.2 * (1e-9 / 230) }
    expect(least({ ...box, henries, farads })).toBeCloseTo(0.539, 3)
    const other = { henries: henries.most, farads: farads.least }
    expect(dampingRatio({ ...box, ...other })).toBeCloseTo(0.709, 3)
  })

  it('lies inside the box where that contains √(Rs·Rl)', () => {
    const henries = { least: 50e-9, most: 200e-9 }
    const farads = { least: 5e-12, most: 20e-12 }
    // At z = √(Rs·Rl) = 100 Ω: 2·10⁴/(200·√(5·10⁴)) = 1/√5
    expect(least({ sourceOhm: 50, loadOhm: 200, henries, farads })).toBeCloseTo(1 / Math.sqrt(5), 9)
  })

  it('is what a dense search finds (seed 70700)', () => {
    const size = (min: number, max: number) => fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true })
    const span = (min: number, max: number) =>
      fc.tuple(size(min, max), fc.double({ min: 1, max: 3, noNaN: true })).map(([log, ratio]) => ({
        least: Math.exp(log),
        most: ratio * Math.exp(log),
      }))
    fc.assert(
      fc.property(span(1e-9, 1e-3), span(1e-12, 1e-6), size(1, 1e4), size(1, 1e6), (henries, farads, rs, rl) => {
        const box = { henries, farads, sourceOhm: Math.exp(rs), loadOhm: Math.exp(rl) }
        expect(least(box)).toBeLessThanOrEqual(searched(box) * (1 + 1e-9))
        expect(least(box)).toBeGreaterThan(searched(box) * 0.99)
      }),
      { seed: 70700, numRuns: 300 },
    )
  })
})
