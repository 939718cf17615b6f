import { describe, expect, it } from 'vitest'
import { decades, linearScale, linearTicks, logScale, roundedSpan, shortSi } from '../../src/ui/parts/axis.ts'
import fc from '../support/property.ts'

describe('axes', () => {
  it('writes numbers short, with the prefix people use', () => {
    expect([1e-11, 4.7e-9, 1e-6, 1e4, 2.5e8, 1e9, 0, -20, 999.6].map(shortSi)).toEqual([
      '10p',
      '4.7n',
      '1µ',
      '10k',
      '250M',
      '1G',
      '0',
      '−20',
      '1k',
    ])
  })

  it('finds the decades of a span and thins them evenly when there is little room', () => {
    expect(decades({ min: 1e-11, max: 1e-6 }, 9)).toEqual([1e-11, 1e-10, 1e-9, 1e-8, 1e-7, 1e-6])
    expect(decades({ min: 1e-11, max: 1e-6 }, 3)).toEqual([1e-11, 1e-9, 1e-7])
    expect(decades({ min: 3e4, max: 7e4 }, 5)).toEqual([])
  })

  it('spaces linear ticks 1, 2 or 5 apart', () => {
    expect(linearTicks({ min: -20, max: 80 }, 5)).toEqual([-20, 0, 20, 40, 60, 80])
    expect(linearTicks({ min: 0, max: 0.7 }, 4)).toEqual([0, 0.2, 0.4, 0.6])
    expect(linearTicks({ min: 3, max: 3 }, 4)).toEqual([3])
  })

  it('grows a span to whole ticks around it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -300, max: 299, noNaN: true }),
        fc.double({ min: 0.5, max: 400, noNaN: true }),
        (min, width) => {
          const span = roundedSpan({ min, max: min + width }, 5)
          expect(span.min).toBeLessThanOrEqual(min + width * 1e-6)
          expect(span.max).toBeGreaterThanOrEqual(min + width - width * 1e-6)
        },
      ),
    )
  })

  it('places values by their logarithm, and keeps what is outside on the edge', () => {
    const x = logScale({ min: 1e-12, max: 1e-6 }, [30, 330])
    expect(x(1e-9)).toBeCloseTo(180, 9)
    expect(x(0)).toBe(30)
    expect(x(5e-3)).toBe(330)
    expect(linearScale({ min: 0, max: 60 }, [200, 20])(15)).toBe(155)
  })
})
