/** What a common-mode choke does to the signal: its leakage, judged as an inductor. */
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const ETHERNET = { lineKind: 'ethernet-100base-tx', existingF: '0', suppressorF: '0', chokeH: '51u' }

/**
 * A reactance X in front of 100 Ω, seen from 85 Ω (the low end of the cable): |Γ|² = (15² + X²)/(185² + X²). The mask
 * asks 10 dB at 80 MHz: X = √((0.1·185² − 15²)/0.9) = 59.61 Ω, 118.6 nH.
 */
const MOST_LEAKAGE_H = Math.sqrt((0.1 * 185 ** 2 - 15 ** 2) / 0.9) / (2 * Math.PI * 80e6)

const nano = (henries: number) => `${(henries * 1e9).toPrecision(6)}n`

describe('a choke on 100BASE-TX', () => {
  it('is fitted while its leakage holds the mask, and no further', () => {
    const inside = run(loadingCheck, { ...ETHERNET, chokeLeakageH: nano(0.999 * MOST_LEAKAGE_H) })
    expect(inside.verdict).toBe('ok')
    expect(inside.headline).toContain('The choke alone as entered')
    const outside = run(loadingCheck, { ...ETHERNET, chokeLeakageH: nano(1.001 * MOST_LEAKAGE_H) })
    expect(outside.verdict).toBe('fails')
    expect(outside.findings[0]?.sentence).toMatch(/return loss is 9\.99\sdB at 80\sMHz/)
    // As read against 100 Ω at 80 MHz: 20·log10 |(200 + jX)/jX|.
    const x = 2 * Math.PI * 80e6 * MOST_LEAKAGE_H
    expect(si(inside, 'returnLossDb')).toBeCloseTo(20 * Math.log10(Math.hypot(200, x) / x), 1)
  })

  it('is judged at the leakage stated as its most, whatever the tolerance', () => {
    const given = { ...ETHERNET, chokeLeakageH: nano(0.999 * MOST_LEAKAGE_H), toleranceFrac: '30 %' }
    expect(run(loadingCheck, given).verdict).toBe('ok')
  })

  it('without a stated leakage is taken with 2 % of the inductance, and of its most', () => {
    // 2 % of 5.8 µH is 116 nH: inside. Over ±5 % the most is 5.8·1.05/0.95 µH: 128 nH, outside.
    const small = { ...ETHERNET, chokeH: '5.8u' }
    const found = run(loadingCheck, small)
    expect(found.verdict).toBe('ok')
    expect(found.findings.some(({ sentence }) => sentence.includes('0.5 to 2 % of the inductance is taken'))).toBe(true)
    expect(run(loadingCheck, { ...small, toleranceFrac: '5 %' }).verdict).toBe('fails')
  })
})

describe('a choke with capacitors', () => {
  const pair = { lineKind: 'rs-422', bitRateHz: '1M', existingF: '0', suppressorF: '0', capacitanceF: '470p' }

  it('rings as an inductor of half its leakage in each leg does', () => {
    const withChoke = run(loadingCheck, { ...pair, chokeH: '1m', chokeLeakageH: '40u' })
    const withCoil = run(loadingCheck, { ...pair, inductanceH: '20u' })
    expect(si(withChoke, 'damping')).toBe(si(withCoil, 'damping'))
    expect(withChoke.verdict).toBe(withCoil.verdict)
    expect(withChoke.verdict).not.toBe('ok')
    expect(run(loadingCheck, { ...pair, chokeH: '51u', chokeLeakageH: '100n' }).verdict).toBe('ok')
  })

  it('adds to the inductor that is there', () => {
    const both = run(loadingCheck, { ...pair, inductanceH: '2u', chokeH: '1m', chokeLeakageH: '6u' })
    expect(si(both, 'damping')).toBeCloseTo(si(run(loadingCheck, { ...pair, inductanceH: '5u' }), 'damping') ?? 0, 12)
  })
})

describe('what is no choke', () => {
  it('around one wire is an inductor that saturates: never ok', () => {
    const one = run(loadingCheck, { ...ETHERNET, chokeH: '10n', chokeWires: 'one' })
    expect(one.verdict).toBe('unknown')
    expect(one.findings[0]?.sentence).toContain('the whole current of the wire magnetises the core')
    expect(run(loadingCheck, { ...ETHERNET, chokeWires: 'one' }).verdict).toBe('fails')
  })

  it('windings against each other are refused', () => {
    expect(issuesOf(loadingCheck, { ...ETHERNET, chokeLeakageH: '103u' })[0]).toMatch(/^chokeLeakageH: /)
  })
})

it('asks for every wire where the choke sits around one', () => {
  const alone = run(loadingCheck, { lineKind: 'discrete-28v', signalOhm: '1k', chokeH: '51u', chokeWires: 'one' })
  expect(alone.verdict).toBe('unknown')
  expect(alone.needs?.key).toBe('chokeWires')
})
