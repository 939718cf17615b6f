/** From a test on a whole cable bundle to one contact: its share of the amperes, the volts that limit them, the repeats. */
import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const PART = { breakdownV: '34.4', dynamicOhm: '0.33', ratedPulseW: '1500', busMaxV: '30', busMinV: '0' }
const said = (texts: Readonly<Record<string, string>>) =>
  run(surgeCheck, texts)
    .findings.map((f) => f.sentence.replaceAll('\u00a0', ' '))
    .join(' ')

describe('a contact of a bundle', () => {
  it('gets its share of the amperes, driven by the limit in volts', () => {
    // level 3 of waveform 1: 600 A for the bundle, at most 300 V; one wire of twenty: 30 A, 10 Ω
    const result = run(surgeCheck, { ...PART, waveform: 'wf1', bundleLevel: '3', bundleShareFrac: '5 %' })
    expect(si(result, 'contactA')).toBeCloseTo(30, 9)
    // (300 − 34.4)/(10 + 0.33)
    expect((si(result, 'peakA') ?? 0) / ((300 - 34.4) / 10.33)).toBeCloseTo(1, 2)
  })

  it('asks for the share, and takes no pin level beside it', () => {
    expect(run(surgeCheck, { ...PART, waveform: 'wf1', bundleLevel: '3' }).headline).toBe(
      'Not known: needs the share of the bundle’s current on this contact.',
    )
    expect(issuesOf(surgeCheck, { ...PART, waveform: 'wf3', level: '2', bundleLevel: '2' })[0]).toContain(
      'exclude each other',
    )
    expect(issuesOf(surgeCheck, { ...PART, waveform: 'wf6', bundleLevel: '2' })[0]).toContain('no cable-bundle level')
  })

  it('stays a waveform not to size a pin from as long as the share is not known', () => {
    expect(said({ ...PART, waveform: 'wf1', openCircuitV: '300', sourceOhm: '10' })).toContain('never size one pin')
    expect(said({ ...PART, waveform: 'wf1', bundleLevel: '3', bundleShareFrac: '0.05' })).toContain(
      '5 % of the bundle’s 600 A is 30 A',
    )
  })

  it('counts the multiple stroke of the bundle test: the first decides, its heat is spread when a weaker one comes', () => {
    const used = (more: Readonly<Record<string, string>>) =>
      si(run(surgeCheck, { ...PART, waveform: 'wf4', ...more }), 'usedFrac') ?? 0
    const bundle = used({ bundleLevel: '3', bundleShareFrac: '0.1' })
    // 600 A · 0.1 is the 60 A of pin level 3: the same single pulse, with ten shots 10 s apart instead
    const pin = used({ level: '3' })
    // later strokes carry 0.4 of the power and find E/√10 ms left: below the first; ten equal shots add E/√10 s
    expect(bundle / pin).toBeGreaterThan(0.97)
    expect(bundle / pin).toBeLessThan(1)
    expect(said({ ...PART, waveform: 'wf4', bundleLevel: '3', bundleShareFrac: '0.1' })).toContain('(pin injection)')
  })

  it('counts the multiple burst of waveform 3: 20 pulses, 3 bursts, every 3 s for 5 minutes', () => {
    const ring = { ...PART, waveform: 'wf3', bidirectional: 'true' }
    const used = (more: Readonly<Record<string, string>>) => si(run(surgeCheck, { ...ring, ...more }), 'usedFrac') ?? 0
    // level 3: 120 A of the bundle, a fifth of it is the 24 A of pin level 3
    expect(used({ bundleLevel: '3', bundleShareFrac: '0.2' }) / used({ level: '3' })).toBeGreaterThan(1.5)
  })
})
