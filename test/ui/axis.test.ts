import { describe, expect, it } from 'vitest'
import {
  axisName,
  axisUnit,
  decades,
  linearScale,
  linearTicks,
  logScale,
  roundedSpan,
  tickText,
} from '../../src/ui/parts/axis.ts'
import fc from '../support/property.ts'

describe('axes', () => {
  it('gives all ticks of an axis one prefix, and its unit to the name', () => {
    const axis = (min: number, max: number, quantity: Parameters<typeof axisUnit>[1], name: string) => {
      const unit = axisUnit({ min, max }, quantity)
      return [axisName(name, unit), ...linearTicks({ min, max }, 4).map((tick) => tickText(tick, unit))]
    }
    expect(axis(0, 60e-6, 'time', 'Time')).toEqual(['Time, µs', '0', '20', '40', '60'])
    expect(axis(0, 1.5, 'time', 'Time')).toEqual(['Time, s', '0', '0.5', '1', '1.5'])
    expect(axis(-1000, 1500, 'voltage', 'Volts')).toEqual(['Volts, kV', '−1', '0', '1'])
    expect(axis(0, 1, 'fraction', 'Share of the peak')).toEqual(['Share of the peak, %', '0', '50', '100'])
    expect(axis(-20, 60, 'decibel', 'dB')).toEqual(['dB', '−20', '0', '20', '40', '60'])
    expect(axis(0, 4e-15, 'capacitance', 'C')).toEqual(['C, fF', '0', '1', '2', '3', '4'])
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
