/** The drawn waveforms have the levels and times of their documents: measured on the points, as on the screen of a scope. */
import { describe, expect, it } from 'vitest'
import { pages } from '../../../src/guide/book/lines/lines.ts'
import { waveformOf } from '../../../src/guide/book/lines/waveforms.ts'
import type { Waveform } from '../../../src/guide/book/types.ts'
import { lineCardOf } from '../../../src/reference/line-cards.ts'
import { LINE_KINDS, lineKindById } from '../../../src/reference/line-kinds.ts'

type Points = Waveform['wires'][number]['points']

function waveOf(id: string): Waveform {
  const kind = lineKindById(id)
  const wave = kind && lineCardOf(kind).wave
  if (kind === undefined || wave === undefined || wave.is === 'not-known') throw new Error(`no picture of ${id}`)
  return waveformOf(wave, kind)
}

const wire = (id: string, at = 0): Points => waveOf(id).wires[at]?.points ?? []
const peaks = (points: Points): readonly [number, number] => {
  const volts = points.map(([, volt]) => volt)
  return [Math.min(...volts), Math.max(...volts)]
}

/** When the curve first passes a level after a time, going the way it is told. */
function crossing(points: Points, level: number, way: 'up' | 'down', afterSec = 0): number {
  for (const [at, [sec, volt]] of points.entries()) {
    const [lastSec, lastVolt] = points[at - 1] ?? [sec, volt]
    const passes = way === 'up' ? lastVolt < level && volt >= level : lastVolt > level && volt <= level
    const where = lastSec + ((level - lastVolt) / (volt - lastVolt)) * (sec - lastSec)
    if (passes && where >= afterSec) return where
  }
  return Number.NaN
}

const ALL = LINE_KINDS.flatMap((kind) => {
  const card = lineCardOf(kind)
  return kind.barredWhy !== undefined || card.wave.is === 'not-known'
    ? []
    : [[kind.id, waveformOf(card.wave, kind)] as const]
})

describe('every waveform', () => {
  it('is on the page of its kind', () => {
    const drawn = pages().filter(({ blocks }) => blocks.some(({ is }) => is === 'waveform'))
    expect(drawn.map(({ lineKind }) => lineKind)).toEqual(ALL.map(([id]) => id))
    expect(ALL.length).toBeGreaterThan(35)
  })

  it.each(ALL)('%s runs forward in time, from end to end, with finite volts', (_, { spanSec, wires }) => {
    for (const { points } of wires) {
      expect(points[0]?.[0]).toBe(0)
      expect(points.at(-1)?.[0]).toBeCloseTo(spanSec, 12)
      for (const [at, [sec, volt]] of points.entries()) {
        expect(Number.isFinite(volt)).toBe(true)
        expect(sec).toBeGreaterThanOrEqual(points[at - 1]?.[0] ?? 0)
      }
    }
  })

  it.each(ALL)('%s stays within what the line is known to reach by itself', (id, { wires, levels }) => {
    const own = lineKindById(id)?.ownPeaks
    if (own === undefined) return
    const [lowV, highV] = [Math.min(own.leg[0], own.pair?.[0] ?? 0), Math.max(own.leg[1], own.pair?.[1] ?? 0)]
    for (const volt of [...wires.flatMap(({ points }) => peaks(points)), ...levels.map((level) => level.volt)]) {
      expect(volt).toBeGreaterThanOrEqual(lowV - 1e-9)
      expect(volt).toBeLessThanOrEqual(highV + 1e-9)
    }
  })

  it.each(ALL)('%s names its figures in words, in short sentences', (_, { said, title }) => {
    expect(title).not.toBe('')
    expect(said).toMatch(/\d/u)
    for (const sentence of said.split(/(?<=[.:])\s+/u)) expect(sentence.split(/\s+/u).length).toBeLessThanOrEqual(20)
  })
})

describe('measured on the points', () => {
  it('ARINC 429 at high speed: ±10 V, back to zero, 10 µs a bit, 1.5 µs from 10 to 90 %', () => {
    const points = wire('arinc-429-high')
    expect(peaks(points)).toEqual([-10, 10])
    expect(crossing(points, 9, 'up') - crossing(points, 1, 'up')).toBeCloseTo(1.5e-6, 9)
    const first = crossing(points, 5, 'up')
    // ones are the bits 1, 3 and 4: two bit times from the first to the second, one from there to the third
    expect(crossing(points, 5, 'up', first + 1e-9) - first).toBeCloseTo(20e-6, 9)
    expect(crossing(points, 5, 'down', first) - first).toBeCloseTo(5e-6, 9)
  })

  it('ARINC 429 at low speed: 80 µs a bit, 10 µs from 10 to 90 %', () => {
    const points = wire('arinc-429-low')
    expect(crossing(points, 9, 'up') - crossing(points, 1, 'up')).toBeCloseTo(10e-6, 8)
    expect(crossing(points, 5, 'down') - crossing(points, 5, 'up')).toBeCloseTo(40e-6, 8)
  })

  it('MIL-STD-1553B: 18 to 27 V from peak to peak, a change in the middle of each microsecond', () => {
    const [low, high] = peaks(wire('mil-std-1553-stub'))
    expect(high - low).toBeGreaterThanOrEqual(18)
    expect(high - low).toBeLessThanOrEqual(27)
    expect(crossing(wire('mil-std-1553-stub'), 0, 'down')).toBeCloseTo(0.5e-6, 9)
    // 100 to 300 ns
    const fall =
      crossing(wire('mil-std-1553-stub'), 0.8 * low, 'down') - crossing(wire('mil-std-1553-stub'), 0.8 * high, 'down')
    expect(fall).toBeGreaterThan(100e-9)
    expect(fall).toBeLessThan(300e-9)
  })

  it('10BASE-T goes up in the middle of a one, MIL-STD-1553B goes down', () => {
    const middle = (id: string, way: 'up' | 'down') => crossing(wire(id), 0, way)
    expect(middle('ethernet-10base-t', 'up')).toBeCloseTo(50e-9, 11)
    expect(middle('mil-std-1553-stub', 'down')).toBeCloseTo(0.5e-6, 9)
  })

  it('CAN: let go, 1 nF and 60 Ω take ln 4 · R · C from 2.0 to 0.5 V between the legs', () => {
    const [high, low] = [wire('can', 0), wire('can', 1)]
    const apart: Points = high.map(([sec, volt], at) => [sec, volt - (low[at]?.[1] ?? 0)])
    expect(peaks(apart)[1]).toBe(2)
    const letGo = crossing(apart, 1.999, 'down')
    // 14 straight pieces over 6 time constants: within a few per cent of the curve
    expect(crossing(apart, 0.5, 'down') - letGo).toBeCloseTo(Math.log(4) * 60 * 1e-9, 8)
  })

  it.each([
    ['i2c-standard', 1000e-9],
    ['i2c-fast', 300e-9],
    ['i2c-fast-plus', 120e-9],
  ])('%s: the rise from 30 to 70 % takes the most it may', (id, riseSec) => {
    const points = wire(id)
    const rise = crossing(points, 3.5, 'up') - crossing(points, 1.5, 'up')
    expect(Math.abs(rise / riseSec - 1)).toBeLessThan(0.03)
    const [mark] = waveOf(id).marks ?? []
    expect((mark?.toSec ?? 0) - (mark?.fromSec ?? 0)).toBeCloseTo(riseSec, 12)
  })

  it('RS-422 and LVDS: the legs stand 2 V and 350 mV apart, of either sign', () => {
    for (const [id, swing] of [
      ['rs-422', 2],
      ['lvds', 0.35],
    ] as const) {
      const [a, b] = [wire(id, 0), wire(id, 1)]
      const apart = a.map(([, volt], at) => volt - (b[at]?.[1] ?? 0))
      expect(Math.max(...apart)).toBeCloseTo(swing, 9)
      expect(Math.min(...apart)).toBeCloseTo(-swing, 9)
    }
  })

  it('100BASE-TX has three levels, 1000BASE-T five', () => {
    const held = (id: string) => new Set(wire(id).map(([, volt]) => volt)).size
    expect([held('ethernet-100base-tx'), held('ethernet-1000base-t')]).toEqual([3, 5])
  })

  it('115 V at 400 Hz: a peak of 162.6 V, 2.5 ms from crossing to crossing', () => {
    const points = wire('power-115-vac-400')
    expect(peaks(points)[1]).toBeCloseTo(115 * Math.SQRT2, 1)
    const first = crossing(points, 50, 'up')
    expect(crossing(points, 50, 'up', first + 1e-6) - first).toBeCloseTo(2.5e-3, 6)
  })

  it('28 V DC stays between 22 and 29 V, ripple and all', () => {
    const [low, high] = peaks(wire('power-28-vdc'))
    expect(low).toBeGreaterThan(22)
    expect(high).toBeLessThan(29)
  })

  it('a synchro: the three legs add up to nothing at every moment, and none passes 11.8 V rms', () => {
    const legs = waveOf('synchro').wires.map(({ points }) => points)
    for (const at of legs[0]?.keys() ?? [])
      expect(legs.reduce((sum, points) => sum + (points[at]?.[1] ?? 0), 0)).toBeCloseTo(0, 9)
    for (const points of legs) expect(peaks(points)[1]).toBeLessThanOrEqual(11.8 * Math.SQRT2)
  })

  it('a position sensor is silent at the middle of its stroke and upside down beyond it', () => {
    const { spanSec, wires } = waveOf('lvdt')
    const [secondary = { points: [] }, excitation = { points: [] }] = wires
    const share = (sec: number): number => {
      const at = secondary.points.findIndex(([time]) => time >= sec)
      return Math.sign((secondary.points[at]?.[1] ?? 0) * (excitation.points[at]?.[1] ?? 0))
    }
    expect([share(spanSec * 0.14), share(spanSec * 0.86)]).toEqual([1, -1])
  })

  it('video: 1 V from sync to white, 64 µs a line, 4.7 µs of sync', () => {
    const points = wire('composite-video')
    expect(peaks(points)).toEqual([-0.3, 0.7])
    const [syncMark, lineMark] = waveOf('composite-video').marks ?? []
    expect([syncMark?.toSec, lineMark?.toSec]).toEqual([4.7e-6, 64e-6])
  })

  it('a switched coil kicks no higher than its clamp, 40 to 60 V', () => {
    const [, high] = peaks(wire('pwm-drive'))
    expect(high).toBeGreaterThanOrEqual(40)
    expect(high).toBeLessThanOrEqual(60)
  })
})
