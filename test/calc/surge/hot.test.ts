/**
 * A hot suppressor clamps higher, wherever it is counted. Breakdown of a 5 % part from its stand-off: 1.11 · 1.11 times it
 * at most. At 125 °C it is 9.6e-4 · 100 = 9.6 % higher.
 * 60 V: 73.93 V at 25 °C; waveform 4 level 3 is 300 V behind 5 Ω; clamp ratio 1.32 at 30 kW: Vc = 97.6 V at 307.4 A,
 * Rd = 23.66/307.4 = 0.077 Ω; I = (300 - 73.93)/5.077 = 44.5 A; 73.93 + 0.077 · 44.5 = 77.35 V; hot + 7.10 = 84.4 V.
 * 30 V: 36.96 V; Vc = 48.8 V at 614.8 A, Rd = 0.0192 Ω; I = 52.4 A; 37.97 V; hot + 3.55 = 41.52 V.
 */
import { describe, expect, it } from 'vitest'
import { open, said, word } from '../../support/open-surge.ts'
import { si } from '../../support/run-check.ts'

const PART = 'ratedPulseW=30000&suppressorLeadH=0&suppressorF=5p'
const HOT = `level=3&${PART}&ambientC=125&derateZeroC=175`

describe('a suppressor at 125 °C', () => {
  const load = `${HOT}&standoffV=30&busMaxV=28&busMinV=0`
  it('is refused where the load then stands above what the circuit withstands: 41.5 V', () => {
    const above = open(`${load}&withstandV=41`)
    expect(word(above, 'circuitVerdict')).toBe('fails')
    expect(said(above)).toMatch(/lifts the load to 41\.[56]\d? V, above the 41 V/)
  })

  it('is close within 5 % of it, and a yes beyond: 41.52 / 0.95 = 43.7 V', () => {
    const close = open(`${load}&withstandV=41.7`)
    expect(word(close, 'circuitVerdict')).toBe('marginal')
    expect(said(close)).toContain('within 5 % of the 41.7 V')
    expect(word(open(`${load}&withstandV=43.6`), 'circuitVerdict')).toBe('marginal')
    expect(word(open(`${load}&withstandV=43.9`), 'circuitVerdict')).toBe('ok')
  })

  it('lifts a filter capacitor beside it to 84.4 V', () => {
    const on = (withstandV: number) =>
      open(
        `${HOT}&standoffV=60&busMaxV=50&busMinV=0&withstandV=500&topology=C&capacitanceF=10n&capacitorWithstandV=${withstandV}`,
      )
    expect(word(on(82), 'capacitorVerdict')).toBe('fails')
    expect(said(on(82))).toMatch(/higher hot, 84\.[45]\d? V, above the 82 V/)
    expect(word(on(86), 'capacitorVerdict')).toBe('marginal')
    expect(word(on(90), 'capacitorVerdict')).toBe('ok')
  })

  it('counts twice between two legs that both break down: 2 · 41.52 = 83.0 V', () => {
    const pair = (volts: number) =>
      open(
        `${HOT}&standoffV=30&bidirectional=true&lineKind=arinc-429-low&existingF=0&withstandV=500&pairWithstandV=${volts}`,
      )
    expect(word(pair(80), 'circuitVerdict')).toBe('fails')
    expect(si(pair(80), 'betweenLegsV')).toBeCloseTo(83.04, 1)
    expect(word(pair(84), 'circuitVerdict')).toBe('marginal')
    expect(word(pair(90), 'circuitVerdict')).toBe('ok')
  })

  it('lifts both legs together across the insulation of a transformer: 84.4 V', () => {
    const behind = (volts: number) =>
      open(
        `${HOT}&standoffV=60&bidirectional=true&existingF=0&withstandV=1000&lineKind=mil-std-1553-stub&pairWithstandV=1000&insulationWithstandV=${volts}`,
      )
    expect(word(behind(82), 'circuitVerdict')).toBe('fails')
    expect(said(behind(82))).toMatch(/rise to 84\.[45]\d? V/)
    expect(word(behind(90), 'circuitVerdict')).toBe('ok')
  })

  it('adds nothing where it never conducts: 50 V never reach its 66.6 V', () => {
    const never = open(
      `level=1&${PART}&ambientC=125&derateZeroC=175&standoffV=60&lineKind=arinc-429-low&bidirectional=true&existingF=0&withstandV=53&pairWithstandV=500`,
    )
    expect(word(never, 'circuitVerdict')).toBe('ok')
  })

  it('never adds more than the pulse has: a breakdown of 49.3 V that rises to 54 V lets 50 V through', () => {
    const most = (volts: number) =>
      open(
        `level=1&${PART}&ambientC=125&derateZeroC=175&standoffV=40&bidirectional=true&lineKind=arinc-429-low&existingF=0&withstandV=${volts}&pairWithstandV=500`,
      )
    expect(word(most(51), 'circuitVerdict')).toBe('marginal')
    expect(word(most(53), 'circuitVerdict')).toBe('ok')
  })
})

it('names what stands between the legs where that decides, not the load that holds', () => {
  const pair = open(
    `${HOT}&standoffV=30&bidirectional=true&lineKind=arinc-429-low&existingF=0&withstandV=500&pairWithstandV=80`,
  )
  expect(pair.verdict).toBe('fails')
  expect(pair.headline).toMatch(/^The circuit survives: no\. .*between the legs/)
  expect(pair.headline).not.toContain('500')
})
