import { describe, expect, it } from 'vitest'
import { curvePath, type PlotPicture, valueAt, xSpan, ySpan } from '../../src/ui/parts/plot-shape.ts'

const curve = (x: number[], y: number[]) => ({
  id: 'a',
  label: 'your circuit',
  style: 'solid' as const,
  x: Float64Array.from(x),
  y: Float64Array.from(y),
})
const picture = (part: Partial<PlotPicture>): PlotPicture => ({
  is: 'plot',
  title: '',
  xLabel: '',
  xQuantity: 'frequency',
  xScale: 'log',
  yLabel: '',
  yQuantity: 'decibel',
  curves: [],
  bands: [],
  limits: [],
  flags: [],
  ...part,
})

describe('the plot', () => {
  it('spans its curves, its limits and zero', () => {
    const plot = picture({
      curves: [curve([1e4, 1e9], [-13, 71])],
      limits: [{ label: 'need', x: 3e9, y: 40, must: 'least' }],
    })
    expect(xSpan(plot)).toEqual({ min: 1e4, max: 3e9 })
    expect(ySpan(plot, 5)).toEqual({ min: -20, max: 80 })
  })

  it('has axes even where there is nothing to draw', () => {
    expect(xSpan(picture({}))).toEqual({ min: 1e4, max: 1e9 })
    expect(ySpan(picture({}), 5)).toEqual({ min: -1, max: 1 })
  })

  it('keeps the peaks when many points share a pixel', () => {
    const count = 5000
    const x = Array.from({ length: count }, (_, index) => index / count)
    const y = x.map((_, index) => (index === 2501 ? -37 : index % 7))
    const path = curvePath(
      curve(x, y),
      (value) => value * 100,
      (value) => value,
    )
    expect(path.startsWith('M')).toBe(true)
    expect(path).toContain('-37.0')
    expect(path.split(/[ML]/u).length).toBeLessThan(420)
  })

  it('breaks the line at values that do not exist', () => {
    const path = curvePath(
      curve([1, 2, 3, 4], [5, Number.NaN, 7, 8]),
      (value) => value * 10,
      (value) => value,
    )
    expect(path).toBe('M10 5.0M30 7.0L40 8.0')
  })

  it('reads a point off a curve, and nothing outside it', () => {
    const line = curve([1, 3, 11], [10, 20, 60])
    expect(valueAt(line, 2)).toBe(15)
    expect(valueAt(line, 7)).toBe(40)
    expect(valueAt(line, 11)).toBe(60)
    expect(valueAt(line, 11.5)).toBeUndefined()
    expect(valueAt(curve([], []), 1)).toBeUndefined()
  })
})
