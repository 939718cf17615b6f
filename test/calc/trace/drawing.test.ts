import { describe, expect, it } from 'vitest'
import { measuredLoss } from '../../../src/calc/trace/compare.ts'
import { blocksOf, drawnBetween, rowAt } from '../../../src/calc/trace/decimate.ts'
import fc from '../../support/property.ts'

describe('a long trace as pixels', () => {
  it('shows the least and the most of every stretch, by counting', () => {
    const rows = 30_000
    const hz = Float64Array.from({ length: rows }, (_, i) => 1e3 * 1e4 ** (i / rows))
    fc.assert(
      fc.property(
        fc.infiniteStream(fc.double({ min: -50, max: 90, noNaN: true })),
        fc.double({ min: 1e3, max: 1e6, noNaN: true }),
        fc.double({ min: 2, max: 500, noNaN: true }),
        fc.integer({ min: 20, max: 900 }),
        (levels, fromHz, ratio, pixels) => {
          const db = Float64Array.from({ length: rows }, (_, i) =>
            i % 977 === 0 ? (levels.next().value as number) : 40,
          )
          const drawn = drawnBetween({ hz, db }, blocksOf(db), { fromHz, toHz: fromHz * ratio, pixels })
          const [first, last] = [rowAt(hz, fromHz), rowAt(hz, fromHz * ratio)]
          const inside = db.subarray(first, last)
          const shown = { least: drawn.least.subarray(0, drawn.count), most: drawn.most.subarray(0, drawn.count) }
          if (inside.length === 0) return
          expect(Math.min(...shown.least)).toBeLessThanOrEqual(Math.min(...inside))
          expect(Math.max(...shown.most)).toBeGreaterThanOrEqual(Math.max(...inside))
          const around = db.subarray(Math.max(0, first - 1), last + 1)
          expect(Math.min(...shown.least)).toBeGreaterThanOrEqual(Math.min(...around))
          expect(Math.max(...shown.most)).toBeLessThanOrEqual(Math.max(...around))
          expect(drawn.count).toBeLessThanOrEqual(2 * pixels + 3)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('keeps one row that sticks out of a million', () => {
    const hz = Float64Array.from({ length: 1_000_000 }, (_, i) => 1e6 + i)
    const db = new Float64Array(1_000_000).fill(10)
    db[123_457] = 99
    const { most, count } = drawnBetween({ hz, db }, blocksOf(db), { fromHz: 1e6, toHz: 2e6, pixels: 360 })
    expect(Math.max(...most.subarray(0, count))).toBe(99)
  })
})

describe('before and after', () => {
  const before = { hz: Float64Array.of(1e6, 2e6, 4e6), db: Float64Array.of(80, 90, 70), unit: 'dBµV' as const }

  it('is the measured insertion loss, straight between rows', () => {
    const after = { hz: Float64Array.of(1e6, 4e6), db: Float64Array.of(60, 40), unit: 'dBµV' as const }
    const loss = measuredLoss(before, after)
    if (!loss.ok) throw new Error(loss.message)
    expect([...loss.db]).toEqual([20, 40, 30].map((db) => expect.closeTo(db, 9)))
  })

  it('is in one unit: dBm of a 50 Ω receiver is dBµV less 107 dB', () => {
    const after = { hz: Float64Array.of(1e6, 4e6), db: Float64Array.of(-46.9897, -46.9897), unit: 'dBm' as const }
    const loss = measuredLoss(before, after)
    if (!loss.ok) throw new Error(loss.message)
    expect(loss.db[0]).toBeCloseTo(20, 3)
  })

  it.each([
    [{ ...before, unit: 'dBµV/m' as const }, 'measure both alike'],
    [{ ...before, unit: 'dBµA' as const }, 'measure both alike'],
    [{ ...before, hz: Float64Array.of(10e6, 20e6, 30e6) }, 'no frequency in common'],
  ])('case %#: refused in words', (after, sentence) => {
    const loss = measuredLoss(before, after)
    expect(loss.ok ? '' : loss.message).toContain(sentence)
  })
})
