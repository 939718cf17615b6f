import { describe, expect, it } from 'vitest'
import { drawCurve, frequencySpan, levelSpan } from '../../src/ui/parts/trace-draw.ts'
import { panned, zoomed } from '../../src/ui/parts/trace-gestures.ts'

const WHOLE = { fromHz: 1e4, toHz: 1e8 }

describe('a trace under fingers', () => {
  it('zooms about the place that is held, in decades', () => {
    const half = zoomed(WHOLE, WHOLE, 0.5, 0.5)
    expect([half.fromHz, half.toHz]).toEqual([expect.closeTo(1e5, 3), expect.closeTo(1e7, 1)])
    const left = zoomed(WHOLE, WHOLE, 0.25, 0)
    expect([left.fromHz, left.toHz]).toEqual([1e4, expect.closeTo(1e5, 3)])
  })

  it('never shows more than there is, nor less than can be told apart', () => {
    expect(zoomed({ fromHz: 1e5, toHz: 1e6 }, WHOLE, 100, 0.3)).toEqual(WHOLE)
    let span = WHOLE
    for (let i = 0; i < 200; i++) span = zoomed(span, WHOLE, 0.5, 0.7)
    expect(span.toHz / span.fromHz).toBeGreaterThan(1 + 9e-6)
  })

  it('pans by a share of its width and stops at the ends', () => {
    const span = { fromHz: 1e5, toHz: 1e6 }
    expect(panned(span, WHOLE, 1)).toEqual({ fromHz: expect.closeTo(1e6, 2), toHz: expect.closeTo(1e7, 1) })
    expect(panned(span, WHOLE, -50)).toEqual({ fromHz: 1e4, toHz: expect.closeTo(1e5, 3) })
    expect(panned(span, WHOLE, 50).toHz).toBe(1e8)
  })
})

describe('curves on a canvas', () => {
  const drawn = (less?: { readonly hz: Float64Array; readonly db: Float64Array }) => {
    const points: number[] = []
    const note = (x: number, y: number) => points.push(x, y)
    const canvas = {
      save: () => 0,
      restore: () => 0,
      beginPath: () => 0,
      stroke: () => 0,
      setLineDash: () => 0,
      moveTo: note,
      lineTo: note,
    }
    const curve = {
      id: 'a',
      label: 'a',
      look: 'solid' as const,
      hz: Float64Array.of(1, 10, 100),
      db: Float64Array.of(5, 6, 7),
      ...(less ? { less } : {}),
    }
    const frame = { fromHz: 1, toHz: 100, pixels: 100, x: (hz: number) => Math.log10(hz), y: (db: number) => db }
    drawCurve(canvas as unknown as CanvasRenderingContext2D, curve, frame, { colour: 'red', ratio: 1 })
    return points
  }

  it('stand where their figures are', () => {
    expect(drawn()).toEqual([0, 5, 1, 6, 2, 7])
  })

  it('less what a filter takes off, straight between its points', () => {
    expect(drawn({ hz: Float64Array.of(1, 100), db: Float64Array.of(0, 20) })).toEqual([0, 5, 1, -4, 2, -13])
  })

  it('span what they hold, grown to tens', () => {
    const flat = { id: 'a', label: 'a', look: 'solid' as const, hz: Float64Array.of(1e6), db: Float64Array.of(43) }
    expect(levelSpan([flat])).toEqual([30, 50])
    expect(frequencySpan([flat])).toEqual([5e5, 2e6])
    expect([levelSpan([]), frequencySpan([])]).toEqual([
      [0, 100],
      [1e4, 1e9],
    ])
  })
})
