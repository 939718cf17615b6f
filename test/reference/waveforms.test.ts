/**
 * Waveform rows against what is printed for them, and the times their constants really give. Numbers: tables of
 * DO-160 section 22 as quoted in data sheets, ARP5412 constants as quoted, IEC 61000-4 and MIL-STD-461 figures.
 */
import { describe, expect, it } from 'vitest'
import { envelopeA } from '../../src/calc/surge/pulse.ts'
import { ratingShape } from '../../src/calc/surge/rating.ts'
import { frontTime, type Shape, shapeOf, shapeTimes, tailTime } from '../../src/calc/surge/shape.ts'
import { BUS_SURGES } from '../../src/reference/bus-surges.ts'
import { SOURCES } from '../../src/reference/sources.ts'
import { WAVEFORM_IDS, WAVEFORMS, waveformById } from '../../src/reference/waveforms.ts'

function row(id: string) {
  const found = waveformById(id)
  if (!found) throw new Error(`no waveform ${id}`)
  return found
}

function shape(id: string, ring?: { hz: number; q: number }): Shape {
  const { shape: spec } = row(id)
  if (!spec) throw new Error(`${id} has no shape of its own`)
  return shapeOf(spec, ring)
}

/** within so many per cent */
const close = (got: number, wanted: number, percent: number) =>
  expect(Math.abs(got / wanted - 1) * 100, `${got} against ${wanted}`).toBeLessThan(percent)

describe('the rows', () => {
  it('are all there, each once', () => {
    expect(WAVEFORMS.map(({ id }) => id)).toEqual(WAVEFORM_IDS)
  })

  it('cite sources that exist, and say for each level how it is known', () => {
    for (const { shapeSource, levels, repeats } of WAVEFORMS) {
      for (const { source } of [{ source: shapeSource }, ...levels, ...repeats])
        expect(SOURCES[source.id]).toBeDefined()
    }
    for (const { source } of BUS_SURGES) expect(SOURCES[source.id]).toBeDefined()
  })

  it('carry the pin-injection levels, volts over amperes always 25, 5 and 1 Ω', () => {
    const levels = (id: string) => row(id).levels.map((l) => [l.level, l.openCircuitV, l.shortCircuitA])
    expect(levels('wf3')).toEqual([
      [1, 100, 4],
      [2, 250, 10],
      [3, 600, 24],
      [4, 1500, 60],
      [5, 3200, 128],
    ])
    expect(levels('wf4')).toEqual([
      [1, 50, 10],
      [2, 125, 25],
      [3, 300, 60],
      [4, 750, 150],
      [5, 1600, 320],
    ])
    expect(levels('wf5a')).toEqual([
      [1, 50, 50],
      [2, 125, 125],
      [3, 300, 300],
      [4, 750, 750],
      [5, 1600, 1600],
    ])
    for (const id of ['wf3', 'wf4', 'wf5a'])
      for (const { openCircuitV, shortCircuitA } of row(id).levels)
        expect(openCircuitV / shortCircuitA).toBe(row(id).sourceOhm?.ohm)
  })

  it('mark levels 3 and 4 as read and 1, 2 and 5 as remembered', () => {
    for (const id of ['wf3', 'wf4', 'wf5a'])
      expect(row(id).levels.map(({ source }) => source.standing)).toEqual([
        'memory',
        'memory',
        'read',
        'read',
        'memory',
      ])
  })

  it('say why where there is no level', () => {
    const without = WAVEFORMS.filter(({ levels }) => levels.length === 0)
    expect(without.map(({ id }) => id)).toEqual(['wf1', 'wf2', 'wf5b', 'wf6', 'cs115', 'cs116', 'rs105', 'custom'])
    for (const { noLevelWhy } of without) expect(noLevelWhy).toMatch(/\.$/)
  })

  it('give the short-circuit currents of the combination wave through 2, 12 and 42 Ω', () => {
    const volts = row('iec-1.2-50').levels.map((l) => l.openCircuitV)
    expect(volts).toEqual([500, 1000, 2000, 4000])
    expect(row('iec-1.2-50').levels.map((l) => l.shortCircuitA)).toEqual([250, 500, 1000, 2000])
    const through = (ohm: number) => volts.map((v) => Number((v / ohm).toFixed(1)))
    expect(through(12)).toEqual([41.7, 83.3, 166.7, 333.3])
    expect(through(42)).toEqual([11.9, 23.8, 47.6, 95.2])
  })
})

describe('times found on the shapes', () => {
  it.each([
    ['wf1', 6.358e-6, 68.965e-6, 1],
    ['wf4', 6.358e-6, 68.965e-6, 1],
    ['wf5a', 40e-6, 120e-6, 1],
    ['wf5b', 50e-6, 500e-6, 1],
    ['wf6', 0.2445e-6, 4e-6, 1],
    ['iec-8-20', 11.73e-6, undefined, 0.9996],
  ])('%s peaks and falls to half where its constants say', (id, peakSec, halfSec, peak) => {
    const times = shapeTimes(shape(id))
    close(times.peak, peak, 0.02)
    close(times.peakSec, peakSec, 0.03)
    if (halfSec !== undefined) close(times.halfSec, halfSec, 0.01)
  })

  it('meets the nominal times of section 22 within 5 % (20 % are allowed)', () => {
    for (const id of ['wf1', 'wf4', 'wf5a', 'wf5b', 'wf6']) {
      const { nominal } = row(id)
      const times = shapeTimes(shape(id))
      close(times.peakSec, nominal?.peakSec ?? 0, 5)
      close(times.halfSec, nominal?.halfSec ?? 0, 5)
    }
  })

  it('gives waveform 4 the printed 0.15 µs and 3.0 µs at 10 and 90 %', () => {
    close(frontTime(shape('wf4'), 0.1), 0.151e-6, 0.2)
    close(frontTime(shape('wf4'), 0.9), 2.995e-6, 0.03)
  })

  it('draws waveform 2 through its own points', () => {
    const { at, corners } = shape('wf2')
    expect(corners).toEqual([0.1e-6, 6.4e-6])
    expect(at(0.1e-6)).toBe(1)
    expect(at(6.4e-6)).toBe(0)
    expect(at(9e-6)).toBe(0)
    expect(at(0.05e-6)).toBeCloseTo(0.5, 12)
  })

  it('has the integrals over peak of waveforms 4, 5A, 5B and 6', () => {
    const area = (id: string) => {
      const { shape: spec } = row(id)
      if (spec?.form !== 'double-exponential') throw new Error(id)
      return spec.k * (1 / spec.aPerSec - 1 / spec.bPerSec)
    }
    close(area('wf4'), 94.67e-6, 0.02)
    close(area('wf5a'), 131.2e-6, 0.05)
    close(area('wf5b'), 683.0e-6, 0.02)
    close(area('wf6'), 5.59e-6, 0.1)
  })

  it('gives the static discharge 3.73 A a kilovolt at 1.46 ns, 8.01 A at 30 ns and 4.02 A at 60 ns of 4 kV', () => {
    const discharge = shape('iec-esd')
    const four = row('iec-esd').levels.find((l) => l.level === 2)?.shortCircuitA ?? 0
    const times = shapeTimes(discharge)
    close(four, 14.92, 0.02)
    close(times.peak, 1, 0.001)
    close(times.peakSec, 1.46e-9, 0.1)
    // both moments count from 10 % of the rise
    const start = frontTime(discharge, 0.1)
    close(four * discharge.at(start + 30e-9), 8.01, 0.05)
    close(four * discharge.at(start + 60e-9), 4.02, 0.1)
    close(frontTime(discharge, 0.9) - frontTime(discharge, 0.1), 0.811e-9, 0.1)
  })

  it('gives the burst pulse 5.12 ns rise and 49.4 ns width, and 15 or 0.75 ms of 75 pulses', () => {
    const pulse = shape('iec-burst')
    close(shapeTimes(pulse).peak, 1, 0.001)
    close(frontTime(pulse, 0.9) - frontTime(pulse, 0.1), 5.12e-9, 0.2)
    close(tailTime(pulse, 0.5) - frontTime(pulse, 0.5), 49.4e-9, 0.2)
    expect(75 / 5e3).toBe(15e-3)
    expect(75 / 100e3).toBe(0.75e-3)
  })

  it('gives the combination wave its virtual fronts', () => {
    const open = shape('iec-1.2-50')
    const [t30, t90] = [frontTime(open, 0.3), frontTime(open, 0.9)]
    close(1.67 * (t90 - t30), 1.201e-6, 0.1)
    const origin = t30 - (t90 - t30) / 2
    close(tailTime(open, 0.5) - origin, 50e-6, 0.05)
    const short = shape('iec-8-20')
    const [s10, s90] = [frontTime(short, 0.1), frontTime(short, 0.9)]
    close(1.25 * (s90 - s10), 8.023e-6, 0.1)
    close(tailTime(short, 0.5) - (s10 - (s90 - s10) / 8), 19.94e-6, 0.1)
  })

  it('gives 10/1000 µs its virtual front, true peak at 22.6 µs and half value at 1000.2 µs', () => {
    const rated = ratingShape()
    const times = shapeTimes(rated)
    const [t10, t90] = [frontTime(rated, 0.1), frontTime(rated, 0.9)]
    close(times.peak, 1, 0.05)
    close(times.peakSec, 22.6e-6, 0.2)
    close(1.25 * (t90 - t10), 10e-6, 0.1)
    close(tailTime(rated, 0.5) - (t10 - (t90 - t10) / 8), 1000.2e-6, 0.05)
  })

  it('gives RS105 2.47 ns rise and 22.98 ns width', () => {
    const field = shape('rs105')
    close(shapeTimes(field).peak, 1, 0.05)
    close(frontTime(field, 0.9) - frontTime(field, 0.1), 2.47e-9, 0.2)
    close(tailTime(field, 0.5) - frontTime(field, 0.5), 22.98e-9, 0.1)
  })

  it('gives CS115 500 V open circuit from 5 A in 100 Ω', () => {
    expect(row('cs115').only?.openCircuitV).toBe(5 * (row('cs115').sourceOhm?.ohm ?? 0))
    const { at } = shape('cs115')
    expect([at(2e-9), at(17e-9), at(32e-9), at(34e-9)]).toEqual([1, 1, 1, 0])
  })
})

describe('damped sines', () => {
  it.each([
    [10, 1.0804],
    [15, 1.0532],
    [20, 1.0397],
  ])('are normalised at Q %d by %f', (q, norm) => {
    const { at } = shape('cs116', { hz: 1e6, q })
    // at a quarter cycle the sine is 1 and only the decay is left
    close(at(0.25e-6) / Math.exp(-Math.PI / (4 * q)), norm, 0.005)
    close(shapeTimes(shape('cs116', { hz: 1e6, q })).peak, 1, 0.001)
  })

  it.each([
    [10, 0.39],
    [15, 0.533],
    [20, 0.624],
  ])('at Q %d have the fourth peak at %f of the first', (q, share) => {
    const { at } = shape('cs116', { hz: 1e6, q })
    close(at(3.2e-6) / at(0.2e-6), share, 0.15)
  })

  it.each([
    [9.06, 0.25],
    [18.13, 0.5],
    [43.68, 0.75],
  ])('at Q %f have the fifth peak at %f of the first', (q, share) => {
    const { at } = shape('wf3', { hz: 1e6, q })
    close(at(4.25e-6) / at(0.25e-6), share, 0.1)
  })

  it('follow the CS116 envelope: 0.1 A at 10 kHz, 10 A from 1 to 30 MHz, 3 A at 100 MHz', () => {
    const cs116 = waveformById('cs116')?.ring?.envelope
    expect(
      [1e4, 1e5, 1e6, 7e6, 30e6, 100e6].map((hz) => Number((cs116 ? envelopeA(cs116, hz) : 0).toFixed(9))),
    ).toEqual([0.1, 1, 10, 10, 10, 3])
  })
})

describe('bus surges', () => {
  it('carry the category points of DO-160 section 16 and the 704 transients, and no remembered tails', () => {
    const of = (id: string) => BUS_SURGES.find((surge) => surge.id === id)
    expect([of('do160-abnormal-a'), of('do160-abnormal-b'), of('do160-abnormal-z')].map((s) => s?.peakV)).toEqual([
      46.3, 60, 80,
    ])
    expect(of('do160-normal-z')?.source.standing).toBe('read')
    expect(of('std704-normal-28')?.forSec).toBe(0.0125)
    expect(of('do160-abnormal-power-115-vac-400')?.peakV).toBeCloseTo(254.6, 1)
    expect(BUS_SURGES.filter((s) => s.forSec > 1)).toEqual([])
  })
})
