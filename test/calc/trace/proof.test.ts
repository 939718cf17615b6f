/** A trace as proof of a cure: under its limit with the margin over its whole span, or what is missing, by name. */
import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { proveTrace } from '../../../src/calc/trace/proof.ts'
import type { Spectrum } from '../../../src/calc/trace/types.ts'
import type { Line } from '../../../src/calc/types.ts'

const lineOf = (texts: Record<string, string>): Line => ({
  id: 'l',
  name: '',
  gate: 'clear',
  trials: [],
  facts: Object.fromEntries(
    Object.entries(texts).map(([key, text]) => [key, { text, origin: { by: 'user' } } as const]),
  ),
})
/** CE102 base curve: 94 dBµV at 10 kHz, 60 from 500 kHz to 10 MHz; 6 dB margin as the check has it. */
const FACTS = { traceLimit: 'ce102-base', traceUnit: 'dbuv', traceBandwidthHz: '10 kHz', traceDetector: 'peak' }
const limitAt = (hz: number) => (hz >= 500e3 ? 60 : 94 - (34 * Math.log(hz / 10e3)) / Math.log(50))

const sweep = (levelOf: (hz: number) => number, fromHz = 10e3, toHz = 10e6, count = 400): Spectrum => {
  const hz = Float64Array.from({ length: count }, (_, i) => fromHz * (toHz / fromHz) ** (i / (count - 1)))
  return { hz, db: hz.map(levelOf), unit: 'dBµV' }
}
const near = (hz: number, at: number) => Math.abs(Math.log(hz / at)) < 0.02
const BEFORE = sweep((hz) => (near(hz, 200e3) ? 90 : 40))
const QUIET = sweep((hz) => Math.min(40, limitAt(hz) - 12))
const ask = (after: Spectrum, before?: Spectrum, texts: Record<string, string> = {}) =>
  atOnce(proveTrace({ line: lineOf({ ...FACTS, ...texts }), after, ...(before ? { before } : {}) }))
const missing = (...q: Parameters<typeof ask>) => {
  const found = ask(...q)
  return found.holds ? 'holds' : found.missing.replaceAll('\u00a0', ' ')
}

describe('holds', () => {
  it('under the limit with the margin over all of it, with what came off where it was worst', () => {
    const found = ask(QUIET, BEFORE)
    if (!found.holds) throw new Error(found.missing)
    expect(found.limit).toContain('CE102')
    // 60 − 40 dB from 500 kHz on
    expect(found.spareDb).toBeCloseTo(20, 6)
    const { hz = 0, overDb, lossDb } = found.worst ?? {}
    expect(near(hz, 200e3)).toBe(true)
    expect(overDb).toBeCloseTo(90 - limitAt(hz), 6)
    expect(lossDb).toBeCloseTo(50, 6)
  })

  it('where the trace before was worst at its very first row', () => {
    const found = ask(
      QUIET,
      sweep((hz) => (hz < 10.1e3 ? 110 : 40)),
    )
    if (!found.holds) throw new Error(found.missing)
    expect(found.worst?.hz).toBe(10e3)
    expect(found.worst?.overDb).toBeCloseTo(110 - 94, 6)
  })

  it('of a file that names no unit in that of the check: −67 dBm are 40 dBµV in 50 Ω', () => {
    const dbm = { ...QUIET, unit: undefined, db: QUIET.db.map((db) => db - 107) }
    const found = ask(dbm, BEFORE, { traceUnit: 'dbm', traceImpedanceOhm: '50' })
    if (!found.holds) throw new Error(found.missing)
    expect(found.worst?.lossDb).toBeCloseTo(50, 1)
  })

  it('against a line of one’s own over its own span alone', () => {
    const own = { traceLimit: 'own', traceOwnHz: '100k; 1M', traceOwnDb: '50; 50' }
    const part = sweep(() => 30, 100e3, 1e6)
    expect(ask(part, undefined, own)).toMatchObject({ holds: true, spareDb: 20 })
    expect(missing(part, undefined, { ...own, traceOwnHz: '90k; 1M' })).toContain('reads 100 kHz to 1 MHz')
  })
})

describe('does not hold, and says why', () => {
  it('over the limit, or under it by less than the margin', () => {
    expect(missing(sweep((hz) => (near(hz, 1e6) ? 61 : 30)))).toMatch(/misses MIL-STD-461 CE102.* by 7 dB at .*Hz/)
    expect(missing(sweep((hz) => (near(hz, 1e6) ? 55 : 30)))).toMatch(/by 1 dB at /)
    // told apart from what was not read, or cannot be compared: this one speaks against the cure
    expect(ask(sweep((hz) => (near(hz, 1e6) ? 61 : 30)))).toMatchObject({ misses: true })
    expect(ask(sweep(() => 30, 100e3, 1e6))).not.toHaveProperty('misses')
    expect(missing(sweep((hz) => (near(hz, 1e6) ? 54 : 30)))).toBe('holds')
  })

  it('no limit, no unit, no bandwidth, no detector, one that reads less', () => {
    expect(missing(QUIET, undefined, { traceLimit: '' })).toContain('the limit it is held against')
    expect(missing({ ...QUIET, unit: undefined }, undefined, { traceUnit: '' })).toContain('names no unit')
    expect(missing(QUIET, undefined, { traceBandwidthHz: '' })).toContain('the bandwidth the traces were taken in')
    expect(missing(QUIET, undefined, { traceDetector: '' })).toContain('the detector the traces were taken with')
    expect(missing(QUIET, undefined, { traceDetector: 'average' })).toContain('can read less of the same emission')
    expect(missing(QUIET, undefined, { traceLimit: 'own' })).toContain('no corners yet')
  })

  it('a narrower bandwidth than the method’s, whatever the emission is said to be; a wider one reads no less', () => {
    for (const traceEmission of ['', 'narrowband', 'impulsive'])
      expect(missing(QUIET, undefined, { traceBandwidthHz: '1 kHz', traceEmission })).toMatch(
        /read in 1 kHz and the method takes 10 kHz at 1\d\d\.?\d* kHz/,
      )
    expect(missing(QUIET, undefined, { traceBandwidthHz: '30 kHz' })).toBe('holds')
  })

  it('a part of the span, or a hole in it', () => {
    expect(missing(sweep(() => 30, 150e3, 10e6))).toContain('reaches from 10 kHz to 10 MHz')
    expect(missing(sweep(() => 30, 10e3, 5e6))).toContain('measure all of it')
    expect(missing(sweep(() => 30, 10e3, 10e6, 2))).toContain('no row from 10 kHz to 10 MHz')
    const holed = { ...QUIET, hz: QUIET.hz.filter((hz) => hz < 1e6 || hz > 2e6) }
    expect(missing({ ...holed, db: holed.hz.map(() => 30) })).toMatch(/no row from .* to 2.*MHz/)
  })

  it('a trace before that kept the limit as well, or in a unit that compares with nothing', () => {
    expect(missing(QUIET, QUIET)).toContain('the two show no cure')
    expect(missing(QUIET, { ...BEFORE, unit: 'dBµV/m' })).toContain('no impedance turns one into the other')
  })
})

it('a million rows are judged in steps that can be stopped', () => {
  const running = proveTrace({ line: lineOf(FACTS), after: sweep(() => 30, 10e3, 10e6, 1_000_000) })
  let steps = 0
  while (!running.next().done) steps += 1
  expect(steps).toBeGreaterThan(400)
})
