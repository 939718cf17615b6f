import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { settle } from '../../../src/calc/trace/settle.ts'
import type { Spectrum } from '../../../src/calc/trace/types.ts'
import { tryRows } from '../../../src/calc/trace/verify.ts'
import type { Fact, FactKey, Line } from '../../../src/calc/types.ts'

function lineWith(facts: Readonly<Partial<Record<FactKey, string>>>): Line {
  const typed = Object.entries(facts).map(([key, text]): [string, Fact] => [key, { text, origin: { by: 'user' } }])
  return { id: 'line', name: '', gate: 'clear', trials: [], facts: Object.fromEntries(typed) }
}

const LEAD = {
  traceLimit: 'ce102-base',
  traceNominalV: '115',
  traceBandwidthHz: '10 kHz',
  traceEmission: 'narrowband',
  traceDetector: 'peak',
  lineKind: 'power-115-vac-400',
  ownCeilingF: '100 µF',
  noiseSourceOhm: '50',
  noiseLoadOhm: '50',
  toleranceFrac: '0 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  esrOhm: '0',
  bondOhm: '0',
  bondH: '0',
} as const

/** 94 dBµV at 10 kHz falling 20 dB a decade to 60 at 500 kHz, 6 dB more at 115 V. */
const limitDb = (hz: number) => (hz <= 500e3 ? 94 - 34 * (Math.log(hz / 10e3) / Math.log(50)) : 60) + 6

function spectrumOf(rows: number, overDb: (hz: number) => number): Spectrum {
  const hz = Float64Array.from({ length: rows }, (_, i) => 10e3 * 1000 ** (i / (rows - 1)))
  return { hz, db: hz.map((f) => limitDb(f) + overDb(f)), unit: 'dBµV' }
}

const hump = (hz: number, atHz: number, heightDb: number, decades: number) =>
  heightDb * Math.exp(-((Math.log10(hz / atHz) / decades) ** 2)) - 40

/** Loss in dB of one capacitor with its lead between 50 Ω and 50 Ω: 20·log10|1 + 25/Z|, by hand. */
function capacitorLossDb(hz: number, farads: number, eslH: number): number {
  const x = 2 * Math.PI * hz * eslH - 1 / (2 * Math.PI * hz * farads)
  return 10 * Math.log10(1 + (25 / x) ** 2)
}

function settled(line: Line, spectrum: Spectrum) {
  const found = atOnce(settle({ line, spectrum }))
  if (!found.ok) throw new Error(found.message)
  return found
}

describe('a long trace on few points', () => {
  it('gives a part that every row is met with, by a formula of its own', () => {
    const over = (hz: number) => Math.max(hump(hz, 200e3, 60, 0.3), hump(hz, 3e6, 65, 0.2), hump(hz, 40e3, 45, 0.1))
    const spectrum = spectrumOf(20_001, over)
    const found = settled(lineWith({ ...LEAD, topology: 'C', eslH: '0' }), spectrum)
    expect(found.pointsHz.length).toBeLessThanOrEqual(20)
    expect(found.judgedCount).toBe(20_001)
    const { part } = found
    expect(part?.holds).toBe(true)
    const spares = [...spectrum.hz].flatMap((hz) => {
      const needed = over(hz) + 6
      return needed > 0 ? [capacitorLossDb(hz, part?.markedF ?? 0, 0) - needed] : []
    })
    expect(spares.length).toBeGreaterThan(1000)
    expect(Math.min(...spares)).toBeCloseTo(part?.spareDb ?? Number.NaN, 1)
    expect(Math.min(...spares)).toBeGreaterThanOrEqual(0)
  })

  it('adds what the first points miss: above the resonance of a lead', () => {
    // with 30 nH in the lead a row between two humps is worse off than either
    const over = (hz: number) =>
      Math.max(hump(hz, 60e3, 70, 0.15), hump(hz, 7e6, 52, 0.12), hump(hz, 9.9e6, 51.5, 0.02))
    const spectrum = spectrumOf(5001, over)
    const line = lineWith({ ...LEAD, topology: 'C', eslH: '30 nH' })
    const found = settled(line, spectrum)
    const rows = [...spectrum.hz.keys()].filter((i) => over(spectrum.hz[i] as number) + 6 > 0)
    const shortAt = (farads: number) =>
      rows.filter(
        (i) => capacitorLossDb(spectrum.hz[i] as number, farads, 30e-9) < over(spectrum.hz[i] as number) + 6 - 0.01,
      )
    expect(found.part?.holds).toBe(true)
    expect(shortAt(found.part?.markedF ?? 0)).toEqual([])
    expect(shortAt(1e-6).length).toBeGreaterThan(0)
    expect(found.pointsHz.length).toBeGreaterThan(2)
  })

  it('keeps the worst row and needs no part where nothing is over', () => {
    const found = settled(
      lineWith({ ...LEAD, topology: 'C', eslH: '0' }),
      spectrumOf(1001, (hz) => -20 - Math.log10(hz)),
    )
    expect(found.part).toBeUndefined()
    expect(found.overCount).toBe(0)
    expect(found.pointsHz).toEqual([10e3])
  })

  it('shows the ends and the highest row while no limit is chosen', () => {
    const found = settled(
      lineWith({}),
      spectrumOf(101, (hz) => (hz > 9e4 && hz < 1.1e5 ? 30 : 0)),
    )
    expect(found.pointsHz.length).toBe(3)
    expect(found.part).toBeUndefined()
  })

  it('says which field stands against it', () => {
    const found = atOnce(
      settle({ line: lineWith({ ...LEAD, traceBandwidthHz: 'wide' }), spectrum: spectrumOf(11, () => 0) }),
    )
    expect(found).toMatchObject({ ok: false, message: expect.stringContaining('Bandwidth of the trace') })
  })
})

describe('every row is tried', () => {
  it('one that sticks out by 0.1 dB between two steps is found among 100,000', () => {
    const rows = 100_000
    const hz = Float64Array.from({ length: rows }, (_, i) => 1e4 * 1000 ** (i / rows))
    const loss = (f: number) => 20 * Math.log10(f / 1e3)
    const needed = hz.map((f) => Math.max(0, loss(f) - 3))
    const row = 54_321
    needed[row] = loss(hz[row] as number) + 0.1
    const tried = atOnce(tryRows(hz, needed, loss))
    expect(tried.missed).toEqual([row])
    expect(tried.leastDb).toBeCloseTo(-0.1, 9)
    expect(tried.leastRow).toBe(row)
  })
})
