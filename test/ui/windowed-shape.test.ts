import { describe, expect, it } from 'vitest'
import { drawnPieces } from '../../src/ui/parts/windowed-shape.ts'

const VIEW = 800
const known = new Map<number, number>()

describe('the pieces of a long list that are drawn', () => {
  it('are those seen and a screen in either direction, and the others keep their place', () => {
    for (let scrolled = 0; scrolled < 200_000; scrolled += 777) {
      const { from, to, abovePx, belowPx } = drawnPieces(125, known, 1600, { topPx: -scrolled, viewPx: VIEW })
      expect(abovePx).toBe(from * 1600)
      expect(belowPx).toBe((125 - to) * 1600)
      expect(abovePx).toBeLessThanOrEqual(Math.max(0, scrolled - VIEW))
      expect(to * 1600).toBeGreaterThanOrEqual(Math.min(200_000, scrolled + 2 * VIEW))
      expect(to - from).toBeLessThanOrEqual(3)
    }
  })

  it('takes each for as high as it was, and those never seen for as high as the others are', () => {
    const heights = new Map([
      [0, 1000],
      [1, 3000],
    ])
    const { from, abovePx, belowPx, to } = drawnPieces(10, heights, 1, { topPx: -9000, viewPx: 500 })
    // 1000 + 3000, then 2000 each: the piece from 8000 on holds a screen above 9000.
    expect([from, abovePx]).toEqual([4, 8000])
    expect([to, belowPx]).toEqual([6, 8000])
  })

  it('never draw nothing, wherever the list stands', () => {
    for (const topPx of [5000, -1e9]) {
      const { from, to, abovePx, belowPx } = drawnPieces(4, known, 1600, { topPx, viewPx: VIEW })
      expect(to - from).toBe(1)
      expect(abovePx + belowPx).toBe(3 * 1600)
    }
    expect(drawnPieces(0, known, 1600, { topPx: 0, viewPx: VIEW })).toEqual({ from: 0, to: 0, abovePx: 0, belowPx: 0 })
  })
})
