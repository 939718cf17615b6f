/** What a line itself puts on its contacts: complete where a yes may rest on it, cited, and of the right size. */
import { describe, expect, it } from 'vitest'
import { busSurgesOf } from '../../src/reference/bus-surges.ts'
import { LINE_KINDS, lineKindById } from '../../src/reference/line-kinds.ts'
import { SOURCES } from '../../src/reference/sources.ts'

const WITHOUT = [
  ...['arinc-717', 'fuel-flow', 'motor-phases', 'generator-control', 'power-230-vac', 'power-hvdc'],
  'not-listed',
]

describe('own peaks', () => {
  it('are given for every kind but the barred ones and those whose volts are too weakly known', () => {
    const missing = LINE_KINDS.filter((kind) => kind.barredWhy === undefined && kind.ownPeaks === undefined)
    expect(missing.map(({ id }) => id)).toEqual(WITHOUT)
  })

  it('straddle chassis, are between legs only on pairs, and cite what is listed', () => {
    for (const { id, ownPeaks, transformer, isPair } of LINE_KINDS) {
      if (!ownPeaks) continue
      for (const [lowV, highV] of [ownPeaks.leg, ...(ownPeaks.pair ? [ownPeaks.pair] : [])]) {
        expect(lowV, id).toBeLessThanOrEqual(0)
        expect(highV, id).toBeGreaterThan(0)
      }
      expect(ownPeaks.pair !== undefined, id).toBe(isPair)
      expect(Object.keys(SOURCES)).toContain(ownPeaks.source.id)
      if (transformer) expect(Object.keys(SOURCES)).toContain(transformer.source.id)
      if (ownPeaks.surgesOf !== undefined) expect(busSurgesOf(ownPeaks.surgesOf).length, id).toBeGreaterThan(0)
    }
  })

  it('are those of the standards: ±5.5 V on a leg of ARINC 429, 178.2 V on 115 V AC, 32.2 V on 28 V DC', () => {
    expect(lineKindById('arinc-429-high')?.ownPeaks?.leg).toEqual([-5.5, 5.5])
    // 118 V rms times the highest crest factor allowed, 1.51
    expect(lineKindById('power-115-vac-400')?.ownPeaks?.leg[1]).toBeCloseTo(118 * 1.51, 1)
    expect(lineKindById('power-28-vdc')?.ownPeaks?.leg).toEqual([0, 32.2])
  })

  it('are never below the highest steady volts of the same row', () => {
    for (const { id, ownPeaks, steadyPeakV } of LINE_KINDS)
      if (ownPeaks && steadyPeakV !== undefined)
        expect(Math.max(ownPeaks.leg[1], ownPeaks.pair?.[1] ?? 0), id).toBeGreaterThanOrEqual(steadyPeakV)
  })
})
