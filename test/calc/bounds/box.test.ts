/** The box of a Pi whose resonance lies inside it, by hand-picked points of the nodal solver. */
import { describe, expect, test } from 'vitest'
import { heldInBox, isShortInBox, keepsInBox, worstInBox } from '../../../src/calc/bounds/box.ts'
import { leastMarkedF } from '../../../src/calc/bounds/least-marked.ts'
import { equalParts, type Surroundings } from '../../../src/calc/bounds/surroundings.ts'
import { type Asked, nodalDb } from './dense.ts'

const NEED = { hz: 318.8e3, db: 20 }
const SOURCE = { ohm: 1366, seriesH: 0 }
const AROUND: Surroundings = {
  topology: 'PI',
  needs: [NEED],
  sources: [SOURCE],
  load: { ohm: 1732, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
  esrOhm: 0,
  eslH: 0,
  bondOhm: 0,
  bondH: 0,
  inductancesH: [4.52e-6],
}
const asked: Asked = { around: AROUND, need: NEED, source: SOURCE }
const SHARES = { least: 0.8, most: 1.2 }
const MARKED_F = 124e-9
const at = (one: number, other: number) =>
  nodalDb(asked, { ...equalParts(AROUND, one * MARKED_F, 4.52e-6), shunt2F: other * MARKED_F })

test('2 × 124 nF ±20 % and 4.52 µH at 318.8 kHz: 29.6 dB at the corners, nothing where the box meets its resonance', () => {
  const corners = [at(0.8, 0.8), at(0.8, 1.2), at(1.2, 0.8), at(1.2, 1.2)]
  expect(Math.min(...corners)).toBeCloseTo(29.588, 3)
  // Equal pairs in steps of a tenth show 12.5 dB, in steps of a thousandth 0.07 dB: the dip is a three-hundredth wide.
  const tenths = [0.8, 0.9, 1, 1.1, 1.2].map((k) => at(k, k))
  expect(Math.min(...tenths)).toBeCloseTo(12.489, 3)
  const worst = worstInBox(AROUND, SHARES, MARKED_F)
  const { shunt1F, shunt2F } = worst.parts
  for (const farads of [shunt1F, shunt2F]) {
    expect(farads).toBeGreaterThanOrEqual(0.8 * MARKED_F)
    expect(farads).toBeLessThanOrEqual(1.2 * MARKED_F)
  }
  expect(Math.abs(nodalDb(asked, worst.parts) - worst.lossDb)).toBeLessThan(1e-6)
  // The loss along every ratio of the two, both on the resonance L·C1·C2/(C1 + C2) = 1/ω²: a ten-thousandth apart.
  const seriesF = 1 / ((2 * Math.PI * NEED.hz) ** 2 * 4.52e-6)
  let lowest = Number.POSITIVE_INFINITY
  for (let one = 0.8; one <= 1.2; one += 1e-4) {
    const other = 1 / (1 / seriesF - 1 / (one * MARKED_F)) / MARKED_F
    for (let k = -40; k <= 40; k++) {
      const near = other * (1 + k * 1e-4)
      if (near >= 0.8 && near <= 1.2) lowest = Math.min(lowest, at(one, near))
    }
  }
  expect(lowest).toBeLessThan(0)
  expect(Math.abs(worst.lossDb - lowest)).toBeLessThan(0.01)
})

test('the proof by itself refuses what every corner passes, and keeps a need where the nodal solver finds it met', () => {
  // 29.6 dB at the corners, about 0 dB where the box meets its resonance
  expect(keepsInBox(AROUND, SHARES, MARKED_F, 0)).toBe('short')
  expect(keepsInBox(AROUND, SHARES, MARKED_F, 19)).toBe('short')
  // far above the resonance the least pair is the worst
  const [large, least] = [10 * MARKED_F, at(8, 8)]
  expect(least).toBeGreaterThan(NEED.db)
  const needing = (db: number): Surroundings => ({ ...AROUND, needs: [{ ...NEED, db }] })
  expect(keepsInBox(needing(least - 1e-6), SHARES, large, 0)).toBe('keeps')
  expect(keepsInBox(needing(least + 1e-6), SHARES, large, 0)).toBe('short')
  expect(keepsInBox(needing(least + 0.5), SHARES, large, 0.5 + 1e-6)).toBe('keeps')
  expect(keepsInBox(needing(least + 0.5), SHARES, large, 0.5 - 1e-6)).toBe('short')
})

test('its least marked value stands above the resonance of every pair in the box', () => {
  const least = leastMarkedF(AROUND, SHARES)
  if (least.is !== 'found') throw new Error(least.is)
  expect(least.isProved).toBe(true)
  expect(worstInBox(AROUND, SHARES, least.marked).db).toBeGreaterThan(-1e-6)
  expect(worstInBox(AROUND, SHARES, least.marked * (1 - 1e-6)).db).toBeLessThan(0)
  // A value that every corner passes is refused: its box holds the resonance.
  expect(MARKED_F).toBeLessThan(least.marked)
  expect(least.holes.some(([from, to]) => from < MARKED_F && MARKED_F < to)).toBe(true)
})

test('a suppressor at its node earns nothing and can harm', () => {
  const choke = { ...AROUND, topology: 'T' as const, inductancesH: [0.27e-6, 0.405e-6] }
  const around = { ...choke, needs: [{ hz: 123e6, db: 20 }], sources: [{ ohm: 300, seriesH: 0 }] }
  const bare = worstInBox(around, SHARES, 5.7e-12).lossDb
  const span = { least: 0.3 * 62e-12, most: 62e-12, inBare: false }
  for (const node of ['sourceNodeF', 'loadNodeF'] as const) {
    const worst = worstInBox({ ...around, [node]: span }, SHARES, 5.7e-12).lossDb
    expect(worst).toBeLessThanOrEqual(bare + 1e-9)
  }
})

test('ends of the range: no source resistance, frequency 0, a need of 0 dB, a lead that resonates at the need', () => {
  const ideal = { ...AROUND, sources: [{ ohm: 0, seriesH: 0 }] }
  expect(leastMarkedF({ ...ideal, topology: 'C' }, SHARES).is).toBe('never')
  expect(leastMarkedF({ ...ideal, needs: [{ hz: 1e6, db: 0 }], topology: 'C' }, SHARES).is).toBe('none-needed')
  expect(leastMarkedF({ ...AROUND, needs: [{ hz: 0, db: 10 }] }, SHARES).is).toBe('never')
  expect(leastMarkedF({ ...AROUND, needs: [{ hz: 0, db: 0 }] }, SHARES).is).toBe('none-needed')
  expect(leastMarkedF({ ...AROUND, needs: [{ hz: 1e6, db: 0 }], topology: 'C' }, SHARES).is).toBe('none-needed')
  // ω²·C·ESL = 1 with 10 nF: deep there, but the lead lets larger parts fall to 20·log10|1 + Rp/(jωL)|, here 47.6 dB.
  const hz = 1 / (2 * Math.PI * Math.sqrt(10e-9 * 10e-9))
  const rp = (1366 * 1732) / (1366 + 1732)
  const floorDb = 10 * Math.log10(1 + (rp / (2 * Math.PI * hz * 10e-9)) ** 2)
  const lead = { ...AROUND, topology: 'C' as const, eslH: 10e-9 }
  expect(leastMarkedF({ ...lead, needs: [{ hz, db: floorDb - 0.01 }] }, SHARES).is).toBe('found')
  const over = leastMarkedF({ ...lead, needs: [{ hz, db: floorDb + 0.01 }] }, SHARES)
  if (over.is !== 'never') throw new Error(over.is)
  expect(Math.abs(over.at.lossDb - floorDb)).toBeLessThan(1e-3)
})

test('what no corner shows is found by the proof: existing capacitance inside its span loses the need', () => {
  const around: Surroundings = {
    ...AROUND,
    topology: 'LC',
    needs: [{ hz: 230.144e6, db: 2 }],
    sources: [{ ohm: 778.037, seriesH: 11.8032e-9 }],
    load: { ohm: 26.3027, parallelF: 20.893e-12, parallelH: Number.POSITIVE_INFINITY },
    eslH: 19.0985e-12,
    bondH: 27.4789e-12,
    inductancesH: [43.0527e-9, 64.57905e-9],
    sourceNodeF: { least: 0, most: 487.528e-12, inBare: true },
  }
  const shares = { least: 0.5, most: 1.5 }
  const least = leastMarkedF(around, shares)
  if (least.is !== 'found') throw new Error(least.is)
  const [need, source] = [around.needs[0], around.sources[0]]
  if (!need || !source) throw new Error('nothing asked')
  const parts = { ...least.at.parts, shunt1F: least.at.parts.shunt1F * (1 - 1e-4) }
  expect(nodalDb({ around, need, source }, parts)).toBeLessThan(need.db)
  expect(parts.sourceNodeF).toBeGreaterThan(1e-12)
  expect(parts.sourceNodeF).toBeLessThan(0.9 * 487.528e-12)
  expect(worstInBox(around, shares, least.marked).db).toBeGreaterThan(-1e-6)
})

describe('what a part earns', () => {
  /** 100 pF ±5 % from 50 Ω to 50 Ω, with a lead that resonates with it at 71.2 MHz. */
  const LEAD: Surroundings = {
    ...AROUND,
    topology: 'C',
    sources: [{ ohm: 50, seriesH: 0 }],
    load: { ohm: 50, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
    eslH: 50e-9,
    needs: [{ hz: 71.18e6, db: 10 }],
  }
  const EXACT = { least: 0.95, most: 1.05 }

  test('no yes where the lead carries it: |1 + 25/Z| of the capacitor alone is 3.5 dB at 71.18 MHz', () => {
    const ohm = 1 / (2 * Math.PI * 71.18e6 * 100e-12)
    expect(20 * Math.log10(Math.hypot(1, 25 / ohm))).toBeCloseTo(3.52, 2)
    expect(heldInBox([LEAD], EXACT, 100e-12)).toBe('carried')
    expect(heldInBox([{ ...LEAD, needs: [{ hz: 71.18e6, db: 3 }] }], EXACT, 100e-12)).toBe('kept')
    expect(heldInBox([{ ...LEAD, eslH: 0 }], EXACT, 100e-12)).toBe('short')
    // who asks only for what is short is told no more
    expect(isShortInBox([LEAD], EXACT, 100e-12)).toBe(false)
    expect(isShortInBox([{ ...LEAD, eslH: 0 }], EXACT, 100e-12)).toBe(true)
    expect(isShortInBox([LEAD, { ...LEAD, eslH: 0 }], EXACT, 100e-12)).toBe(true)
  })

  test('no yes where there are more parts than the proof takes, though the search finds none that is short', () => {
    const many: Surroundings = {
      ...AROUND,
      needs: [{ hz: 100e6, db: 20 }],
      sources: [{ ohm: 50, seriesH: 0 }],
      eslH: 1e-9,
      bondH: 1e-9,
      bondOhm: 2.5e-3,
      damper: { farads: { least: 9e-9, most: 11e-9 }, ohm: { least: 9, most: 11 } },
      crossF: { least: 1e-10, most: 1.2e-10 },
      sourceNodeF: { least: 0, most: 1e-10, inBare: true },
      loadNodeF: { least: 0, most: 1e-10, inBare: true },
    }
    expect(heldInBox([many], SHARES, MARKED_F)).toBe('unproved')
    expect(isShortInBox([many], SHARES, MARKED_F)).toBe(false)
    // without the two nodes the proof takes them all
    const { sourceNodeF: _, loadNodeF: __, ...fewer } = many
    expect(heldInBox([fewer], SHARES, MARKED_F)).toBe('kept')
    // the gravest of several decides
    expect(heldInBox([fewer, many], SHARES, MARKED_F)).toBe('unproved')
    expect(heldInBox([fewer, many, { ...fewer, needs: [{ hz: 100e6, db: 200 }] }], SHARES, MARKED_F)).toBe('short')
  })
})
