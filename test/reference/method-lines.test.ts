import { describe, expect, it } from 'vitest'
import { limitDbAt } from '../../src/reference/limit-lines.ts'
import { bandwidthsAt, METHOD_LINES, methodLineById } from '../../src/reference/method-lines.ts'

function lineOf(id: string) {
  const line = methodLineById(id)
  if (line === undefined) throw new Error(`no line ${id}`)
  return line
}

describe('the lines a trace is held against', () => {
  it.each([
    // 20 dB a decade from 100 MHz: samples worked out from the two ends
    ['re102-external', 2e6, 24],
    ['re102-external', 200e6, 30.007],
    ['re102-external', 500e6, 37.947],
    ['re102-external', 1e9, 43.953],
    ['re102-external', 5e9, 57.9],
    ['re102-external', 10e9, 63.906],
    ['re102-external', 18e9, 69],
    ['re102-internal-short', 100e6, 34],
    ['re102-internal-long', 18e9, 89],
    // 6.3 V and 2.0 V to 5 kHz
    ['cs101-above-28', 30, 136],
    ['cs101-above-28', 150e3, 106.5],
    ['cs101-28', 5e3, 126],
    ['cs114-curve-5', 10e3, 69],
    ['cs114-curve-5', 3e6, 109],
    ['cs114-curve-5', 200e6, 100.76],
    ['cs114-curve-4', 200e6, 94.76],
    ['cs114-curve-3', 10e3, 57],
    ['cs114-curve-2', 1e6, 89],
    ['cs114-curve-1', 10e3, 37],
    ['cs114-curve-1', 200e6, 68.76],
  ])('%s at %d Hz is %d', (id, hz, db) => {
    expect(limitDbAt(lineOf(id), hz)).toBeCloseTo(db, 2)
  })

  it('are not known below 2 MHz, nor is any line of RTCA DO-160 or CE101', () => {
    expect(limitDbAt(lineOf('re102-external'), 1.9e6)).toBeUndefined()
    expect(METHOD_LINES.filter(({ name }) => /DO-160|CE101/.test(name))).toEqual([])
  })

  it('say from memory where no document was read', () => {
    for (const { id, source } of METHOD_LINES)
      expect([id, source.standing]).toEqual([id, id.startsWith('en55022') ? 'read' : 'memory'])
  })

  it('have ids of their own and a bandwidth over the whole span of an emission', () => {
    expect(new Set(METHOD_LINES.map(({ id }) => id)).size).toBe(METHOD_LINES.length)
    for (const line of METHOD_LINES.filter(({ side }) => side === 'emission'))
      for (const { hz } of line.segments.flat())
        expect([line.id, bandwidthsAt(line, hz).length > 0]).toEqual([line.id, true])
    expect(bandwidthsAt(lineOf('ce102-base'), 150e3)).toEqual([1e3, 10e3])
    expect(bandwidthsAt(lineOf('cs114-curve-5'), 1e6)).toEqual([])
  })
})
