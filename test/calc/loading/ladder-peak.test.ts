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

test.each([
  [2e-9, 330e-9, 23.5e-12],
  [1e-9, 10e-6, 47e-12],
  [1e-9, 33e-6, 22e-12],
  [4e-9, 1e-6, 1e-12],
] as const)(
  '%s F, a coil of %s H and %s F before an open end: C0/C1 where no current flows',
  (beforeF, henries, farads) => {
    // no current flows where ω² = (C0 + C1)/(L·C0·C1): there the load stands at C0/C1 times the source, however large that is
    const hz = Math.sqrt((beforeF + farads) / (henries * beforeF * farads)) / (2 * Math.PI)
    const ladder = {
      elements: [{ farads: beforeF }, { henries, ...IDEAL_COIL }, { farads }],
      sourceOhm: 60,
      loadOhm: Number.POSITIVE_INFINITY,
    }
    for (const times of [0.2, 0.93, 1, 1.04, 3]) {
      const found = ladderPeak(ladder, times * hz)
      expect(found.hz / hz).toBeCloseTo(1, 4)
      expect(found.gainDb).toBeCloseTo(20 * Math.log10(beforeF / farads), 2)
    }
  },
)
