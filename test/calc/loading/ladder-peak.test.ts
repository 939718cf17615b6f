/** The gain of a ladder into a high impedance and where it is: against the closed form of a section of second order. */
import { expect, test } from 'vitest'
import { IDEAL_COIL, ladderPeak } from '../../../src/calc/loading/ladder.ts'

test.each([0.2, 1, 5])(
  '10 Ω, 1 µH and 1 nF amplify most where ω² = 1/LC − R²/2L², looked for around %s times that',
  (times) => {
    const [sourceOhm, henries, farads] = [10, 1e-6, 1e-9]
    const w = Math.sqrt(1 / (henries * farads) - sourceOhm ** 2 / (2 * henries ** 2))
    const hz = w / (2 * Math.PI)
    const gainDb = -20 * Math.log10(Math.hypot(1 - w * w * henries * farads, w * sourceOhm * farads))
    const ladder = {
      elements: [{ henries, ...IDEAL_COIL }, { farads }],
      sourceOhm,
      loadOhm: Number.POSITIVE_INFINITY,
    }
    const found = ladderPeak(ladder, times * hz)
    // on a grid of 24 points a decade: within half a step of it, and never more than there is
    expect(Math.abs(Math.log10(found.hz / hz))).toBeLessThanOrEqual(0.5 / 24 + 1e-9)
    expect(found.gainDb).toBeLessThanOrEqual(gainDb + 1e-9)
    expect(found.gainDb).toBeGreaterThan(gainDb - 1)
  },
)
