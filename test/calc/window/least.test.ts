/** Least capacitance against closed forms, resonances and limits. Closed forms: shunt C, LC and bond floor (derived, derived, ngspice F09). */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { worstInBox } from '../../../src/calc/bounds/box.ts'
import { type LeastMarked, leastMarkedF, leastMarkedH } from '../../../src/calc/bounds/least-marked.ts'
import { marginAt, type Surroundings } from '../../../src/calc/bounds/surroundings.ts'

const SEED = 429_1553

function between(rs: number, rl: number, hz: number, db: number, more: Partial<Surroundings> = {}): Surroundings {
  return {
    topology: 'C',
    needs: [{ hz, db }],
    sources: [{ ohm: rs, seriesH: 0 }],
    load: { ohm: rl, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
    esrOhm: 0,
    eslH: 0,
    bondOhm: 0,
    bondH: 0,
    inductancesH: [1e-6],
    ...more,
  }
}

/** A part that is what is marked on it. */
const EXACT = { least: 1, most: 1 }
const leastCapacitance = (around: Surroundings): LeastMarked => leastMarkedF(around, EXACT)

/** C = √(10^(A/10) − 1) / (ω·Rp). */
function shuntClosedF(rs: number, rl: number, hz: number, db: number): number {
  return Math.sqrt(10 ** (db / 10) - 1) / (2 * Math.PI * hz * ((rs * rl) / (rs + rl)))
}

const ends = fc.tuple(fc.double({ min: 0.3, max: 3000, noNaN: true }), fc.double({ min: 0.3, max: 3000, noNaN: true }))
const noise = fc.tuple(fc.double({ min: 4, max: 8.5, noNaN: true }), fc.double({ min: 0.5, max: 70, noNaN: true }))

describe('a single capacitor', () => {
  test('meets its closed form for any ends, frequency and need', () => {
    fc.assert(
      fc.property(ends, noise, ([rs, rl], [logHz, db]) => {
        const hz = 10 ** logHz
        const expected = shuntClosedF(rs, rl, hz, db)
        fc.pre(expected > 1e-14 && expected < 0.5)
        const least = leastCapacitance(between(rs, rl, hz, db))
        expect(least.is).toBe('found')
        if (least.is === 'found') expect(Math.abs(least.marked / expected - 1)).toBeLessThan(2e-9)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('is governed by the hardest of several frequencies and the lowest of several sources', () => {
    const around = between(50, 8000, 2e6, 40, {
      needs: [
        { hz: 2e6, db: 22 },
        { hz: 12e6, db: 41 },
      ],
      sources: [10, 150, 1].map((ohm) => ({ ohm, seriesH: 0 })),
    })
    const least = leastCapacitance(around)
    const expected = Math.max(shuntClosedF(1, 8000, 2e6, 22), shuntClosedF(1, 8000, 12e6, 41))
    if (least.is !== 'found') throw new Error(least.is)
    expect(Math.abs(least.marked / expected - 1)).toBeLessThan(2e-9)
    expect(least.at.source.ohm).toBe(1)
  })

  test('never meets 40 dB over a 5 nH bond at 100 MHz: 18.085 dB is the floor of the table', () => {
    const least = leastCapacitance(between(50, 50, 100e6, 40, { bondOhm: 2.5e-3, bondH: 5e-9 }))
    if (least.is !== 'never') throw new Error(least.is)
    expect(Math.abs(least.at.lossDb - 18.085)).toBeLessThan(6e-4)
  })

  test('with lead inductance is found above the last hole, never at a lucky resonance', () => {
    // 10 nH leads resonate with 1 nF at 50.3 MHz: the loss there is deep, then falls with more capacitance to the lead floor.
    const around = between(50, 50, 50.329e6, 30, { eslH: 10e-9, esrOhm: 0.1 })
    const least = leastCapacitance(around)
    const floorDb =
      20 *
      Math.log10(Math.hypot(1 + (25 * 0.1) / (0.1 ** 2 + 3.16226 ** 2), (25 * 3.16226) / (0.1 ** 2 + 3.16226 ** 2)))
    expect(floorDb).toBeLessThan(30)
    expect(marginAt(around, 1e-9).db).toBeGreaterThan(0)
    expect(least.is).toBe('never')
  })

  test('needs nothing for a need of 0 dB', () => {
    expect(leastCapacitance(between(50, 75, 3e6, 0)).is).toBe('none-needed')
  })
})

describe('with an inductor', () => {
  /** |1 − ω²LC·RL/S + jω(L/S + C·Rp)| = T solved for the larger C. */
  function lcClosedF(rs: number, rl: number, hz: number, db: number, l: number): number {
    const w = 2 * Math.PI * hz
    const s = rs + rl
    const p = (w * w * l * rl) / s
    const q = (w * rs * rl) / s
    const r = (w * l) / s
    const a = p * p + q * q
    const b = 2 * (q * r - p)
    const c = 1 + r * r - 10 ** (db / 10)
    return (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a)
  }

  test('LC stands above its resonance: the closed form of the larger root', () => {
    for (const [rs, rl, hz, db, l] of [
      [0.1, 100, 50.329e3, 10, 10e-6],
      [5, 1000, 3e6, 17, 2.2e-6],
      [50, 50, 150e3, 34.5361, 100e-6],
    ] as const) {
      const least = leastCapacitance(between(rs, rl, hz, db, { topology: 'LC', inductancesH: [l] }))
      if (least.is !== 'found') throw new Error(least.is)
      expect(Math.abs(least.marked / lcClosedF(rs, rl, hz, db, l) - 1)).toBeLessThan(2e-9)
    }
  })

  test('115 V lead, 34.5361 dB at 150 kHz: LC 100 µH needs 1.06880 µF, 47 µH needs 1.70373 µF (worked example 5.9)', () => {
    for (const [l, c] of [
      [100e-6, 1.0688e-6],
      [47e-6, 1.70373e-6],
    ] as const) {
      const least = leastCapacitance(between(50, 50, 150e3, 34.5361, { topology: 'LC', inductancesH: [l] }))
      if (least.is !== 'found') throw new Error(least.is)
      expect(Math.abs(least.marked / c - 1)).toBeLessThan(5e-6)
    }
  })

  test('and the same lead needs 5.6553 mH with a series inductor alone', () => {
    const least = leastMarkedH(between(50, 50, 150e3, 34.5361, { topology: 'L' }), EXACT)
    if (least.is !== 'found') throw new Error(least.is)
    expect(Math.abs(least.marked / 5.6553e-3 - 1)).toBeLessThan(6e-6)
  })

  test('LC from source to load is CL from load to source', () => {
    fc.assert(
      fc.property(ends, noise, ([rs, rl], [logHz, db]) => {
        const hz = 10 ** logHz
        const one = leastCapacitance(between(rs, rl, hz, db, { topology: 'LC' }))
        const other = leastCapacitance(between(rl, rs, hz, db, { topology: 'CL' }))
        expect(other.is).toBe(one.is)
        if (one.is === 'found' && other.is === 'found')
          expect(Math.abs(one.marked / other.marked - 1)).toBeLessThan(1e-8)
      }),
      { seed: SEED, numRuns: 40 },
    )
  })

  test('every larger capacitor also meets the need, at every inductor corner', () => {
    fc.assert(
      fc.property(
        ends,
        noise,
        fc.constantFrom('LC', 'CL', 'PI', 'T', 'C' as const),
        ([rs, rl], [logHz, db], topology) => {
          const around = between(rs, rl, 10 ** logHz, db, {
            topology,
            inductancesH: [1.3e-6, 2.1e-6],
            eslH: 0.3e-9,
            bondH: 0.2e-9,
          })
          const least = leastCapacitance(around)
          if (least.is !== 'found') return
          for (let decade = 0; decade <= 3; decade += 0.037) {
            const c = least.marked * 10 ** decade
            if (c <= 1) expect(marginAt(around, c).db).toBeGreaterThan(-1e-8)
          }
          expect(worstInBox(around, EXACT, least.marked * (1 - 1e-6)).db).toBeLessThan(0)
        },
      ),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('a resonance that loses the need again is drawn as a hole below the least', () => {
    // |N| = 1.80 without a capacitor, 1.50 at the resonance of 239 µH with 106 pF: a need of 4.1 dB (1.60) is lost in between.
    const around = between(1, 1000, 1e6, 4.1, { topology: 'LC', inductancesH: [239e-6] })
    const least = leastCapacitance(around)
    if (least.is !== 'found') throw new Error(least.is)
    for (const [from, to] of least.holes) {
      expect(from).toBeLessThan(to)
      expect(to).toBeLessThanOrEqual(least.marked * (1 + 1e-6))
      expect(marginAt(around, Math.sqrt(from * to)).db).toBeLessThan(0)
    }
    expect(least.holes.length).toBeGreaterThan(0)
  })
})

test('more need never lowers the least', () => {
  fc.assert(
    fc.property(ends, noise, fc.double({ min: 0.1, max: 20, noNaN: true }), ([rs, rl], [logHz, db], more) => {
      const one = leastCapacitance(between(rs, rl, 10 ** logHz, db, { topology: 'PI' }))
      const two = leastCapacitance(between(rs, rl, 10 ** logHz, db + more, { topology: 'PI' }))
      if (one.is === 'found' && two.is === 'found') expect(two.marked).toBeGreaterThanOrEqual(one.marked * (1 - 1e-8))
      if (one.is === 'never') expect(two.is).toBe('never')
    }),
    { seed: SEED, numRuns: 60 },
  )
})
