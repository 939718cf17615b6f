import { describe, expect, it } from 'vitest'
import { spread, wrapLabel } from '../../src/ui/parts/spread.ts'
import fc from '../support/property.ts'

describe('spreading labels', () => {
  it('leaves labels alone that do not touch', () => {
    expect(
      spread(
        [
          { at: 150, size: 20 },
          { at: 40, size: 30 },
        ],
        0,
        300,
      ),
    ).toEqual([150, 40])
  })

  it('moves a pair that collides by the same share each way', () => {
    expect(
      spread(
        [
          { at: 101, size: 22 },
          { at: 99, size: 22 },
        ],
        0,
        300,
      ),
    ).toEqual([111, 89])
  })

  it('never lets two overlap and stays inside whenever all fit', () => {
    const label = fc.record({
      at: fc.double({ min: -50, max: 450, noNaN: true }),
      size: fc.integer({ min: 4, max: 48 }),
    })
    fc.assert(
      fc.property(fc.array(label, { minLength: 1, maxLength: 8 }), (wanted) => {
        const centres = spread(wanted, 10, 410)
        const boxes = wanted
          .map(({ size }, index) => ({ low: (centres[index] ?? 0) - size / 2, high: (centres[index] ?? 0) + size / 2 }))
          .sort((a, b) => a.low - b.low)
        expect(boxes[0]?.low).toBeGreaterThanOrEqual(10 - 1e-6)
        expect(boxes.at(-1)?.high).toBeLessThanOrEqual(410 + 1e-6)
        for (const [index, box] of boxes.slice(1).entries()) {
          expect(box.low).toBeGreaterThanOrEqual((boxes[index]?.high ?? 0) - 1e-6)
        }
      }),
    )
  })

  it('keeps the order of the places', () => {
    const centres = spread(
      [
        { at: 70, size: 30 },
        { at: 71, size: 30 },
        { at: 69, size: 30 },
      ],
      0,
      200,
    )
    expect([...centres].sort((a, b) => a - b)).toEqual([centres[2], centres[0], centres[1]])
  })

  it('breaks words into lines and leaves a long word whole', () => {
    expect(wrapLabel('what rings up behind the filter', 12)).toEqual(['what rings', 'up behind', 'the filter'])
    expect(wrapLabel('overvoltagetransient peak', 8)).toEqual(['overvoltagetransient', 'peak'])
  })
})
